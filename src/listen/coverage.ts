import { type Cone, pierced } from "../geometry/cone.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Frame } from "../geometry/frame.js";
import { angleBetweenDeg, radians, type SurfacePoint, vector } from "../geometry/vector.js";
import { axisOf, leanOf } from "./axis.js";
import type { Mounted } from "./mounted.js";

/*
 * What a loudspeaker covers: a cone about its acoustic axis as wide as its maker's -6 dB angle. A MODEL: the same all
 * round the axis and at every frequency, without reflections.
 */

/** Null where no coverage is stated, or nobody can say which way the axis points. */
export function coneOf(mounted: Mounted): Cone | null {
  const { speaker, position } = mounted;
  const { target, model } = speaker;
  const axis = axisOf(mounted, leanOf(mounted, target.kind === "none" ? null : target.at));
  if (axis === null || model.coverageDeg === null) return null;
  return { apex: position, axis, halfDeg: model.coverageDeg / 2 };
}

/** The level plane at a height over the floor, seen from above: u to the right, v toward the front wall. */
export const levelAt = (zMm: number): Frame => ({
  origin: vector(0, 0, zMm),
  u: vector(1, 0, 0),
  v: vector(0, 1, 0),
  n: vector(0, 0, 1),
});

/** What of a level plane a cone covers, with no walls round it. */
export type Footprint =
  /** The border is an ellipse: its long and its short diameter; `foot` is where the axis meets the plane. */
  | {
      readonly kind: "closed";
      readonly longMm: number;
      readonly shortMm: number;
      readonly foot: SurfacePoint;
    }
  /** It goes on for ever one way; the axis may miss the plane. */
  | { readonly kind: "open"; readonly foot: SurfacePoint | null }
  | { readonly kind: "none" };

/**
 * The footprint on the level plane at `zMm`. With the axis t off the vertical, half the coverage h and the height H
 * over the plane the ellipse is H (tan(t + h) - tan(t - h)) long and 2 H sin h / sqrt(cos²t - sin²h) wide.
 */
export function footprintOf(cone: Cone, zMm: number): Footprint {
  const heightMm = cone.apex.z - zMm;
  const foot = pierced(cone, levelAt(zMm));
  if (Math.abs(heightMm) < EPSILON_MM) return throughApex(cone);
  const toPlane = vector(0, 0, -Math.sign(heightMm));
  const offDeg = angleBetweenDeg(cone.axis, toPlane);
  if (offDeg - cone.halfDeg >= 90) return { kind: "none" };
  if (offDeg + cone.halfDeg >= 90 || foot === null) return { kind: "open", foot };
  const [off, half] = [radians(offDeg), radians(cone.halfDeg)];
  const high = Math.abs(heightMm);
  return {
    kind: "closed",
    longMm: high * (Math.tan(off + half) - Math.tan(off - half)),
    shortMm: (2 * high * Math.sin(half)) / Math.sqrt(Math.cos(off) ** 2 - Math.sin(half) ** 2),
    foot,
  };
}

/** A plane through the loudspeaker itself: a fan of it, or nothing where the cone only touches it there. */
function throughApex({ axis, halfDeg }: Cone): Footprint {
  const offPlaneDeg = Math.abs(90 - angleBetweenDeg(axis, vector(0, 0, 1)));
  return offPlaneDeg < halfDeg ? { kind: "open", foot: null } : { kind: "none" };
}
