import { directionOf } from "../geometry/surface-point.js";
import {
  add,
  angleBetweenDeg,
  dot,
  radians,
  type SurfacePoint,
  scale,
  subtract,
  unit,
  type Vector,
} from "../geometry/vector.js";
import type { Mounted } from "./mounted.js";

/** Nearer to the normal than this, a target gives no direction to turn a baffle to. Our own choice. */
export const LEAST_OFF_NORMAL_DEG = 1;

/** Angle at the loudspeaker between its surface's normal and a point. */
export function offNormalDeg({ surface, position }: Mounted, at: Vector): number {
  return angleBetweenDeg(surface.frame.n, subtract(at, position));
}

/**
 * The direction on the surface, of length 1, that a tilted baffle leans to. A round one is turned toward the target;
 * a rectangular opening cannot be turned once it is cut, so `turn` says it (up the sheet when 0). Null where the
 * baffle is straight, or round with no target or one that stands on the normal.
 */
export function leanOf(mounted: Mounted, target: Vector | null): SurfacePoint | null {
  const { speaker } = mounted;
  if (speaker.model.baffleTiltDeg === 0) return null;
  if (speaker.opening.kind === "rectangle") return leanByTurn(speaker.turnDeg);
  if (target === null || offNormalDeg(mounted, target) < LEAST_OFF_NORMAL_DEG) return null;
  const { u, v } = mounted.surface.frame;
  const toTarget = subtract(target, mounted.position);
  return directionOf({ u: dot(toTarget, u), v: dot(toTarget, v) });
}

const LEAN_BY_TURN: Readonly<Record<0 | 90 | 180 | 270, SurfacePoint>> = {
  0: { u: 0, v: 1 },
  90: { u: -1, v: 0 },
  180: { u: 0, v: -1 },
  270: { u: 1, v: 0 },
};

const leanByTurn = (turnDeg: 0 | 90 | 180 | 270): SurfacePoint => LEAN_BY_TURN[turnDeg];

/**
 * The acoustic axis a = n cos t + d sin t, of length 1, for the baffle's tilt t and its lean d on the surface; null
 * for a tilted baffle whose lean nobody knows.
 */
export function axisOf({ speaker, surface }: Mounted, lean: SurfacePoint | null): Vector | null {
  const { n, u, v } = surface.frame;
  const tilt = radians(speaker.model.baffleTiltDeg);
  if (tilt === 0) return n;
  if (lean === null) return null;
  const onSurface = add(scale(u, lean.u), scale(v, lean.v));
  return unit(add(scale(n, Math.cos(tilt)), scale(onSurface, Math.sin(tilt))));
}

/**
 * Angle at the loudspeaker between its acoustic axis and the line to a point. Null where the axis is unknown.
 */
export function offAxisDeg(mounted: Mounted, lean: SurfacePoint | null, at: Vector): number | null {
  const axis = axisOf(mounted, lean);
  return axis === null ? null : angleBetweenDeg(axis, subtract(at, mounted.position));
}
