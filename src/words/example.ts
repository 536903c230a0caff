import type { Kind } from "../findings/complaint.js";

/*
 * How a value of a kind is written, shown where one of another kind was typed; file keys are the same in all languages.
 */

const MAPS: Readonly<Record<string, string>> = {
  at: "{ left: 3 m, front: 2 m }",
  corner: "{ left: 3 m, front: 2 m }",
  opposite: "{ left: 4 m, front: 3 m }",
  hold: "{ up: 1.2 m }",
  opening: "{ round: 210 mm }",
  flange: "{ round: 240 mm }",
  board: "{ ceiling: 16 mm, walls: 12.5 mm }",
  job: "{ name: Den, date: 2026-11-20 }",
  equipment: "{ at: { right: 0, back: 60 cm }, up: 60 cm }",
  print: "{ paper: A4, languages: [en] }",
  checks: "{ clear: 6 mm }",
  seats: "{ name: middle, at: { left: 3 m, front: 2 m }, ear: 107 cm }",
};

const LISTS: Readonly<Record<string, string>> = {
  at: "[406 mm, 812 mm]",
  gauges: "[16, 14, 12]",
  languages: "[en, es]",
  board_range: "[10 mm, 30 mm]",
  outline: "[[0, 0], [4 m, 0], [4 m, 5 m]]",
};

/** Lists whose entries are longer than a line takes in brackets. */
const ENTRIES: Readonly<Record<string, string>> = {
  seats: "- { name: middle, ... }",
  speakers: "- { id: FL, ... }",
  obstructions: "- { name: duct, ... }",
  areas: "- { name: hall, ... }",
  accept: "- { code: ..., why: ... }",
};

/** An example of a value of this kind behind this key; null where a kind needs none, or none is known. */
export function exampleOf(kind: Kind, key: string | null): string | null {
  if (kind === "map") return MAPS[key ?? ""] ?? null;
  return kind === "list" ? (ENTRIES[key ?? ""] ?? LISTS[key ?? ""] ?? null) : null;
}
