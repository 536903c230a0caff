import type { Body } from "../geometry/body.js";
import { type Chord, chordsOf } from "../geometry/chord.js";
import type { Region } from "../geometry/clip.js";
import { spansOf } from "../geometry/ring.js";
import { directionOf, inner, lengthMm, minus, outer } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Surface } from "../room/room.js";
import type { RowsLeft } from "./rows-left.js";
import { pointAt, type TapeLine, tapeMm } from "./tapes.js";

/** Whole marks next to each other in a row, both ends included. */
export type Marks = readonly [first: number, last: number];

/**
 * The whole marks of two tapes over a surface, row by row: in a row one tape's reading stays. Rows lie along the
 * members, so that a member takes whole rows or none of them.
 */
export interface Rows {
  readonly surface: Surface;
  readonly tapes: readonly [TapeLine, TapeLine];
  readonly tapeStepMm: number;
  /** The tape whose reading stays in a row. */
  readonly held: TapeLine;
  /** From one row to the next, square to them. */
  readonly pitchMm: number;
  /** From one mark of a row to the next. */
  readonly stepMm: number;
  readonly direction: SurfacePoint;
  /** What the two tapes read at a mark, in steps. */
  readonly stepsAt: (row: number, mark: number) => readonly [number, number];
  readonly pointAt: (row: number, mark: number) => SurfacePoint;
}

/** The rows of two tapes; null where the tapes run side by side. */
export function rowsOf(surface: Surface, tapes: Rows["tapes"], tapeStepMm: number): Rows | null {
  const at = ([first, second]: readonly [number, number]): SurfacePoint | null =>
    pointAt(tapes, [first * tapeStepMm, second * tapeStepMm]);
  const [zero, first, second] = [at([0, 0]), at([1, 0]), at([0, 1])];
  if (zero === null || first === null || second === null) return null;
  const alongFirst = minus(first, zero);
  const alongSecond = minus(second, zero);
  const isFirst = liesMoreAlong(surface, alongFirst, alongSecond);
  const step = isFirst ? alongFirst : alongSecond;
  const direction = directionOf(step);
  const stepsAt = (row: number, mark: number) => (isFirst ? ([mark, row] as const) : ([row, mark] as const));
  return {
    ...{ surface, tapes, tapeStepMm, direction, stepsAt },
    held: isFirst ? tapes[1] : tapes[0],
    pitchMm: Math.abs(outer(direction, isFirst ? alongSecond : alongFirst)),
    stepMm: lengthMm(step),
    pointAt: (row, mark) => at(stepsAt(row, mark)) ?? zero,
  };
}

function liesMoreAlong({ framing }: Surface, one: SurfacePoint, other: SurfacePoint): boolean {
  const [member] = framing.kind === "known" ? framing.members : [];
  if (member === undefined) return true;
  const run = minus(member.to, member.from);
  return Math.abs(inner(directionOf(one), run)) >= Math.abs(inner(directionOf(other), run));
}

/** Which row a point lies on; between two rows it is no whole number. */
const rowOf = ({ held, tapeStepMm }: Rows, point: SurfacePoint): number => tapeMm(held, point) / tapeStepMm;

/** The whole mark of a row that is nearest to a point. */
export const markNearest = (rows: Rows, row: number, point: SurfacePoint): number =>
  Math.round(inner(rows.direction, minus(point, rows.pointAt(row, 0))) / rows.stepMm);

/** The first and the last that come over the surface. */
export function endRows(rows: Rows): readonly [least: number, most: number] {
  const corners = rows.surface.finished.map((corner) => rowOf(rows, corner));
  return [Math.floor(Math.min(...corners)), Math.ceil(Math.max(...corners))];
}

/** All rows over the surface that may hold something, the nearest to a point first, and how far off it they lie. */
export function* outwardFrom(
  rows: Rows,
  point: SurfacePoint,
  left: RowsLeft,
): Generator<{ readonly row: number; readonly awayMm: number }> {
  const at = rowOf(rows, point);
  const [least, most] = endRows(rows);
  let below = left.below(Math.min(Math.floor(at), most));
  let above = left.above(Math.max(Math.floor(at) + 1, least));
  while (below >= least || above <= most) {
    const isBelow = below >= least && (above > most || at - below <= above - at);
    const row = isBelow ? below : above;
    yield { row, awayMm: Math.abs(row - at) * rows.pitchMm };
    if (isBelow) below = left.below(row - 1);
    else above = left.above(row + 1);
  }
}

/** The rows that no outline of a region comes into, nor next to. */
export function rowsBeside(rows: Rows, region: Region): readonly number[] {
  const spans = region
    .map((ring) => ring.map((corner) => rowOf(rows, corner)))
    .map((corners) => [Math.min(...corners) - 1, Math.max(...corners) + 1] as const)
    .sort((a, b) => a[0] - b[0]);
  const [least, most] = endRows(rows);
  const beside: number[] = [];
  let next = least;
  for (const [from, to] of [...spans, [most + 1, most + 1] as const]) {
    for (; next < from; next += 1) beside.push(next);
    next = Math.max(next, Math.floor(to) + 1);
  }
  return beside;
}

/** No mark of a stretch in a row is nearer to a point than this. */
export function leastAwayMm(rows: Rows, at: RowAt, marks: Marks, point: SurfacePoint): number {
  const { direction, stepMm } = rows;
  const along = (inner(direction, point) - at.zeroMm) / stepMm;
  const besideMm = Math.max(0, marks[0] - along, along - marks[1]) * stepMm;
  const asideMm = outer(direction, point) - at.asideMm;
  return Math.sqrt(besideMm * besideMm + asideMm * asideMm);
}

/** A body and the rows that it comes into, with the marks that it takes of each; null for none. */
export interface InRows {
  readonly first: number;
  readonly last: number;
  readonly marksIn: (at: RowAt) => Marks | null;
}

/** A row, and where its line lies: how far aside, and how far along it the first mark is. */
export interface RowAt {
  readonly row: number;
  readonly asideMm: number;
  readonly zeroMm: number;
}

export function rowAt({ direction, pointAt: at }: Rows, row: number): RowAt {
  const zero = at(row, 0);
  return { row, asideMm: outer(direction, zero), zeroMm: inner(direction, zero) };
}

export function rowsOver(rows: Rows, body: Body): InRows {
  const middles = body.core.map((corner) => rowOf(rows, corner));
  const reach = body.radiusMm / rows.tapeStepMm;
  const chordAt = chordsOf(body, rows.direction);
  return {
    first: Math.min(...middles) - reach,
    last: Math.max(...middles) + reach,
    marksIn: (at) => {
      const chord = chordAt(at.asideMm);
      return chord === null ? null : takenBetween(rows, at, chord);
    },
  };
}

/** A part of a mark's step: marks this near to an edge are left to the exact rule. */
const NEAR_EDGE = 1e-6;

/** Finds the marks of a row that lie on the surface and in none of the bodies, or so near to an edge that it is not sure. */
export function marksFree(rows: Rows): (row: number, taken: readonly InRows[]) => readonly Marks[] {
  const { finished, voids } = rows.surface;
  const outline = spansOf(finished, rows.direction);
  const holes = voids.map((each) => spansOf(each.finished, rows.direction));
  return (row, taken) => {
    const at = rowAt(rows, row);
    const inside = outline(at.asideMm).flatMap((span) => marksWithin(rows, at, span));
    if (inside.length === 0) return inside;
    const inHoles = holes
      .flatMap((hole) => hole(at.asideMm))
      .map((span) => takenBetween(rows, at, span))
      .filter((marks) => marks !== null);
    const inBodies = marksIn(at, taken, [inside[0]?.[0] ?? 0, inside.at(-1)?.[1] ?? 0]);
    return inBodies === null ? [] : without(without(inside, ascending(inHoles)), ascending(inBodies));
  };
}

/** The marks of a row that bodies take; null where one of them takes all of those asked about. */
function marksIn(at: RowAt, taken: readonly InRows[], all: Marks): Marks[] | null {
  const marks: Marks[] = [];
  for (const body of taken) {
    if (body.first >= at.row || body.last <= at.row) continue;
    const own = body.marksIn(at);
    if (own === null) continue;
    if (own[0] <= all[0] && own[1] >= all[1]) return null;
    marks.push(own);
  }
  return marks;
}

const ascending = (marks: Marks[]): readonly Marks[] => marks.sort((a, b) => a[0] - b[0]);

const ROWS_IN_BLOCK = 64;
/** What comes into more blocks than this is looked for when a row is asked about, and not put into each. */
const FEW_BLOCKS = 16;

/** The bodies that come into a row or the one beside it, and few more: of thousands most lie far from it. */
export function byRow<Each extends InRows>(bodies: readonly Each[]): (row: number) => readonly Each[] {
  const short = new Map<number, Each[]>();
  const long: Each[] = [];
  const blockOf = (row: number): number => Math.floor(row / ROWS_IN_BLOCK);
  for (const body of bodies) {
    const [from, to] = [blockOf(body.first - 1), blockOf(body.last + 1)];
    if (to - from > FEW_BLOCKS) long.push(body);
    else for (let block = from; block <= to; block += 1) pushTo(short, block, body);
  }
  const blocks = new Map<number, readonly Each[]>();
  return (row) => {
    const block = blockOf(row);
    const known = blocks.get(block);
    if (known !== undefined) return known;
    const [least, most] = [block * ROWS_IN_BLOCK - 1, (block + 1) * ROWS_IN_BLOCK];
    const near = [
      ...(short.get(block) ?? []),
      ...long.filter(({ first, last }) => first < most && last > least),
    ];
    blocks.set(block, near);
    return near;
  };
}

function pushTo<Key, Each>(lists: Map<Key, Each[]>, key: Key, each: Each): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [each]);
  else list.push(each);
}

function marksWithin({ stepMm }: Rows, { zeroMm }: RowAt, [fromMm, toMm]: Chord): readonly Marks[] {
  const first = Math.ceil((fromMm - zeroMm) / stepMm - NEAR_EDGE);
  const last = Math.floor((toMm - zeroMm) / stepMm + NEAR_EDGE);
  return first <= last ? [[first, last]] : [];
}

function takenBetween({ stepMm }: Rows, { zeroMm }: RowAt, [fromMm, toMm]: Chord): Marks | null {
  const first = Math.ceil((fromMm - zeroMm) / stepMm + NEAR_EDGE);
  const last = Math.floor((toMm - zeroMm) / stepMm - NEAR_EDGE);
  return first <= last ? [first, last] : null;
}

/** What is left of free marks; what takes them comes in ascending order of its beginnings. */
function without(free: readonly Marks[], taken: readonly Marks[]): readonly Marks[] {
  if (taken.length === 0) return free;
  const left: Marks[] = [];
  for (const stretch of free) {
    const last = stretch[1];
    let next = stretch[0];
    for (const one of taken) {
      const from = one[0];
      if (from > last) break;
      if (from > next) left.push([next, from - 1]);
      next = Math.max(next, one[1] + 1);
    }
    if (next <= last) left.push([next, last]);
  }
  return left;
}
