import type { Room } from "../../room/room.js";
import { TAPE_STEP_MM } from "../nearest-clear.js";
import { askingsOf } from "./decision.js";
import { allMarks } from "./marks.js";
import { groupsThatMeet } from "./meeting.js";
import { type Queued, queueOf } from "./queue.js";
import { bestIn, type Found } from "./search.js";
import { type Solved, solveOn } from "./solve.js";

/*
 * Overhead loudspeakers on one side of the seat look better in one line from front to back: at the same tape from a
 * side wall. They are put on one where that costs none of them as much as the limit; of a side's loudspeakers as many
 * as can be.
 */

/** More on one side than this are left where each is best. */
const MOST_ON_A_LINE = 6;

/**
 * The decisions as they are on lines; those that share none as they were, and so those of a side on whose lines
 * openings would come too close.
 */
export function onLines(room: Room, solved: readonly Solved[], limitDeg: number): readonly Solved[] {
  return sidesOf(solved).reduce((all, side) => withLines(all, lineUp(room, side, limitDeg)), solved);
}

function withLines(all: readonly Solved[], lined: Lined): readonly Solved[] {
  const after = new Map(lined);
  const next = all.map((one) => after.get(one) ?? one);
  return groupsThatMeet(next.map((one) => [one])).length === 0 ? next : all;
}

/** Those that may share a line: by the ceiling and the side of the seat that they are on. */
function sidesOf(solved: readonly Solved[]): readonly (readonly Solved[])[] {
  const sides = new Map<string, Solved[]>();
  for (const one of solved.filter(mayShare)) {
    const key = sideOf(one);
    sides.set(key, [...(sides.get(key) ?? []), one]);
  }
  return [...sides.values()].filter(({ length }) => length > 1 && length <= MOST_ON_A_LINE);
}

const sideOf = ({ decision: { leader } }: Solved): string =>
  [leader.ground.surface.name, Math.sign(leader.wish.preferred.x)].join(" ");

/** Overhead, not straight in front or behind, and free to move across the room on a tape that runs just so. */
function mayShare({ decision: { leader }, tapes }: Solved): boolean {
  const { surface } = leader.ground;
  const [{ heldMm, line }] = tapes.leader;
  const forward = line.direction.u * surface.frame.u.y + line.direction.v * surface.frame.v.y;
  const isAside = Math.abs(leader.wish.preferred.x) > ASIDE;
  return surface.kind === "ceiling" && heldMm === null && isAside && Math.abs(forward) < ASIDE;
}

/** Sine of what counts as no angle at all. */
const ASIDE = 1e-6;

type Lined = readonly (readonly [Solved, Solved])[];

/** The most that can share a line, then the most of the others, until none can. */
function lineUp(room: Room, side: readonly Solved[], limitDeg: number): Lined {
  const line = largestLine(room, side, limitDeg);
  if (line === null) return [];
  const taken = new Set(line.map(([before]) => before));
  return [
    ...line,
    ...lineUp(
      room,
      side.filter((one) => !taken.has(one)),
      limitDeg,
    ),
  ];
}

function largestLine(room: Room, side: readonly Solved[], limitDeg: number): Lined | null {
  for (let size = side.length; size > 1; size -= 1) {
    const lines = choices(side, size).flatMap((chosen) => bestLine(room, chosen, limitDeg) ?? []);
    const [best] = lines.sort((a, b) => a.costDeg - b.costDeg);
    if (best !== undefined) return best.lined;
  }
  return null;
}

/** Every choice of so many of them, in their order. */
function choices<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  if (size === 0) return [[]];
  return items.flatMap((item, index) =>
    choices(items.slice(index + 1), size - 1).map((others) => [item, ...others]),
  );
}

interface Lane {
  readonly before: Solved;
  /** Asked of the common tape, with the best place on whole marks of it. */
  readonly solved: Solved;
}

/** Marks of the common tape, and what is best for each lane within them: none can lose less than `costDeg` there. */
interface Stretch extends Queued {
  readonly least: number;
  readonly most: number;
  readonly found: readonly Found[];
}

/** The line on which the worst of them loses least, if that is less than the limit. */
function bestLine(
  room: Room,
  chosen: readonly Solved[],
  limitDeg: number,
): (Queued & { readonly lined: Lined }) | null {
  const lanes = lanesOf(room, chosen);
  const queue = queueOf<Stretch>();
  const [axis] = lanes[0]?.solved.field.spots[0].marks.axes ?? [];
  if (axis === undefined || lanes.length < chosen.length) return null;
  const add = (least: number, most: number): void => {
    const stretch = stretchOf(lanes, { least, most, limitDeg });
    if (stretch !== null) queue.add(stretch);
  };
  add(axis.least, axis.most);
  for (let stretch = queue.take(); stretch !== undefined; stretch = queue.take()) {
    const marks = stretch.found.map(({ box }) => box.least[0]);
    const [low, high] = [Math.min(...marks), Math.max(...marks)];
    if (low === high) return { costDeg: stretch.costDeg, lined: linedUp(lanes, stretch.found) };
    const middle = Math.floor((low + high) / 2);
    add(stretch.least, middle);
    add(middle + 1, stretch.most);
  }
  return null;
}

/** The same tape across the room for all; those that have no place on whole marks of it are left out. */
function lanesOf(room: Room, chosen: readonly Solved[]): readonly Lane[] {
  const common = chosen[0]?.tapes.leader[0];
  const stepMm = TAPE_STEP_MM[room.units];
  return chosen.flatMap((before) => {
    const { leader, follower } = before.tapes;
    const tapes = { leader: [common ?? leader[0], leader[1]] as const, follower };
    const [axis] = before.field.spots[0].marks.axes;
    const isAsBefore = axis.line.from === tapes.leader[0].line.from && axis.stepMm === stepMm;
    const solved = isAsBefore
      ? before
      : solveOn(room, before.decision, { tapes, stepMm, belowDeg: Number.POSITIVE_INFINITY });
    return solved === null ? [] : [{ before, solved }];
  });
}

interface Part {
  readonly least: number;
  readonly most: number;
  readonly limitDeg: number;
}

function stretchOf(lanes: readonly Lane[], part: Part): Stretch | null {
  const found: Found[] = [];
  let costDeg = 0;
  for (const lane of lanes) {
    const best = bestWithin(lane, part);
    if (best === null) return null;
    found.push(best);
    costDeg = Math.max(costDeg, best.costDeg - lane.before.found.costDeg);
  }
  return { least: part.least, most: part.most, found, costDeg };
}

/** What is best of all is best of every part that holds it. */
function bestWithin({ before, solved }: Lane, { least, most, limitDeg }: Part): Found | null {
  const [mark] = solved.found.box.least;
  const belowDeg = before.found.costDeg + limitDeg;
  if (mark >= least && mark <= most) return solved.found.costDeg < belowDeg ? solved.found : null;
  const all = allMarks(solved.field.spots[0].marks);
  const box = { least: [least, all.least[1]], most: [most, all.most[1]] } as const;
  return bestIn(solved.field, { box, belowDeg });
}

function linedUp(lanes: readonly Lane[], found: readonly Found[]): Lined {
  const ids = lanes.map(({ solved }) => askingsOf(solved.decision).map(({ speaker }) => speaker.id));
  return lanes.flatMap(({ before, solved }, index) => {
    const there = found[index];
    if (there === undefined) return [];
    const lines = solved.field.spots.map((_, side) => ids.flatMap((each) => each[side] ?? []));
    const lineDeg = there.costDeg - before.found.costDeg;
    return [[before, { ...solved, found: there, lines, lineDeg }] as const];
  });
}
