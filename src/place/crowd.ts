import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import { takingOf } from "./clear.js";
import type { Fitting } from "./fitting.js";
import { neighbourObstacles, takenBy } from "./obstacles.js";
import { byRow, type InRows, type Marks, marksIn, type Rows, rowsOver } from "./rows.js";

/** Openings on a surface as the centre of one fitting finds them, worked out once for all of these that ask. */
export interface Crowd {
  /** What the others take of a row's marks, in ascending order of their beginnings. */
  readonly takenIn: (row: number, own: Mounted) => readonly Marks[];
  /** Whether one of the others takes a point of the row, by the exact distances. */
  readonly takes: (row: number, at: SurfacePoint, own: Mounted) => boolean;
}

/** What one opening takes of a fitting's centres: between the openings, or between the flanges. */
export interface OwnedBody extends InRows {
  readonly owner: Mounted;
  readonly takes: (centre: SurfacePoint) => boolean;
  readonly marksIn: (row: number) => readonly OwnedMarks[];
}

/** Marks next to each other, and whose they are where they are one opening's alone; null for several. */
interface OwnedMarks {
  readonly marks: Marks;
  readonly owner: Mounted | null;
}

export function bodiesOf(rows: Rows, owner: Mounted, fitting: Fitting): readonly OwnedBody[] {
  return neighbourObstacles([owner], fitting)
    .map(takenBy)
    .map((body) => {
      const inRows = rowsOver(rows, body);
      const known = new Map<number, readonly OwnedMarks[]>();
      const ownMarksIn = (row: number): readonly OwnedMarks[] => {
        const own = known.get(row) ?? marksIn(rows, row, [inRows]).map((marks) => ({ owner, marks }));
        known.set(row, own);
        return own;
      };
      return { ...inRows, owner, takes: takingOf(body), marksIn: ownMarksIn };
    });
}

export function crowdOf(bodies: readonly OwnedBody[]): Crowd {
  const near = byRow(bodies);
  const known = new Map<number, readonly OwnedMarks[]>();
  const stretchesIn = (row: number): readonly OwnedMarks[] => {
    const stretches = known.get(row) ?? inOrder(near(row).flatMap((body) => body.marksIn(row)));
    known.set(row, stretches);
    return stretches;
  };
  return {
    takenIn: (row, own) => stretchesIn(row).flatMap(({ owner, marks }) => (owner === own ? [] : [marks])),
    takes: (row, at, own) => near(row).some(({ owner, takes }) => owner !== own && takes(at)),
  };
}

/** Stretches of which so many come into a row mostly lie over one another. */
const MANY = 32;

const inOrder = (all: readonly OwnedMarks[]): readonly OwnedMarks[] =>
  all.length < MANY ? [...all].sort((a, b) => a.marks[0] - b.marks[0]) : withoutOverlaps(all);

/**
 * The same marks as stretches that do not overlap, in ascending order: where hundreds stand in one place, one that
 * asks looks at a few stretches and not at all of them.
 */
function withoutOverlaps(all: readonly OwnedMarks[]): readonly OwnedMarks[] {
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
