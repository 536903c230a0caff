import { difference, type Region } from "../../src/geometry/clip.js";
import type { Segment } from "../../src/geometry/distance.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import { inner, minus } from "../../src/geometry/surface-point.js";
import type { Mounted } from "../../src/listen/mounted.js";
import type { Fitting } from "../../src/place/fitting.js";
import { fixedObstacles, neighbourObstacles, type Obstacle, takenBy } from "../../src/place/obstacles.js";
import type { Surface } from "../../src/room/room.js";
import { grow, growMitred } from "./clipped.js";

/**
 * The centres at which the fitting may lie on the surface: inside the finished outline by its flange, and away from
 * every member, obstruction, neighbour and unknown stretch by what each asks for. Nothing where the framing is
 * unknown. Every point of it passes the exact rule of `clearTest`.
 */
export function clearArea(surface: Surface, fitting: Fitting, neighbours: readonly Mounted[]): Region {
  return leftBy(surface, bareArea(surface, fitting), neighbourObstacles(neighbours, fitting));
}

/** The same as if it were alone on the surface. */
function bareArea(surface: Surface, fitting: Fitting): Region {
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

/** What the obstacles leave of an area. */
function leftBy(surface: Surface, area: Region, obstacles: readonly Obstacle[]): Region {
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
