import { type Body, distanceToBodyMm } from "../geometry/body.js";
import { isInside } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Polygon } from "../geometry/shape.js";
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
export function isClearOf(surface: Surface, bodies: readonly Body[]): (centre: SurfacePoint) => boolean {
  const takings = bodies.map(takingOf);
  const liesOn = liesOnTest(surface);
  return (centre) => liesOn(centre) && !takings.some((takes) => takes(centre));
}

/** Whether a point lies on the finished surface, its border too, and in none of its voids. */
export function liesOnTest({ finished, voids }: Surface): (point: SurfacePoint) => boolean {
  const holes = voids.map(({ finished: ring }) => ({ ring, isNear: boxTest(ring, 2 * EPSILON_MM) }));
  return (point) =>
    isInside(point, finished) && !holes.some(({ ring, isNear }) => isNear(point) && isInside(point, ring));
}

/** Whether a body takes a centre away. Most bodies are far from most centres, which the box round them tells at once. */
export function takingOf(body: Body): (centre: SurfacePoint) => boolean {
  const isNear = boxTest(body.core, body.radiusMm + EPSILON_MM);
  return (centre) => isNear(centre) && distanceToBodyMm(centre, body) < 0;
}

/** Whether a point lies in the upright box round a figure that is so much larger on all sides. */
function boxTest(core: Polygon, reachMm: number): (point: SurfacePoint) => boolean {
  const across = core.map(({ u }) => u);
  const along = core.map(({ v }) => v);
  const [left, right] = [Math.min(...across) - reachMm, Math.max(...across) + reachMm];
  const [below, above] = [Math.min(...along) - reachMm, Math.max(...along) + reachMm];
  return ({ u, v }) => u > left && u < right && v > below && v < above;
}
