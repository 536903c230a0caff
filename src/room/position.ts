import { type Document, isMap, isSeq, type Pair, type YAMLMap } from "yaml";
import type { Path } from "./room.js";
import { keyText, offsetOf } from "./tree.js";

/** A place in the file; both count from 1, columns in characters. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Turns offsets in a text into lines and columns, each in a few steps however long the text and its lines are. */
export function positionsIn(text: string): (offset: number) => Position {
  const starts = [0, ...offsetsOf(text, /\n/gu).map((offset) => offset + 1)];
  const pairs = offsetsOf(text, /[\u{10000}-\u{10ffff}]/gu);
  const charactersTo = (offset: number): number => offset - countBefore(pairs, offset);
  return (offset) => {
    const line = countBefore(starts, offset + 1);
    return { line, column: charactersTo(offset) - charactersTo(starts[line - 1] ?? 0) + 1 };
  };
}

/** Where the pattern begins, ascending. */
const offsetsOf = (text: string, pattern: RegExp): readonly number[] =>
  [...text.matchAll(pattern)].map(({ index }) => index);

/** How many of the ascending offsets lie before the limit. */
function countBefore(offsets: readonly number[], limit: number): number {
  let [low, high] = [0, offsets.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((offsets[middle] ?? limit) < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

export type OffsetAt = (path: Path, at: "key" | "value") => number;

/**
 * Tells the offset of the value at a path, or of its key. Where the file does not have it, the nearest thing above it
 * that the file has; where nothing stands behind a key, the key.
 */
export function offsetsIn(document: Document): OffsetAt {
  const pairOf = pairFinder();
  return (path, at) => offsetBelow(document.contents, { path, at, pairOf });
}

interface Search {
  readonly path: Path;
  readonly at: "key" | "value";
  readonly pairOf: PairFinder;
}

function offsetBelow(contents: unknown, { path, at, pairOf }: Search): number {
  let node = contents;
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

type PairFinder = (map: YAMLMap, key: string | number) => Pair | undefined;

/** Finds pairs by their keys; each map is gone through once, however many are asked for. */
function pairFinder(): PairFinder {
  const known = new Map<YAMLMap, PairsByKey>();
  return (map, key) => {
    const pairs = known.get(map) ?? pairsByKey(map);
    known.set(map, pairs);
    return pairs.get(key);
  };
}

type PairsByKey = ReadonlyMap<string | number | null, Pair>;

/** Of a repeated key the first, which is the one that counts. */
const pairsByKey = (map: YAMLMap): PairsByKey =>
  new Map(map.items.map((pair): [string | null, Pair] => [keyText(pair), pair]).reverse());

/** True for what the parser puts where nothing is written. */
const isNothing = (node: unknown): boolean =>
  node === null || (typeof node === "object" && "source" in node && node.source === "");
