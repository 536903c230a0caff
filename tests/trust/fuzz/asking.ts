/*
 * Rooms that ask for places: of single loudspeakers, and of those that fill an area.
 */
import fc from "fast-check";
import { type Change, changed, far, mildChange, pick } from "./changes.js";
import { hand, inAnotherHand } from "./hand.js";
import { type Entry, type Node, scalar, treeOf } from "./tree.js";

/** Loudspeakers of a room that are to ask, by what is left over after division; and whether areas are to be filled. */
interface Asking {
  readonly which: number;
  readonly oneIn: number;
  readonly areas: "as they are" | "empty" | "the whole ceiling";
  readonly none: "no list" | "empty list";
}

const asking: fc.Arbitrary<Asking> = fc.record({
  which: far,
  oneIn: fc.integer({ min: 1, max: 5 }),
  areas: fc.constantFrom("as they are", "empty", "empty", "the whole ceiling"),
  none: fc.constantFrom("no list", "empty list"),
});

/** The good rooms with places asked for and some figures changed, in any hand. */
export function askingRooms(texts: readonly string[]): fc.Arbitrary<string> {
  const trees = texts.map(treeOf);
  const room = fc.nat({ max: trees.length - 1 });
  const changes = fc.oneof(
    { weight: 2, arbitrary: fc.constant<Change[]>([]) },
    { weight: 3, arbitrary: fc.array(mildChange, { minLength: 1, maxLength: 2 }) },
  );
  return fc.record({ room, asking, changes, hand }).map((chosen) => {
    const start = trees[chosen.room] ?? scalar("");
    const others = trees.filter((_, index) => index !== chosen.room);
    const other = chosen.changes.reduce((tree, each) => changed(tree, each, others), start);
    return inAnotherHand(thatAsks(other, chosen.asking), chosen.hand);
  });
}

function thatAsks(tree: Node, { which, oneIn, areas, none }: Asking): Node {
  if (tree.kind !== "map") return tree;
  const entries = tree.entries.flatMap((entry) => {
    if (entry.key !== "speakers") return [entry];
    const speakers = speakersThatAsk(entry.value, { which, oneIn, filled: areas === "as they are" });
    return none === "no list" && speakers.kind === "list" && speakers.items.length === 0
      ? []
      : [{ ...entry, value: speakers }];
  });
  const area = areas === "the whole ceiling" ? areaOf(tree) : null;
  return { ...tree, entries: area === null ? entries : withArea(entries, area) };
}

function speakersThatAsk(
  speakers: Node,
  { which, oneIn, filled }: { which: number; oneIn: number; filled: boolean },
): Node {
  if (speakers.kind !== "list") return speakers;
  const stay = speakers.items.filter((speaker) => filled || !has(speaker, "area"));
  return {
    ...speakers,
    items: stay.map((speaker, index) =>
      (which + index) % oneIn === 0 && !has(speaker, "area") ? asksForBest(speaker) : speaker,
    ),
  };
}

const has = (node: Node, key: string): boolean =>
  node.kind === "map" && node.entries.some((entry) => entry.key === key);

const asksForBest = (speaker: Node): Node =>
  speaker.kind === "map"
    ? {
        ...speaker,
        entries: speaker.entries.map((entry) =>
          entry.key === "at" ? { ...entry, value: scalar("best") } : entry,
        ),
      }
    : speaker;

/** All of the ceiling, filled with one of the room's models. */
function areaOf(tree: Node): Node | null {
  const models = tree.kind === "map" ? tree.entries.find(({ key }) => key === "models")?.value : undefined;
  const model = models?.kind === "map" ? pick(models.entries, models.entries.length - 1)?.key : undefined;
  if (model === undefined) return null;
  const entries = Object.entries({ name: "all-over", on: "ceiling", model, ear: "1.1 m" });
  return { kind: "map", entries: entries.map(([key, text]) => ({ key, value: scalar(text) })) };
}

function withArea(entries: readonly Entry[], area: Node): readonly Entry[] {
  if (!entries.some(({ key }) => key === "areas"))
    return [...entries, { key: "areas", value: { kind: "list", items: [area] } }];
  return entries.map((entry) =>
    entry.key === "areas" && entry.value.kind === "list"
      ? { ...entry, value: { ...entry.value, items: [...entry.value.items, area] } }
      : entry,
  );
}
