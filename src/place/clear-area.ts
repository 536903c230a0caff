import type { Body } from "../geometry/body.js";
import { difference, grow, growMitred, type Region } from "../geometry/clip.js";
import type { Segment } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Polygon } from "../geometry/shape.js";
import { inner, minus } from "../geometry/surface-point.js";
import type { Mounted } from "../listen/mounted.js";
import type { Surface } from "../room/room.js";
import type { Fitting } from "./fitting.js";
import { fixedObstacles, type Obstacle, obstaclesOn, takenBy, type What } from "./obstacles.js";

/** Arcs are chords that lie inside the true arc by `arcMm` at most: the area reaches over the true one by so little. */
export interface Fineness {
  readonly arcMm: number;
}

/** The bays alone: what is left by those members and edges that part the surface from end to end. */
export function baysOf(surface: Surface, fitting: Fitting, fineness: Fineness): Region {
  if (surface.framing.kind === "unknown") return [];
  const parting = fixedObstacles(surface, fitting).filter(({ what }) => isThrough(what, surface));
  return leftBy(wholeOf(surface), parting, { surface, ...fineness });
}

export interface InBay extends Fineness {
  readonly surface: Surface;
  readonly fitting: Fitting;
  readonly neighbours: readonly Mounted[];
}

/**
 * The centres at which the fitting may lie in one of the bays: away from every member, obstruction, neighbour and
 * unknown stretch by what each asks for. Only what reaches into it is worked out.
 */
export function clearInBay(bay: Region, { surface, fitting, neighbours, arcMm }: InBay): Region {
  const others = obstaclesOn(surface, fitting, neighbours).filter(({ what }) => !isThrough(what, surface));
  const reaching = others.filter((obstacle) => boxesMeet(takenBy(obstacle), bay.flat()));
  return leftBy(bay, reaching, { surface, arcMm });
}

/** The finished surface without what lies in it and is not of it. */
const wholeOf = ({ finished, voids }: Surface): Region =>
  voids.length === 0
    ? [finished]
    : difference(
        [finished],
        voids.map((each) => each.finished),
      );

/** Whether the upright box round what a body takes meets that round a polygon's corners. */
function boxesMeet({ core, radiusMm }: Body, polygon: Polygon): boolean {
  const reachMm = radiusMm + GROWN_MM;
  return (["u", "v"] as const).every((axis) => {
    const taken = core.map((corner) => corner[axis]);
    const own = polygon.map((corner) => corner[axis]);
    return (
      Math.min(...taken) - reachMm <= Math.max(...own) && Math.min(...own) <= Math.max(...taken) + reachMm
    );
  });
}

interface On extends Fineness {
  readonly surface: Surface;
}

function leftBy(area: Region, obstacles: readonly Obstacle[], on: On): Region {
  if (obstacles.length === 0) return area;
  return difference(
    area,
    obstacles.flatMap((obstacle) => takenFrom(obstacle, on)),
  );
}

/** By this much more than the rule asks for everything is grown: for the whole steps that the library reckons in. */
const GROWN_MM = EPSILON_MM / 2;

function takenFrom({ what, ...obstacle }: Obstacle, { surface, arcMm }: On): Region {
  const { core, radiusMm } = takenBy(obstacle);
  return isThrough(what, surface)
    ? growMitred(core, radiusMm + GROWN_MM)
    : grow(core, radiusMm + GROWN_MM, arcMm);
}

/**
 * Whether something is a line of framing or an edge, and all of the outline lies between its ends. Then the arcs there
 * lie outside, and nobody needs them drawn.
 */
function isThrough(what: What, surface: Surface): boolean {
  const line = what.kind === "member" ? what.member : what.kind === "edge" ? what.edge : null;
  return line !== null && runsThrough(line, surface);
}

function runsThrough({ from, to }: Segment, { finished }: Surface): boolean {
  const run = minus(to, from);
  return finished.every(
    (corner) => inner(minus(corner, from), run) >= 0 && inner(minus(corner, to), run) <= 0,
  );
}
