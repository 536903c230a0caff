import type { Body } from "./body.js";
import { type Segment, sidesOf } from "./distance.js";
import type { Polygon } from "./shape.js";
import { directionOf, inner, minus } from "./surface-point.js";

/**
 * Distance from a point to a figure, in mm; negative inside. Where `enoughMm` is given, a figure between it and the
 * distance may be returned instead of the distance, if that is at least as much.
 */
export type DistanceMm = (u: number, v: number, enoughMm?: number) => number;

/**
 * The same as `distanceToBodyMm`, for one body and very many points: what does not depend on the point is worked out
 * once, and nothing is made on the way.
 */
export function distanceFrom({ core, radiusMm }: Body): DistanceMm {
  const [only] = core;
  if (only !== undefined && core.length === 1) {
    return (u, v) => Math.sqrt((u - only.u) ** 2 + (v - only.v) ** 2) - radiusMm;
  }
  const toSides = nearestOf(sidesOf(core).map(distanceFromSegment));
  if (core.length === 2) return (u, v) => toSides(u, v) - radiusMm;
  const furthestOut = outOf(core);
  return (u, v, enoughMm = Number.POSITIVE_INFINITY) => {
    const out = furthestOut(u, v);
    // No corner or side is nearer than the line of the side that it lies furthest out of.
    return (out <= 0 || out - radiusMm >= enoughMm ? out : toSides(u, v)) - radiusMm;
  };
}

function nearestOf(distances: readonly DistanceMm[]): DistanceMm {
  return (u, v) => {
    let nearest = Number.POSITIVE_INFINITY;
    for (const distance of distances) nearest = Math.min(nearest, distance(u, v));
    return nearest;
  };
}

function distanceFromSegment({ from, to }: Segment): DistanceMm {
  const along = minus(to, from);
  const square = inner(along, along);
  return (u, v) => {
    const [du, dv] = [u - from.u, v - from.v];
    const share = square === 0 ? 0 : (du * along.u + dv * along.v) / square;
    const kept = Math.max(0, Math.min(1, share));
    return Math.sqrt((du - kept * along.u) ** 2 + (dv - kept * along.v) ** 2);
  };
}

/** How far out of the convex polygon's furthest side the point lies; 0 or less inside. */
function outOf(polygon: Polygon): DistanceMm {
  const sides = sidesOf(polygon).map(({ from, to }) => {
    const along = directionOf(minus(to, from));
    return { u: along.v, v: -along.u, offset: along.v * from.u - along.u * from.v };
  });
  return (u, v) => {
    let furthest = Number.NEGATIVE_INFINITY;
    for (const side of sides) furthest = Math.max(furthest, side.u * u + side.v * v - side.offset);
    return furthest;
  };
}
