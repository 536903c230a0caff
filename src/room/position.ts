import { type Document, isMap, isSeq, type Pair, type YAMLMap } from "yaml";
import type { Path } from "./room.js";
import { keyText, offsetOf } from "./tree.js";

/** A place in the file; both count from 1, columns in characters. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Turns offsets in a text into lines and columns. */
export function positionsIn(text: string): (offset: number) => Position {
  const starts = [0, ...[...text.matchAll(/\n/gu)].map(({ index }) => index + 1)];
  return (offset) => {
    const line = lastAtOrBefore(starts, offset);
    const start = starts[line] ?? 0;
    return { line: line + 1, column: [...text.slice(start, offset)].length + 1 };
  };
}

/** Index of the last of the ascending starts that is not past the offset. */
function lastAtOrBefore(starts: readonly number[], offset: number): number {
  let [low, high] = [0, starts.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Offset of the value at the path, or of its key. Where the file does not have it, the nearest thing above it that
 * the file has; where nothing stands behind a key, the key.
 */
export function offsetAt(document: Document, path: Path, at: "key" | "value"): number {
  let node: unknown = document.contents;
  let offset = offsetOf(node);
  for (const [index, step] of path.entries()) {
    if (isSeq(node) && typeof step === "number" && step < node.items.length) {
      node = node.items[step];
      offset = offsetOf(node);
      continue;
    }
    const pair = isMap(node) ? pairOf(node, step) : undefined;
    if (pair === undefined) return offset;
    const wantsKey = at === "key" && index === path.length - 1;
    node = pair.value;
    offset = wantsKey || isNothing(node) ? offsetOf(pair.key) : offsetOf(node);
  }
  return offset;
}

const pairOf = (map: YAMLMap, key: string | number): Pair | undefined =>
  map.items.find((pair) => keyText(pair) === key);

/** True for what the parser puts where nothing is written. */
const isNothing = (node: unknown): boolean =>
  node === null || (typeof node === "object" && "source" in node && node.source === "");
