import { EPSILON_MM } from "./epsilon.js";
import type { Polygon } from "./shape.js";
import { directionOf, distanceMm, inner, minus, outer, plus, times } from "./surface-point.js";
import type { SurfacePoint } from "./vector.js";

export interface Segment {
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
}

/** The sides of a polygon in order: none of a single point, and both ways along a polygon of two. */
export function sidesOf(polygon: Polygon): readonly Segment[] {
  if (polygon.length < 2) return [];
  return polygon.map((from, index) => ({ from, to: polygon[(index + 1) % polygon.length] ?? from }));
}

/** The point of the segment that is nearest to `point`. */
export function nearestOnSegment(point: SurfacePoint, { from, to }: Segment): SurfacePoint {
  const along = minus(to, from);
  const square = inner(along, along);
  if (square === 0) return from;
  const share = inner(minus(point, from), along) / square;
  return plus(from, times(along, Math.min(1, Math.max(0, share))));
}

export function distanceToSegmentMm(point: SurfacePoint, segment: Segment): number {
  return distanceMm(point, nearestOnSegment(point, segment));
}

/** How far `point` lies to the right of the line through the segment, in mm: outside, of an anticlockwise polygon. */
export function offLineMm(point: SurfacePoint, { from, to }: Segment): number {
  return -outer(directionOf(minus(to, from)), minus(point, from));
}

/**
 * Distance from a point to the border of an anticlockwise convex polygon, in mm: negative inside, where it is the
 * shortest way out. A polygon of one or two points has no inside.
 */
export function distanceToConvexMm(point: SurfacePoint, polygon: Polygon): number {
  const [only] = polygon;
  if (only !== undefined && polygon.length === 1) return distanceMm(point, only);
  const sides = sidesOf(polygon);
  const furthestOut = Math.max(...sides.map((side) => offLineMm(point, side)));
  if (furthestOut <= 0 && polygon.length > 2) return furthestOut;
  return Math.min(...sides.map((side) => distanceToSegmentMm(point, side)));
}

/** Whether the point lies in the polygon, of any form; on its border counts as in. Even-odd rule. */
export function isInside(point: SurfacePoint, polygon: Polygon): boolean {
  // Asked of every point of every curve: no sides are made of the corners.
  let inside = false;
  let from = polygon.at(-1);
  for (const to of polygon) {
    if (from !== undefined) {
      if (liesBeside(point, from, to) && distanceToSegmentMm(point, { from, to }) === 0) return true;
      if (crossesToTheRight(point, from, to)) inside = !inside;
    }
    from = to;
  }
  return inside;
}

/** Whether a point lies in the upright box round a segment: most do not, and need not be measured to it. */
const liesBeside = ({ u, v }: SurfacePoint, from: SurfacePoint, to: SurfacePoint): boolean =>
  u >= Math.min(from.u, to.u) - EPSILON_MM &&
  u <= Math.max(from.u, to.u) + EPSILON_MM &&
  v >= Math.min(from.v, to.v) - EPSILON_MM &&
  v <= Math.max(from.v, to.v) + EPSILON_MM;

function crossesToTheRight(point: SurfacePoint, from: SurfacePoint, to: SurfacePoint): boolean {
  if (from.v > point.v === to.v > point.v) return false;
  return point.u < from.u + ((point.v - from.v) / (to.v - from.v)) * (to.u - from.u);
}
