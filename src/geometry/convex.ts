import type { Polygon } from "./shape.js";
import { plus, surfacePoint } from "./surface-point.js";
import type { SurfacePoint } from "./vector.js";

/** The smallest convex polygon round the points, anticlockwise; one point or two where they span no area. */
export function convexHull(points: readonly SurfacePoint[]): Polygon {
  const sorted = [...points].sort((a, b) => a.u - b.u || a.v - b.v);
  const lower = chain(sorted);
  const upper = chain(sorted.reverse());
  const hull = [...lower.slice(0, -1), ...upper.slice(0, -1)];
  return hull.length === 0 ? lower : hull;
}

/** The points, in order, that a string pulled tight on their right-hand side would touch. */
function chain(sorted: readonly SurfacePoint[]): SurfacePoint[] {
  const kept: SurfacePoint[] = [];
  for (const point of sorted) {
    while (!turnsLeft(kept[kept.length - 2], kept[kept.length - 1], point)) kept.pop();
    kept.push(point);
  }
  return kept;
}

function turnsLeft(a: SurfacePoint | undefined, b: SurfacePoint | undefined, c: SurfacePoint): boolean {
  if (b === undefined) return true;
  if (a === undefined) return b.u !== c.u || b.v !== c.v;
  // Asked more often than anything else of a room: no vectors are made for it.
  return (b.u - a.u) * (c.v - b.v) - (b.v - a.v) * (c.u - b.u) > 0;
}

/** Every sum of a point of one convex polygon and a point of the other (Minkowski sum): convex again. */
export function convexSum(a: Polygon, b: Polygon): Polygon {
  const [only] = b;
  if (b.length === 1 && only !== undefined) return a.map((corner) => plus(corner, only));
  return convexHull(a.flatMap((corner) => b.map((other) => plus(corner, other))));
}

/** The polygon turned by half a turn about the origin. */
export const mirrored = (polygon: Polygon): Polygon => polygon.map(({ u, v }) => surfacePoint(-u, -v));

/** A rectangle by two opposite corners, anticlockwise. */
export function rectangle(min: SurfacePoint, max: SurfacePoint): Polygon {
  return [min, surfacePoint(max.u, min.v), max, surfacePoint(min.u, max.v)];
}
