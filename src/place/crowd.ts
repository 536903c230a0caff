import type { Effort } from "../effort.js";
import { unheld } from "../geometry/body.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import { takingOf } from "./clear.js";
import type { Fitting } from "./fitting.js";
import { neighbourObstacles, takenBy } from "./obstacles.js";
import { byRow, type InRows, type Marks, type RowAt, type Rows, rowAt, rowsOver } from "./rows.js";

/** Openings on a surface as the centre of one fitting finds them, worked out once for all of these that ask. */
export interface Crowd {
  /** What the openings leave of a row's free marks, in ascending order: to all, or to the one whose own they are. */
  readonly leftIn: (row: number) => LeftIn;
  /** Whether one of the others takes a point of the row, by the exact distances. */
  readonly takes: (row: number, at: SurfacePoint, own: Mounted) => boolean;
}

interface LeftIn {
  readonly at: RowAt;
  readonly stretches: readonly OwnedMarks[];
}

/** What one opening takes of a fitting's centres: between the openings, or between the flanges. */
export interface OwnedBody extends InRows {
  readonly owner: Mounted;
  readonly takes: (centre: SurfacePoint) => boolean;
}

/** Marks next to each other, and whose they are where they are one opening's alone. */
interface OwnedMarks {
  readonly marks: Marks;
  readonly owner: Mounted | null;
}

/** What lies well within another, as the flange's mostly does within the opening's, takes nothing of its own. */
export function bodiesOf(rows: Rows, owner: Mounted, fitting: Fitting): readonly OwnedBody[] {
  return unheld(neighbourObstacles([owner], fitting).map(takenBy), EPSILON_MM).map((body) => ({
    ...rowsOver(rows, body),
    owner,
    takes: takingOf(body),
  }));
}

/** Rows, of each its free marks while nothing else is let in, and how long may be looked for them. */
interface OnRows {
  readonly rows: Rows;
  readonly freeIn: (row: number) => readonly Marks[];
  readonly effort: Effort;
}

/** The crowd of these on rows whose free marks are known while nothing is let in. */
export function crowdOf({ rows, freeIn, effort }: OnRows, bodies: readonly OwnedBody[]): Crowd {
  const inBlock = byRow(bodies);
  const near = (row: number): readonly OwnedBody[] => {
    const found = inBlock(row);
    effort.spend(found.length);
    return found;
  };
  const known = new Map<number, LeftIn>();
  const leftIn = (row: number): LeftIn => {
    const before = known.get(row);
    if (before !== undefined) return before;
    const at = rowAt(rows, row);
    const left = { at, stretches: leftBy(withoutOverlaps(ownMarksIn(near(row), at)), freeIn(row)) };
    known.set(row, left);
    return left;
  };
  return {
    leftIn,
    takes: (row, at, own) => near(row).some(({ owner, takes }) => owner !== own && takes(at)),
  };
}

function ownMarksIn(bodies: readonly OwnedBody[], at: RowAt): readonly OwnedMarks[] {
  const own: OwnedMarks[] = [];
  for (const { owner, first, last, marksIn } of bodies) {
    const marks = first < at.row && last > at.row ? marksIn(at) : null;
    if (marks !== null) own.push({ owner, marks });
  }
  return own;
}

/** Of free marks what nothing takes, and what one opening takes alone, which is free to that one. */
function leftBy(taken: readonly OwnedMarks[], free: readonly Marks[]): readonly OwnedMarks[] {
  if (taken.length === 0) return free.map((marks) => ({ owner: null, marks }));
  const left: OwnedMarks[] = [];
  let index = 0;
  for (const stretch of free) {
    const first = stretch[0];
    const last = stretch[1];
    let next = first;
    for (; ; index += 1) {
      const one = taken[index];
      if (one === undefined || one.marks[0] > last) break;
      const from = Math.max(one.marks[0], first);
      const to = Math.min(one.marks[1], last);
      if (from <= to) {
        if (from > next) left.push({ owner: null, marks: [next, from - 1] });
        if (one.owner !== null) left.push({ owner: one.owner, marks: [from, to] });
        next = to + 1;
      }
      // It may reach into the next free stretch too.
      if (one.marks[1] > last) break;
    }
    if (next <= last) left.push({ owner: null, marks: [next, last] });
  }
  return left;
}

/**
 * The same marks as stretches that do not overlap, in ascending order, and without an owner where they are several
 * openings': where hundreds stand in one place, one that asks looks at a few stretches and not at all of them.
 */
function withoutOverlaps(all: readonly OwnedMarks[]): readonly OwnedMarks[] {
  if (all.length < 2) return all;
  const changes = all
    .flatMap(({ owner, marks: [first, last] }) => [
      { at: first, owner, by: 1 },
      { at: last + 1, owner, by: -1 },
    ])
    .sort((a, b) => a.at - b.at);
  const here = new Map<Mounted | null, number>();
  const stretches: OwnedMarks[] = [];
  changes.forEach(({ at, owner, by }, index) => {
    const count = (here.get(owner) ?? 0) + by;
    if (count === 0) here.delete(owner);
    else here.set(owner, count);
    const next = changes[index + 1]?.at ?? at;
    if (here.size > 0 && next > at) addTo(stretches, [at, next - 1], onlyOf(here));
  });
  return stretches;
}

function onlyOf(owners: ReadonlyMap<Mounted | null, number>): Mounted | null {
  const [first = null] = owners.keys();
  return owners.size === 1 ? first : null;
}

function addTo(stretches: OwnedMarks[], [first, last]: Marks, owner: Mounted | null): void {
  const before = stretches.at(-1);
  const goesOn = before !== undefined && before.owner === owner && before.marks[1] === first - 1;
  if (goesOn) stretches[stretches.length - 1] = { owner, marks: [before.marks[0], last] };
  else stretches.push({ owner, marks: [first, last] });
}
