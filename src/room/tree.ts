import { type Document, isAlias, isCollection, isMap, isScalar, isSeq, type Pair, type YAMLMap } from "yaml";
import type { Problem } from "../findings/complaint.js";
import type { Path } from "./room.js";
import { shown } from "./shown.js";

/**
 * A document as plain data: every scalar as the text that was written, so that `007` and `1.10` stay what they are,
 * composed (NFC) and without spaces round it. The schema says what is a figure.
 */
export type Tree = string | null | readonly Tree[] | TreeMap;
export interface TreeMap {
  readonly [key: string]: Tree;
}

/** A problem and the offset in the text that it is about. */
export interface PlacedProblem {
  readonly problem: Problem;
  readonly offset: number;
}

interface Walk {
  readonly path: Path;
  readonly problems: PlacedProblem[];
  readonly lineAt: (offset: number) => number;
}

/** The document's tree, and whatever in it has no place in a room file: aliases, repeated keys, keys that are no text. */
export function treeOf(
  document: Document,
  lineAt: (offset: number) => number,
): { readonly tree: Tree; readonly problems: readonly PlacedProblem[] } {
  const problems: PlacedProblem[] = [];
  return { tree: read(document.contents, { path: [], problems, lineAt }), problems };
}

function read(node: unknown, walk: Walk): Tree {
  const reference = referenceIn(node);
  if (reference !== null) {
    report(walk, node, { code: "yaml-alias", path: walk.path, at: "value", figures: { written: reference } });
    return null;
  }
  const tag = tagOf(node);
  if (tag !== null) {
    report(walk, node, { code: "yaml-tag", path: walk.path, at: "value", figures: { written: tag } });
    return null;
  }
  if (isMap(node)) return readMap(node, walk);
  if (isSeq(node)) return node.items.map((item, index) => read(item, below(walk, index)));
  return writtenText(node);
}

const below = (walk: Walk, key: string | number): Walk => ({ ...walk, path: [...walk.path, key] });

function report(walk: Walk, node: unknown, problem: Problem): void {
  walk.problems.push({ problem, offset: offsetOf(node) });
}

/** An alias or an anchor as written; null for a node that is neither. */
function referenceIn(node: unknown): string | null {
  if (isAlias(node)) return shown(`*${node.source}`);
  const anchor = isCollection(node) || isScalar(node) ? node.anchor : undefined;
  return anchor === undefined ? null : shown(`&${anchor}`);
}

/** A tag as it was resolved; null for a node that has none, as every node of a room file. */
function tagOf(node: unknown): string | null {
  const tag = isCollection(node) || isScalar(node) ? node.tag : undefined;
  return tag === undefined ? null : shown(tag.replace(/^tag:yaml\.org,2002:/u, "!!"));
}

/**
 * Composing takes time with the square of the accents that stand on one letter; no text of a room is longer than this,
 * and a longer one is refused however it is composed. Our own choice.
 */
const MOST_COMPOSED = 1000;

const composed = (text: string): string => (text.length <= MOST_COMPOSED ? text.normalize("NFC") : text);

/** A scalar as it was written, without spaces round it; null for an empty one, `~` or `null`. */
function writtenText(node: unknown): string | null {
  if (!isScalar(node) || node.value === null) return null;
  const text = typeof node.value === "string" ? node.value : (node.source ?? String(node.value));
  return composed(text.trim());
}

function readMap(map: YAMLMap, walk: Walk): TreeMap {
  // Without a prototype, so that no key of the file can be mistaken for one of JavaScript's own.
  const entries: Record<string, Tree> = Object.create(null);
  const firstOffsets = new Map<string, number>();
  for (const pair of map.items) {
    const key = readKey(pair, walk);
    if (key === null) continue;
    const first = firstOffsets.get(key);
    if (first === undefined) {
      firstOffsets.set(key, offsetOf(pair.key));
      entries[key] = read(pair.value, below(walk, key));
    } else {
      const figures = { key: shown(key), firstLine: walk.lineAt(first) };
      report(walk, pair.key, { code: "duplicate-key", path: [...walk.path, key], at: "key", figures });
    }
  }
  return entries;
}

/** The key as text, or null where it cannot stand in a room file. */
function readKey(pair: Pair, walk: Walk): string | null {
  const key = keyText(pair);
  if (key === null) {
    report(walk, pair.key, { code: "key-not-text", path: walk.path, at: "value", figures: {} });
    return null;
  }
  if (key === "<<" || referenceIn(pair.key) !== null) {
    report(walk, pair.key, {
      code: "yaml-alias",
      path: walk.path,
      at: "value",
      figures: { written: shown(key) },
    });
    return null;
  }
  if (key === "__proto__") {
    const figures = { key, suggestion: null, choices: [] };
    report(walk, pair.key, { code: "unknown-key", path: [...walk.path, key], at: "key", figures });
    return null;
  }
  return key;
}

/** A pair's key as the tree has it; null where it is no text. */
export const keyText = (pair: Pair): string | null => writtenText(pair.key);

/** Where a node begins in the text; 0 for one that has no place of its own. */
export function offsetOf(node: unknown): number {
  return isAlias(node) || isCollection(node) || isScalar(node) ? (node.range?.[0] ?? 0) : 0;
}
