import { distanceToBodyMm } from "../geometry/body.js";
import { difference, grow, type Region } from "../geometry/clip.js";
import { isInside } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Surface } from "../room/room.js";
import type { Fitting } from "./fitting.js";
import { type Obstacle, obstaclesOn, takenBy } from "./obstacles.js";

/**
 * The centres at which the fitting may lie on the surface: inside the finished outline by its flange, and away from
 * every member, obstruction, neighbour and unknown stretch by what each asks for. Nothing where the framing is
 * unknown. Every point of it passes the exact rule of `isClear`.
 */
export function clearArea(surface: Surface, fitting: Fitting, neighbours: readonly Mounted[]): Region {
  if (surface.framing.kind === "unknown") return [];
  return difference([surface.finished], obstaclesOn(surface, fitting, neighbours).flatMap(taken));
}

/**
 * Arcs are chords this much inside the true arc at most, and everything is grown by as much again, so that the area
 * left is never more than the rule passes and at most the house's tolerance less.
 */
const ARC_MM = EPSILON_MM / 2;

function taken(obstacle: Obstacle): Region {
  const { core, radiusMm } = takenBy(obstacle);
  return grow(core, radiusMm + ARC_MM, ARC_MM);
}

/** Whether an opening may have its centre at a point, by the exact distances: the rule that the area is drawn from. */
export function clearTest(
  surface: Surface,
  fitting: Fitting,
  neighbours: readonly Mounted[],
): (centre: SurfacePoint) => boolean {
  if (surface.framing.kind === "unknown") return () => false;
  const bodies = obstaclesOn(surface, fitting, neighbours).map(takenBy);
  return (centre) =>
    isInside(centre, surface.finished) && bodies.every((body) => distanceToBodyMm(centre, body) >= 0);
}
