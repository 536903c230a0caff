import { InternalError } from "../../findings/internal-error.js";
import { minus, plus, surfacePoint, times } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { pointAt, type TapeLine } from "../tapes.js";

/** A tape and the marks on it that an opening's centre may lie at: `startMm + mark * stepMm` for whole marks. */
export interface Axis {
  readonly line: TapeLine;
  readonly startMm: number;
  readonly stepMm: number;
  readonly least: number;
  readonly most: number;
}

/** Two tapes that fix a point of a surface together. */
export interface Marks {
  readonly axes: readonly [Axis, Axis];
  /** Where both tapes would read 0, and what a millimetre more of each adds. */
  readonly zero: SurfacePoint;
  readonly perMm: readonly [SurfacePoint, SurfacePoint];
}

/** Whole marks of both tapes, from the least to the most of each. */
export interface Box {
  readonly least: readonly [number, number];
  readonly most: readonly [number, number];
}

/** The marks of two tapes; null where these run side by side. */
export function marksOf(axes: readonly [Axis, Axis]): Marks | null {
  const lines = [axes[0].line, axes[1].line] as const;
  const zero = pointAt(lines, [0, 0]);
  const first = pointAt(lines, [1, 0]);
  const second = pointAt(lines, [0, 1]);
  if (zero === null || first === null || second === null) return null;
  return { axes, zero, perMm: [minus(first, zero), minus(second, zero)] };
}

/** Whether a tape is held where it is. */
export const isHeld = ({ least, most }: Axis): boolean => least === most;

export const nearestMark = ({ startMm, stepMm }: Axis, readMm: number): number =>
  Math.round((readMm - startMm) / stepMm);

export const readingMm = ({ startMm, stepMm }: Axis, mark: number): number => startMm + mark * stepMm;

/** The point at which both tapes read so much. */
export function pointOf({ zero, perMm }: Marks, firstMm: number, secondMm: number): SurfacePoint {
  return surfacePoint(
    zero.u + firstMm * perMm[0].u + secondMm * perMm[1].u,
    zero.v + firstMm * perMm[0].v + secondMm * perMm[1].v,
  );
}

export function pointAtMarks(marks: Marks, first: number, second: number): SurfacePoint {
  const [a, b] = marks.axes;
  return pointOf(marks, readingMm(a, first), readingMm(b, second));
}

export const allMarks = ({ axes: [a, b] }: Marks): Box => ({
  least: [a.least, b.least],
  most: [a.most, b.most],
});

export const isEmpty = ({ least, most }: Box): boolean => most[0] < least[0] || most[1] < least[1];

export const isSingle = ({ least, most }: Box): boolean => most[0] === least[0] && most[1] === least[1];

/** The box in two halves across its longer side, both of whole marks. Throws `InternalError` for a single mark. */
export function halves(box: Box, { axes: [a, b], perMm }: Marks): readonly [Box, Box] {
  const { least, most } = box;
  const firstMm = (most[0] - least[0]) * a.stepMm * lengthOf(perMm[0]);
  const secondMm = (most[1] - least[1]) * b.stepMm * lengthOf(perMm[1]);
  if (firstMm === 0 && secondMm === 0) throw new InternalError("a single mark has no halves");
  return firstMm >= secondMm ? halvesOfFirst(box) : halvesOfSecond(box);
}

const lengthOf = ({ u, v }: SurfacePoint): number => Math.hypot(u, v);

const middleOf = (least: number, most: number): number => Math.floor((least + most) / 2);

export function halvesOfFirst({ least, most }: Box): readonly [Box, Box] {
  const middle = middleOf(least[0], most[0]);
  return [
    { least, most: [middle, most[1]] },
    { least: [middle + 1, least[1]], most },
  ];
}

function halvesOfSecond({ least, most }: Box): readonly [Box, Box] {
  const middle = middleOf(least[1], most[1]);
  return [
    { least, most: [most[0], middle] },
    { least: [least[0], middle + 1], most },
  ];
}

/** The part of a surface that holds every mark of a box: its four corners, and a circle round them. */
export interface Hull {
  readonly corners: readonly [SurfacePoint, SurfacePoint, SurfacePoint, SurfacePoint];
  readonly centre: SurfacePoint;
  readonly radiusMm: number;
}

export function hullOf(marks: Marks, { least, most }: Box): Hull {
  const corners = [
    pointAtMarks(marks, least[0], least[1]),
    pointAtMarks(marks, most[0], least[1]),
    pointAtMarks(marks, most[0], most[1]),
    pointAtMarks(marks, least[0], most[1]),
  ] as const;
  const centre = times(plus(corners[0], corners[2]), 1 / 2);
  const radiusMm = Math.max(
    Math.hypot(corners[0].u - centre.u, corners[0].v - centre.v),
    Math.hypot(corners[1].u - centre.u, corners[1].v - centre.v),
  );
  return { corners, centre, radiusMm };
}
