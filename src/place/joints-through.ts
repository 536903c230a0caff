import { bodyOfSegment, bodyOfShape, separationMm } from "../geometry/body.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Shape } from "../geometry/shape.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Joint, Surface } from "../room/room.js";
import { longestMm } from "./fitting.js";

/** Joints of the board that an opening lies over. */
export function jointsThrough({ joints }: Surface, opening: Shape, centre: SurfacePoint): readonly Joint[] {
  const body = bodyOfShape(opening, centre);
  const reachMm = longestMm(opening) / 2;
  return joints
    .filter((joint) => liesWithin(joint, centre, reachMm))
    .filter((joint) => separationMm(bodyOfSegment(joint), body) < -EPSILON_MM);
}

/** Whether a joint comes into the upright box so far round a point: of thousands nearly none does. */
const liesWithin = ({ from, to }: Joint, { u, v }: SurfacePoint, mm: number): boolean =>
  Math.min(from.u, to.u) <= u + mm &&
  Math.max(from.u, to.u) >= u - mm &&
  Math.min(from.v, to.v) <= v + mm &&
  Math.max(from.v, to.v) >= v - mm;
