/*
 * Changes to a room's tree: keys changed, taken out, repeated, moved and nested, values swapped for others and for odd
 * ones.
 */
import fc from "fast-check";
import { ODD_CHARACTERS, ODD_KEYS, ODD_SCALARS } from "./odd.js";
import { childrenOf, type Node, nodesOf, replaced, scalar } from "./tree.js";

/** `at` and `with` choose by what is left over after division, so that they fit a tree of any size. */
export interface Change {
  readonly at: number;
  readonly with: number;
  readonly how: (typeof HOW)[number];
}

const HOW = [
  ...([
    "other figure",
    "other figure",
    "other figure",
    "other unit",
    "odd value",
    "same key elsewhere",
  ] as const),
  ...([
    "same key elsewhere",
    "any node",
    "take out",
    "take out",
    "twice",
    "move",
    "in a list",
    "in a map",
  ] as const),
  ...(["deep down", "unwrap", "odd key", "odd text", "odd text", "best", "many"] as const),
] as const;

/** The file's tree after a change; from `others` come values that are at home elsewhere. */
export function changed(tree: Node, { at, with: chosen, how }: Change, others: readonly Node[]): Node {
  const node = pick(nodesOf(tree), at) ?? tree;
  const by = (...nodes: Node[]): Node => replaced(tree, node, nodes);
  const one = (text: string | undefined): Node => by(scalar(text ?? ""));
  switch (how) {
    case "other figure":
      return changedScalar(tree, at, (text) => otherFigure(text, chosen));
    case "other unit":
      return changedScalar(tree, at, (text) =>
        text.replace(
          /(["'°%]| ?(?:mm|m|deg|dB|ohm|W|kg|lb|C))$/u,
          pick(["", '"', "'", " mm", " m", " deg", "%"], chosen) ?? "",
        ),
      );
    case "odd text":
      return changedScalar(tree, at, (text) => oddText(text, chosen));
    case "odd value":
      return one(pick(ODD_SCALARS, chosen));
    case "same key elsewhere":
      return likeElsewhere(tree, { at, with: chosen }, others);
    case "any node":
      return by(pick(nodesOf(pick(others, chosen) ?? tree), chosen) ?? node);
    case "take out":
      return by();
    case "twice":
      return by(node, node);
    case "move": {
      const goal = pick(
        nodesOf(tree).filter(({ kind }) => kind !== "scalar"),
        chosen,
      );
      return goal === undefined ? tree : replaced(replaced(tree, goal, [withChild(goal, node)]), node, []);
    }
    case "in a list":
      return by({ kind: "list", items: [node] });
    case "in a map":
      return by({ kind: "map", entries: [{ key: pick(ODD_KEYS, chosen) ?? "a", value: node }] });
    case "deep down":
      return by(nested(node, chosen % 40));
    case "unwrap":
      return by(...childrenOf(node).slice(0, 1));
    case "odd key":
      return otherKey(tree, at, pick(ODD_KEYS, chosen) ?? "");
    case "best":
      return bestPlaces(tree, at);
    case "many":
      return repeatedItem(tree, at, chosen % 40);
  }
}

export const pick = <T>(from: readonly T[], at: number): T | undefined => from[at % Math.max(1, from.length)];

function changedScalar(tree: Node, at: number, change: (text: string) => string): Node {
  const node = pick(
    nodesOf(tree).filter(({ kind }) => kind === "scalar"),
    at,
  );
  return node?.kind === "scalar" ? replaced(tree, node, [scalar(change(node.written))]) : tree;
}

const FACTORS = [-1, 0, 0.001, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 2, 10, 1000, 1e9];

/** One figure in the text is another one, near or far. */
function otherFigure(text: string, chosen: number): string {
  const factor = pick(FACTORS, chosen) ?? 1;
  const count = (text.match(/\d+(?:\.\d+)?/gu) ?? []).length;
  const which = Math.floor(chosen / FACTORS.length) % Math.max(1, count);
  let seen = -1;
  return text.replaceAll(/\d+(?:\.\d+)?/gu, (figure) => {
    seen += 1;
    return seen === which ? String(Number((Number(figure) * factor).toPrecision(6))) : figure;
  });
}

/** Something odd in a text, between double quotes where YAML would not take it otherwise. */
function oddText(text: string, chosen: number): string {
  const odd = pick(ODD_CHARACTERS, chosen) ?? "";
  const plain = text.replaceAll(/^["']|["']$/gu, "");
  const spoilt =
    pick([`${plain}${odd}`, `${odd}${plain}`, plain.replaceAll(/[aeiou]/gu, odd)], Math.floor(chosen / 7)) ??
    odd;
  return chosen % 2 === 0 ? spoilt : JSON.stringify(spoilt);
}

/** A value that stands under the same key somewhere, in this room or another one. */
function likeElsewhere(
  tree: Node,
  { at, with: chosen }: { at: number; with: number },
  others: readonly Node[],
): Node {
  const entries = entriesOf(tree);
  const entry = pick(entries, at);
  if (entry === undefined) return tree;
  const alike = [tree, ...others].flatMap(entriesOf).filter(({ key }) => key === entry.key);
  const other = pick(alike, chosen);
  return other === undefined ? tree : replaced(tree, entry.value, [other.value]);
}

const entriesOf = (tree: Node) => nodesOf(tree).flatMap((node) => (node.kind === "map" ? node.entries : []));

function withChild(node: Node, child: Node): Node {
  if (node.kind === "list") return { ...node, items: [...node.items, child] };
  if (node.kind === "map") return { ...node, entries: [...node.entries, { key: "moved", value: child }] };
  return child;
}

const nested = (node: Node, levels: number): Node =>
  levels === 0 ? node : nested({ kind: "list", items: [node] }, levels - 1);

function otherKey(tree: Node, at: number, key: string): Node {
  const map = pick(
    nodesOf(tree).filter(({ kind }) => kind === "map"),
    at,
  );
  if (map?.kind !== "map") return tree;
  const index = Math.floor(at / 3) % Math.max(1, map.entries.length);
  const entries = map.entries.map((entry, each) => (each === index ? { ...entry, key } : entry));
  return replaced(tree, map, [{ ...map, entries }]);
}

/** A loudspeaker, or every one, asks for its best place. */
function bestPlaces(tree: Node, at: number): Node {
  const speakers = nodesOf(tree).filter(
    (node) => node.kind === "map" && node.entries.some(({ key }) => key === "channel"),
  );
  const chosen = at % 4 === 0 ? speakers : speakers.slice(at % 7, (at % 7) + 1);
  return chosen.reduce<Node>((room, speaker) => {
    if (speaker.kind !== "map") return room;
    const entries = speaker.entries.map((entry) =>
      entry.key === "at" ? { ...entry, value: scalar("best") } : entry,
    );
    return replaced(room, speaker, [{ ...speaker, entries }]);
  }, tree);
}

/** An entry of a list stands there many times; ids and names are numbered, so that the room may still be one. */
function repeatedItem(tree: Node, at: number, times: number): Node {
  const list = pick(
    nodesOf(tree).filter((node) => node.kind === "list" && node.items.length > 0),
    at,
  );
  const item = list?.kind === "list" ? pick(list.items, at) : undefined;
  if (list?.kind !== "list" || item === undefined) return tree;
  const more = Array.from({ length: times }, (_, index) => numbered(item, index));
  return replaced(tree, list, [{ ...list, items: [...list.items, ...more] }]);
}

function numbered(item: Node, index: number): Node {
  if (item.kind !== "map") return item;
  const entries = item.entries
    .filter(({ key }) => key !== "mirror" && key !== "reference")
    .map((entry) => (/^(?:id|name)$/u.test(entry.key) ? { ...entry, value: scalar(`N${index}`) } : entry));
  return { ...item, entries };
}

/** Chooses among any number of things. */
export const far = fc.nat({ max: 1_000_000 });

/** Any change at all. */
export const anyChange: fc.Arbitrary<Change> = fc.record({
  at: far,
  with: far,
  how: fc.constantFrom(...HOW),
});

const MILD = ["other figure", "other figure", "same key elsewhere", "take out", "best", "many"] as const;

/** A change after which a room is mostly still one. */
export const mildChange: fc.Arbitrary<Change> = fc.record({
  at: far,
  with: far,
  how: fc.constantFrom(...MILD),
});
