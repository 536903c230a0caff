import { type Segment, sidesOf } from "./distance.js";
import type { Polygon } from "./shape.js";
import {
  directionOf,
  distanceMm,
  inner,
  minus,
  outer,
  plus,
  quarterTurn,
  surfacePoint,
  times,
} from "./surface-point.js";
import type { SurfacePoint } from "./vector.js";

/** A side of a closed ring and how far it is to be moved in, in mm. */
export interface MovedSide extends Segment {
  readonly inMm: number;
}

/** The corners of an anticlockwise ring with each of its sides moved in; as many as there were. */
export function movedIn(sides: readonly MovedSide[]): Polygon {
  return sides.map((side, index) => corner(sides.at(index - 1) ?? side, side));
}

/** Where a side and the one before it meet once both are moved in; sides along each other have their own corner. */
function corner(before: MovedSide, side: MovedSide): SurfacePoint {
  const [a, b] = [lineOf(before), lineOf(side)];
  const turn = outer(a.inward, b.inward);
  if (Math.abs(turn) < ALONG_EACH_OTHER) {
    return plus(side.from, times(b.inward, Math.max(before.inMm, side.inMm)));
  }
  return surfacePoint(
    (a.offsetMm * b.inward.v - b.offsetMm * a.inward.v) / turn,
    (a.inward.u * b.offsetMm - b.inward.u * a.offsetMm) / turn,
  );
}

/** Sine of the angle between two sides under which they are one line; no real corner comes near it. */
const ALONG_EACH_OTHER = 1e-9;

/** The line along the side once it is moved: the points p with `inward` · p = `offsetMm`. */
function lineOf({ from, to, inMm }: MovedSide): { readonly inward: SurfacePoint; readonly offsetMm: number } {
  const inward = quarterTurn(directionOf(minus(to, from)));
  return { inward, offsetMm: inner(inward, from) + inMm };
}

/** Twice the area inside: above 0 where the corners go round anticlockwise. */
export function twiceAreaMm2(polygon: Polygon): number {
  return sidesOf(polygon).reduce((sum, { from, to }) => sum + outer(from, to), 0);
}

/** What of the polygon has `direction` · p >= `leastMm`; pieces of a concave one stay joined along the cut. */
export function cutOff(polygon: Polygon, direction: SurfacePoint, leastMm: number): Polygon {
  return sidesOf(polygon).flatMap(({ from, to }) => {
    const [a, b] = [inner(direction, from) - leastMm, inner(direction, to) - leastMm];
    const kept = a >= 0 ? [from] : [];
    const crosses = (a > 0 && b < 0) || (a < 0 && b > 0);
    return crosses ? [...kept, plus(from, times(minus(to, from), a / (a - b)))] : kept;
  });
}

/** The stretches of a line, from `origin` along a direction of length 1, that lie inside the polygon; ascending, in mm. */
export function spansInside(
  polygon: Polygon,
  { origin, direction }: { readonly origin: SurfacePoint; readonly direction: SurfacePoint },
): readonly (readonly [number, number])[] {
  const aside = (point: SurfacePoint): number => outer(direction, minus(point, origin));
  const crossings = sidesOf(polygon)
    .flatMap(({ from, to }) => {
      const [a, b] = [aside(from), aside(to)];
      // A corner on the line belongs to the side above it, so that each crossing counts once.
      if (a > 0 === b > 0) return [];
      return [inner(direction, minus(plus(from, times(minus(to, from), a / (a - b))), origin))];
    })
    .sort((a, b) => a - b);
  return pairsOf(crossings);
}

/** From each first crossing to the second after it. */
function pairsOf(crossings: readonly number[]): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  for (let index = 0; index + 1 < crossings.length; index += 2) {
    const start = crossings[index] ?? 0;
    const end = crossings[index + 1] ?? start;
    if (end > start) pairs.push([start, end]);
  }
  return pairs;
}

/**
 * The same for one polygon and very many lines of one direction, each told by how far aside it lies (`outer` of the
 * direction and any point of it); along such a line it is measured from where that is square to the surface's zero.
 */
export function spansOf(
  polygon: Polygon,
  direction: SurfacePoint,
): (asideMm: number) => readonly (readonly [number, number])[] {
  const sides = sidesOf(polygon).map(({ from, to }) => ({
    ...{ a: outer(direction, from), b: outer(direction, to) },
    ...{ from: inner(direction, from), to: inner(direction, to) },
  }));
  const least = Math.min(...sides.map(({ a }) => a));
  const most = Math.max(...sides.map(({ a }) => a));
  return (asideMm) => {
    if (asideMm < least || asideMm > most) return [];
    const crossings: number[] = [];
    for (const { a, b, from, to } of sides) {
      if (a > asideMm !== b > asideMm) crossings.push(from + ((to - from) * (a - asideMm)) / (a - b));
    }
    return pairsOf(crossings.sort((a, b) => a - b));
  };
}

/** The first two sides that cross or touch where they are not neighbours, by their places in the ring; null for none. */
export function crossingSides(polygon: Polygon): readonly [number, number] | null {
  const sides = sidesOf(polygon);
  for (const [index, side] of sides.entries()) {
    for (let other = index + 2; other < sides.length; other++) {
      const against = sides[other];
      const isNeighbour = index === 0 && other === sides.length - 1;
      if (against !== undefined && !isNeighbour && meet(side, against)) return [index, other];
    }
  }
  return null;
}

function meet(a: Segment, b: Segment): boolean {
  const side = (point: SurfacePoint, of: Segment): number =>
    Math.sign(outer(minus(of.to, of.from), minus(point, of.from)));
  return side(b.from, a) !== side(b.to, a) && side(a.from, b) !== side(a.to, b);
}

/** The shortest side's length in mm. */
export const shortestSideMm = (polygon: Polygon): number =>
  Math.min(...sidesOf(polygon).map(({ from, to }) => distanceMm(from, to)));
