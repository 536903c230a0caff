import { type Body, distanceToBodyMm } from "../geometry/body.js";
import { isInside } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
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
export function isClearOf(
  { finished, voids }: Surface,
  bodies: readonly Body[],
): (centre: SurfacePoint) => boolean {
  const takings = bodies.map(takingOf);
  return (centre) =>
    isInside(centre, finished) &&
    !voids.some((each) => isInside(centre, each.finished)) &&
    !takings.some((takes) => takes(centre));
}

/** Whether a body takes a centre away. Most bodies are far from most centres, which the box round them tells at once. */
export function takingOf(body: Body): (centre: SurfacePoint) => boolean {
  const reachMm = body.radiusMm + EPSILON_MM;
  const across = body.core.map(({ u }) => u);
  const along = body.core.map(({ v }) => v);
  const [left, right] = [Math.min(...across) - reachMm, Math.max(...across) + reachMm];
  const [below, above] = [Math.min(...along) - reachMm, Math.max(...along) + reachMm];
  return (centre) =>
    centre.u > left &&
    centre.u < right &&
    centre.v > below &&
    centre.v < above &&
    distanceToBodyMm(centre, body) < 0;
}
