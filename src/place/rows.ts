import type { Body } from "../geometry/body.js";
import { type Chord, chordOf, type Line } from "../geometry/chord.js";
import { spansInside } from "../geometry/ring.js";
import { directionOf, inner, lengthMm, minus, outer } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Surface } from "../room/room.js";
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

const lineOf = ({ direction, pointAt: at }: Rows, row: number): Line => ({ origin: at(row, 0), direction });

/** The whole mark of a row that is nearest to a point. */
export const markNearest = (rows: Rows, row: number, point: SurfacePoint): number =>
  Math.round(inner(rows.direction, minus(point, rows.pointAt(row, 0))) / rows.stepMm);

/** All rows that come over the surface, the nearest to a point first, and how far off it they lie. */
export function* outwardFrom(
  rows: Rows,
  point: SurfacePoint,
): Generator<{ readonly row: number; readonly awayMm: number }> {
  const at = rowOf(rows, point);
  const corners = rows.surface.finished.map((corner) => rowOf(rows, corner));
  const [least, most] = [Math.floor(Math.min(...corners)), Math.ceil(Math.max(...corners))];
  let [below, above] = [Math.min(Math.floor(at), most), Math.max(Math.floor(at) + 1, least)];
  while (below >= least || above <= most) {
    const isBelow = below >= least && (above > most || at - below <= above - at);
    const row = isBelow ? below-- : above++;
    yield { row, awayMm: Math.abs(row - at) * rows.pitchMm };
  }
}

/** A body and the rows that it comes into. */
export interface InRows {
  readonly body: Body;
  readonly first: number;
  readonly last: number;
}

export function rowsOver(rows: Rows, body: Body): InRows {
  const middles = body.core.map((corner) => rowOf(rows, corner));
  const reach = body.radiusMm / rows.tapeStepMm;
  return { body, first: Math.min(...middles) - reach, last: Math.max(...middles) + reach };
}

/** A part of a mark's step: marks this near to an edge are left to the exact rule. */
const NEAR_EDGE = 1e-6;

/** The marks of a row that lie on the surface and in none of the bodies, or so near to an edge that it is not sure. */
export function marksFree(rows: Rows, row: number, taken: readonly InRows[]): readonly Marks[] {
  const line = lineOf(rows, row);
  const { finished, voids } = rows.surface;
  const inside = spansInside(finished, line).flatMap((span) => marksWithin(rows, span));
  const inVoids = voids.flatMap((each) => spansInside(each.finished, line));
  return without(without(inside, marksTaken(rows, inVoids)), marksIn(rows, row, taken));
}

/** The marks of a row that bodies take, in ascending order of their beginnings. */
export function marksIn(rows: Rows, row: number, taken: readonly InRows[]): readonly Marks[] {
  const here = taken.filter(({ first, last }) => first < row && last > row);
  if (here.length === 0) return [];
  const line = lineOf(rows, row);
  const chords = here.flatMap(({ body }) => {
    const chord = chordOf(body, line);
    return chord === null ? [] : [chord];
  });
  return marksTaken(rows, chords);
}

const ROWS_IN_BLOCK = 64;

/** The bodies that come into a row or the one beside it, and few more: of thousands most lie far from it. */
export function byRow<Each extends InRows>(bodies: readonly Each[]): (row: number) => readonly Each[] {
  const blocks = new Map<number, readonly Each[]>();
  return (row) => {
    const block = Math.floor(row / ROWS_IN_BLOCK);
    const [least, most] = [block * ROWS_IN_BLOCK - 1, (block + 1) * ROWS_IN_BLOCK];
    const near = blocks.get(block) ?? bodies.filter(({ first, last }) => first < most && last > least);
    blocks.set(block, near);
    return near;
  };
}

function marksWithin({ stepMm }: Rows, [fromMm, toMm]: Chord): readonly Marks[] {
  const [first, last] = [Math.ceil(fromMm / stepMm - NEAR_EDGE), Math.floor(toMm / stepMm + NEAR_EDGE)];
  return first <= last ? [[first, last]] : [];
}

/** In ascending order. */
function marksTaken({ stepMm }: Rows, taken: readonly Chord[]): readonly Marks[] {
  return taken
    .map(
      ([fromMm, toMm]) =>
        [Math.ceil(fromMm / stepMm + NEAR_EDGE), Math.floor(toMm / stepMm - NEAR_EDGE)] as const,
    )
    .filter(([first, last]) => first <= last)
    .sort((a, b) => a[0] - b[0]);
}

/** What is left of free marks; what takes them comes in ascending order of its beginnings. */
export function without(free: readonly Marks[], taken: readonly Marks[]): readonly Marks[] {
  if (taken.length === 0) return free;
  return free.flatMap(([first, last]) => {
    const left: Marks[] = [];
    let next = first;
    for (const [from, to] of taken) {
      if (from > last) break;
      if (from > next) left.push([next, from - 1]);
      next = Math.max(next, to + 1);
    }
    return next <= last ? [...left, [next, last] as const] : left;
  });
}
