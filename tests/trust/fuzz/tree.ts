/*
 * A room file as a tree that can be spoilt: keys may come twice, a scalar is whatever was written.
 */
import { isMap, isScalar, isSeq, parseDocument } from "yaml";

export type Node =
  | { readonly kind: "scalar"; readonly written: string }
  | { readonly kind: "list"; readonly items: readonly Node[] }
  | { readonly kind: "map"; readonly entries: readonly Entry[] };

export interface Entry {
  readonly key: string;
  readonly value: Node;
}

export const scalar = (written: string): Node => ({ kind: "scalar", written });

/** The tree of a text that is good YAML; scalars with their quotes. */
export function treeOf(text: string): Node {
  const read = (node: unknown): Node => {
    if (isMap(node))
      return {
        kind: "map",
        entries: node.items.map(({ key, value }) => ({ key: String(key), value: read(value) })),
      };
    if (isSeq(node)) return { kind: "list", items: node.items.map(read) };
    const range = isScalar(node) ? node.range : null;
    return scalar(range ? text.slice(range[0], range[1]) : "");
  };
  return read(parseDocument(text).contents);
}

/** The tree as text: keys on lines of their own down to a depth, in brackets from there on. */
export function written(node: Node, linesDownTo: number): string {
  return `${block(node, 0, linesDownTo)}\n`;
}

function block(node: Node, depth: number, linesDownTo: number): string {
  if (node.kind === "scalar" || depth >= linesDownTo || childrenOf(node).length === 0)
    return inBrackets(node);
  const indent = "  ".repeat(depth);
  const lines =
    node.kind === "list"
      ? node.items.map((item) => `${indent}-${below(item, depth, linesDownTo)}`)
      : node.entries.map(({ key, value }) => `${indent}${key}:${below(value, depth, linesDownTo)}`);
  return lines.join("\n");
}

function below(node: Node, depth: number, linesDownTo: number): string {
  const text = block(node, depth + 1, linesDownTo);
  const onLines = node.kind !== "scalar" && depth + 1 < linesDownTo && childrenOf(node).length > 0;
  return onLines ? `\n${text}` : ` ${text}`;
}

function inBrackets(node: Node): string {
  if (node.kind === "scalar") return node.written;
  if (node.kind === "list") return `[${node.items.map(inBrackets).join(", ")}]`;
  return `{ ${node.entries.map(({ key, value }) => `${key}: ${inBrackets(value)}`).join(", ")} }`;
}

export const childrenOf = (node: Node): readonly Node[] => {
  if (node.kind === "scalar") return [];
  return node.kind === "list" ? node.items : node.entries.map(({ value }) => value);
};

/** Every node below and with this one, parents first. */
export const nodesOf = (node: Node): readonly Node[] => [node, ...childrenOf(node).flatMap(nodesOf)];

/** The tree with one node, the very object, replaced by others: by none, it is gone; by several, it is repeated. */
export function replaced(tree: Node, old: Node, by: readonly Node[]): Node {
  if (tree === old) return by[0] ?? scalar("");
  if (tree.kind === "scalar") return tree;
  if (tree.kind === "list")
    return {
      ...tree,
      items: tree.items.flatMap((item) => (item === old ? by : [replaced(item, old, by)])),
    };
  return {
    ...tree,
    entries: tree.entries.flatMap(({ key, value }) =>
      value === old ? by.map((each) => ({ key, value: each })) : [{ key, value: replaced(value, old, by) }],
    ),
  };
}
