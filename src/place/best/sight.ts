import { sidesOf } from "../../geometry/distance.js";
import { toSurface, toWorld } from "../../geometry/frame.js";
import type { Polygon } from "../../geometry/shape.js";
import { minus, outer, surfacePoint } from "../../geometry/surface-point.js";
import { degrees, dot, type SurfacePoint, subtract, type Vector } from "../../geometry/vector.js";
import type { Surface } from "../../room/room.js";
import type { Wish } from "./cost.js";

/**
 * A surface as it is seen from the ear, in its own axes: the view to (u, v) is (u - foot.u, v - foot.v, heightMm) along
 * u, v and n. Every angle here is at the ear, between such a view and the preferred direction.
 */
export interface Sight {
  /** The ear dropped square onto the surface. */
  readonly foot: SurfacePoint;
  /** From the ear to the finished face along n: negative, since n points at the person. */
  readonly heightMm: number;
  /** The preferred direction along u, v and n. */
  readonly preferred: Along;
  /** Where the preferred direction meets the surface's plane; null where it looks along it or away from it. */
  readonly ideal: SurfacePoint | null;
}

interface Along {
  readonly u: number;
  readonly v: number;
  readonly n: number;
}

export function sightOn({ frame, boardMm }: Surface, { ear, preferred }: Wish): Sight {
  const origin = toWorld(frame, surfacePoint(0, 0), boardMm);
  const foot = toSurface(frame, ear);
  const heightMm = dot(subtract(origin, ear), frame.n);
  const along = { u: dot(preferred, frame.u), v: dot(preferred, frame.v), n: dot(preferred, frame.n) };
  return { foot, heightMm, preferred: along, ideal: idealPoint(foot, heightMm, along) };
}

function idealPoint(foot: SurfacePoint, heightMm: number, { u, v, n }: Along): SurfacePoint | null {
  const share = heightMm / n;
  if (!(share > 0) || !Number.isFinite(share)) return null;
  return surfacePoint(foot.u + share * u, foot.v + share * v);
}

/** Whether the ideal point lies inside a convex polygon, its border left out. */
export function idealIn({ ideal }: Sight, polygon: Polygon): boolean {
  if (ideal === null) return false;
  const turns = sidesOf(polygon).map(({ from, to }) => outer(minus(to, from), minus(ideal, from)));
  return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0);
}

/** The view from the ear to a point, in the world. */
export function viewTo({ foot, heightMm }: Sight, { frame }: Surface, u: number, v: number): Vector {
  const [x, y] = [u - foot.u, v - foot.v];
  return {
    x: x * frame.u.x + y * frame.v.x + heightMm * frame.n.x,
    y: x * frame.u.y + y * frame.v.y + heightMm * frame.n.y,
    z: x * frame.u.z + y * frame.v.z + heightMm * frame.n.z,
  };
}

/** Angle between the view to (u, v) and the preferred direction, by the cross product: steady near 0. */
export function offDegAt({ foot, heightMm: h, preferred: a }: Sight, u: number, v: number): number {
  const [x, y] = [u - foot.u, v - foot.v];
  const [p, q, r] = [a.v * h - a.n * y, a.n * x - a.u * h, a.u * y - a.v * x];
  const across = Math.sqrt(p * p + q * q + r * r);
  return degrees(Math.atan2(across, a.u * x + a.v * y + a.n * h));
}

/**
 * The least angle on the border of a polygon. The cosine of the angle has a single turning point on a line, so that the
 * least of each side is there or at an end.
 */
export function leastOffDegOn(sight: Sight, corners: Polygon): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [index, from] of corners.entries()) {
    const to = corners[(index + 1) % corners.length] ?? from;
    const share = turningPoint(sight, from, to);
    least = Math.min(least, offDegAt(sight, from.u, from.v));
    if (!(share > 0 && share < 1)) continue;
    const [u, v] = [from.u + share * (to.u - from.u), from.v + share * (to.v - from.v)];
    least = Math.min(least, offDegAt(sight, u, v));
  }
  return least;
}

/**
 * With the view w + s d and the preferred direction a: the derivative of a·(w + s d) / |w + s d| is nought where
 * s = ((a·w)(w·d) - (a·d)(w·w)) / ((a·d)(w·d) - (a·w)(d·d)).
 */
function turningPoint(
  { foot, heightMm: h, preferred: a }: Sight,
  from: SurfacePoint,
  to: SurfacePoint,
): number {
  const [x, y] = [from.u - foot.u, from.v - foot.v];
  const [dx, dy] = [to.u - from.u, to.v - from.v];
  const aw = a.u * x + a.v * y + a.n * h;
  const ad = a.u * dx + a.v * dy;
  const wd = x * dx + y * dy;
  return (aw * wd - ad * (x * x + y * y + h * h)) / (ad * wd - aw * (dx * dx + dy * dy));
}
