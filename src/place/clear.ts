import { type Body, distanceToBodyMm } from "../geometry/body.js";
import { isInside } from "../geometry/distance.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Surface } from "../room/room.js";
import type { Fitting } from "./fitting.js";
import { obstaclesOn, takenBy } from "./obstacles.js";

/** Whether an opening may have its centre at a point, by the exact distances. */
export function clearTest(
  surface: Surface,
  fitting: Fitting,
  neighbours: readonly Mounted[],
): (centre: SurfacePoint) => boolean {
  if (surface.framing.kind === "unknown") return () => false;
  return isClearOf(surface, obstaclesOn(surface, fitting, neighbours).map(takenBy));
}

/** The same where all that takes centres away is at hand. */
export const isClearOf =
  ({ finished, voids }: Surface, bodies: readonly Body[]) =>
  (centre: SurfacePoint): boolean =>
    isInside(centre, finished) &&
    !voids.some((each) => isInside(centre, each.finished)) &&
    bodies.every((body) => distanceToBodyMm(centre, body) >= 0);
