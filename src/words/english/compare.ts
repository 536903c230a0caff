import type { MemberName } from "../../findings/finding.js";
import { findings } from "./findings.js";
import { frame } from "./frame.js";

const hook = (from: string): string => (from === "floor" ? "the floor" : frame.wall(from));

/** A length before and after, both already written. */
interface Lengths {
  readonly before: string;
  readonly after: string;
}

/** Two lengths that one tape read and reads, and by how much it is longer or shorter. */
export interface TapeRead extends Lengths {
  readonly from: string | null;
  readonly by: string;
  readonly further: boolean;
}

const readings = ({ from, before, after, by, further }: TapeRead): string =>
  from === null
    ? `moved by ${by}`
    : `${before} -> ${after} from ${hook(from)} (${by} ${further ? "further" : "nearer"})`;

/** What `compare` says is otherwise between two revisions of a room. */
export const compare = {
  revisions: (before: string, after: string) => `revision ${before} -> revision ${after}`,
  nothing: "nothing is otherwise",
  headings: {
    openings: "Openings",
    surfaces: "Walls and ceilings",
    members: "Framing",
    obstructions: "Obstructions",
    seats: "Seats",
    cables: "Cable",
    holes: "Holes to bore",
    findings: "Findings",
    sheets: "Print again",
  },
  added: "new",
  gone: "gone",
  opening: {
    added: (surface: string, tapes: readonly { from: string; length: string }[]) =>
      `new on the ${frame.surface(surface)}: ${tapes.map(({ from, length }) => `${length} from ${hook(from)}`).join(", ")}`,
    gone: (surface: string) => `gone from the ${frame.surface(surface)}`,
    surface: (before: string, after: string) =>
      `from the ${frame.surface(before)} to the ${frame.surface(after)}`,
    tape: readings,
    newTape: (from: string, after: string) => `now ${after} from ${hook(from)}`,
    channel: (before: string, after: string) => `channel ${before} -> ${after}`,
    model: (before: string, after: string) => `model ${before} -> ${after}`,
    size: (before: string, after: string) => `opening ${before} -> ${after}`,
    figures: (model: string) => `other figures of model ${model}`,
    arrow: (by: string) => `arrow turned by ${by}`,
    arrowNew: "has an arrow now",
    arrowGone: "has no arrow any more",
    stopped: "DO NOT CUT now",
    allowed: "may be cut now",
  },
  surface: {
    name: (surface: string) => frame.surface(surface),
    size: (before: string, after: string) => `${before} -> ${after}`,
    outline: "another outline",
    joints: "board joints elsewhere",
    board: ({ before, after }: Lengths) => `board ${before} -> ${after}`,
    cavity: (before: string | null, after: string | null) =>
      `cavity ${before ?? "open"} -> ${after ?? "open"}`,
    framingKnown: "framing known now",
    framingUnknown: "framing unknown now",
    rated: (is: boolean): string => (is ? "rated now" : "rated no more"),
    enclosure: (is: boolean): string => (is ? "enclosures now" : "no enclosures any more"),
    "second-support": (is: boolean): string => (is ? "second supports now" : "no second supports any more"),
    insulation: (before: string | null, after: string | null) =>
      `insulation ${before ?? "none"} -> ${after ?? "none"}`,
  },
  member: {
    name: ({ surface, kind }: Pick<MemberName, "surface" | "kind">, first: number, last: number) =>
      `${frame.surface(surface)}, ${findings.member({ surface, kind, number: first })}${first === last ? "" : ` to ${last}`}`,
    added: (at: string | null) => (at === null ? "new" : `new at ${at}`),
    gone: (at: string | null) => (at === null ? "gone" : `gone from ${at}`),
    at: (length: string, from: string) => `${length} from ${hook(from)}`,
    moved: readings,
    movedAlike: (by: string, further: boolean, from: string) =>
      `each ${by} ${further ? "further from" : "nearer to"} ${hook(from)}`,
    size: (before: string, after: string) => `${before} -> ${after}`,
    assumed: "ASSUMED now",
    measured: "measured now",
    found: (by: string, on: string) => `FOUND by ${by}, ${on}`,
  },
  obstruction: {
    name: (surface: string, name: string) => `${frame.surface(surface)}, ${name}`,
    added: "new",
    gone: "gone",
    changed: "moved, or of another size or distance",
  },
  seat: {
    added: "new",
    gone: "gone",
    reference: "the reference now",
    fromLeft: readings,
    fromFront: readings,
    ear: ({ before, after }: Lengths) => `ear ${before} -> ${after}`,
  },
  cable: {
    added: (length: string) => `a way now, cut to ${length}`,
    gone: "no cable any more",
    length: ({ before, after, by, further }: TapeRead) =>
      `cut to ${before} -> ${after} (${by} ${further ? "longer" : "shorter"})`,
    size: (before: string, after: string) => `${before} -> ${after}`,
    conductors: (before: number, after: number) => `${before} -> ${after} conductors`,
    way: "goes another way",
  },
  hole: {
    added: (count: number, bit: string) => `${count === 1 ? "a new hole" : `${count} new holes`}, ${bit}`,
    gone: (count: number) => (count === 1 ? "a hole fewer" : `${count} holes fewer`),
    bit: (before: string, after: string) => `bit ${before} -> ${after}`,
    moved: "bored elsewhere on it",
  },
  finding: {
    added: "NEW",
    gone: "GONE",
    changed: "NOW",
  },
  sheets: {
    none: "no sheet: all are drawn as before",
    pages: (pages: readonly number[], all: number) =>
      `page${pages.length === 1 ? "" : "s"} ${stretches(pages)} of ${all}`,
    changed: "changed",
    new: "new",
    gone: "throw it away",
    byName: "where it was printed by name",
    rest: "Sheets that are not listed are drawn as before: only the revision and the file's digits in their frames differ.",
    command: (command: string) => `Print them with: ${command}`,
  },
};

/** 3, 4, 5, 9 as "3-5, 9". */
export function stretches(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last?.[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from}-${to}`)).join(", ");
}
