import { distanceToBodyMm } from "../geometry/body.js";
import { difference, grow, growMitred, type Region } from "../geometry/clip.js";
import { isInside, type Segment } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { inner, minus } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Surface } from "../room/room.js";
import type { Fitting } from "./fitting.js";
import { fixedObstacles, neighbourObstacles, type Obstacle, obstaclesOn, takenBy } from "./obstacles.js";

/**
 * The centres at which the fitting may lie on the surface: inside the finished outline by its flange, and away from
 * every member, obstruction, neighbour and unknown stretch by what each asks for. Nothing where the framing is
 * unknown. Every point of it passes the exact rule of `clearTest`.
 */
export function clearArea(surface: Surface, fitting: Fitting, neighbours: readonly Mounted[]): Region {
  return leftBy(surface, bareArea(surface, fitting), neighbourObstacles(neighbours, fitting));
}

/** The same as if it were alone on the surface. */
export function bareArea(surface: Surface, fitting: Fitting): Region {
  if (surface.framing.kind === "unknown") return [];
  return leftBy(surface, wholeOf(surface), fixedObstacles(surface, fitting));
}

/** The finished surface without what lies in it and is not of it. */
const wholeOf = ({ finished, voids }: Surface): Region =>
  voids.length === 0
    ? [finished]
    : difference(
        [finished],
        voids.map((each) => each.finished),
      );

/** `bareArea` that works out each surface and fitting once: openings of one model on one ceiling share it. */
export function rememberedAreas(): typeof bareArea {
  const known = new Map<string, Region>();
  return (surface, fitting) => {
    const key = JSON.stringify([surface.name, fitting]);
    const area = known.get(key) ?? bareArea(surface, fitting);
    known.set(key, area);
    return area;
  };
}

/** What the obstacles leave of an area. */
export function leftBy(surface: Surface, area: Region, obstacles: readonly Obstacle[]): Region {
  if (obstacles.length === 0) return area;
  return difference(
    area,
    obstacles.flatMap((obstacle) => takenFrom(surface, obstacle)),
  );
}

/**
 * Everything is grown by this much more than the rule asks for, and arcs are chords that lie inside the true arc by
 * less: what is between the two is for the whole steps that the clipping library reckons in. So the area left is
 * never more than what the rule passes, and at most the house's tolerance less.
 */
const GROWN_MM = EPSILON_MM / 2;
const ARC_MM = 0.4 * EPSILON_MM;

function takenFrom(surface: Surface, { what, ...obstacle }: Obstacle): Region {
  const { core, radiusMm } = takenBy(obstacle);
  const line = what.kind === "member" ? what.member : what.kind === "edge" ? what.edge : null;
  const isThrough = line !== null && runsThrough(line, surface);
  return isThrough ? growMitred(core, radiusMm + GROWN_MM) : grow(core, radiusMm + GROWN_MM, ARC_MM);
}

/**
 * Whether all of the outline lies between the ends of a line of framing or of an edge. Then the arcs at its ends lie
 * outside, and nobody needs them drawn.
 */
function runsThrough({ from, to }: Segment, { finished }: Surface): boolean {
  const run = minus(to, from);
  return finished.every(
    (corner) => inner(minus(corner, from), run) >= 0 && inner(minus(corner, to), run) <= 0,
  );
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
    isInside(centre, surface.finished) &&
    !surface.voids.some(({ finished }) => isInside(centre, finished)) &&
    bodies.every((body) => distanceToBodyMm(centre, body) >= 0);
}
