import { type Body, unheld } from "../geometry/body.js";
import { difference, grow, growMitred, type Region, withoutMany } from "../geometry/clip.js";
import type { Segment } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Polygon } from "../geometry/shape.js";
import { inner, minus, surfacePoint } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Surface } from "../room/room.js";
import type { Fitting } from "./fitting.js";
import { fixedObstacles, neighbourObstacles, takenBy, type What } from "./obstacles.js";

/** Arcs are chords that lie inside the true arc by `arcMm` at most: the area reaches over the true one by so little. */
export interface Fineness {
  readonly arcMm: number;
}

/** The bays alone: what is left by those members and edges that part the surface from end to end. */
export function baysOf(surface: Surface, fitting: Fitting): Region {
  if (surface.framing.kind === "unknown") return [];
  const parting = fixedObstacles(surface, fitting).filter(({ what }) => isThrough(what, surface));
  if (parting.length === 0) return wholeOf(surface);
  return difference(
    wholeOf(surface),
    parting.map(takenBy).flatMap(({ core, radiusMm }) => growMitred(core, radiusMm + GROWN_MM)),
  );
}

/** What takes centres out of the bays, and the upright box round it. */
export interface Taking {
  readonly box: Box;
  /** Drawn where it reaches into a bay. */
  readonly area: () => Region;
}

/** All that does whatever else is let into the surface: the same for every opening of a kind. */
export const takingsIn = (surface: Surface, fitting: Fitting, { arcMm }: Fineness): readonly Taking[] =>
  fixedObstacles(surface, fitting)
    .filter(({ what }) => !isThrough(what, surface))
    .map((obstacle) => takingOf(takenBy(obstacle), arcMm));

export interface InBay extends Fineness {
  readonly surface: Surface;
  readonly fitting: Fitting;
  readonly neighbours: readonly Mounted[];
  /** Worked out anew where it is not given. */
  readonly fixed?: readonly Taking[];
}

/**
 * The centres at which the fitting may lie in one of the bays: away from every member, obstruction, neighbour and
 * unknown stretch by what each asks for. Only what reaches into it is worked out.
 */
export function clearInBay(
  bay: Region,
  { surface, fitting, neighbours, arcMm, fixed = takingsIn(surface, fitting, { arcMm }) }: InBay,
): Region {
  const others = neighbours.flatMap((neighbour) =>
    unheld(neighbourObstacles([neighbour], fitting).map(takenBy), 2 * arcMm),
  );
  const reaching = reachingInto(bay, [...fixed, ...others.map((body) => takingOf(body, arcMm))]);
  if (reaching.length === 0 || bay.length === 0) return bay;
  return withoutMany(
    bay,
    reaching.map(({ area }) => area()),
  );
}

/** Those that may take anything from an area, by the boxes round both. */
export function reachingInto(area: Region, takings: readonly Taking[]): readonly Taking[] {
  const own = boxAround(area.flat(), 0);
  return takings.filter(({ box }) => boxesMeet(box, own));
}

/** How far a point lies outside the box round what is taken; 0 in it. */
export function besideBoxMm({ u, v }: SurfacePoint, { box: { low, high } }: Taking): number {
  return Math.hypot(Math.max(low.u - u, 0, u - high.u), Math.max(low.v - v, 0, v - high.v));
}

/** The finished surface without what lies in it and is not of it. */
const wholeOf = ({ finished, voids }: Surface): Region =>
  voids.length === 0
    ? [finished]
    : difference(
        [finished],
        voids.map((each) => each.finished),
      );

interface Box {
  readonly low: SurfacePoint;
  readonly high: SurfacePoint;
}

function boxAround(corners: Polygon, reachMm: number): Box {
  const us = corners.map(({ u }) => u);
  const vs = corners.map(({ v }) => v);
  return {
    low: surfacePoint(Math.min(...us) - reachMm, Math.min(...vs) - reachMm),
    high: surfacePoint(Math.max(...us) + reachMm, Math.max(...vs) + reachMm),
  };
}

const boxesMeet = (a: Box, b: Box): boolean =>
  (["u", "v"] as const).every((axis) => a.low[axis] <= b.high[axis] && b.low[axis] <= a.high[axis]);

/** By this much more than the rule asks for everything is grown: for the whole steps that the library reckons in. */
const GROWN_MM = EPSILON_MM / 2;

function takingOf({ core, radiusMm }: Body, arcMm: number): Taking {
  const reachMm = radiusMm + GROWN_MM;
  let known: Region | null = null;
  return {
    box: boxAround(core, reachMm),
    area: () => {
      known ??= grow(core, reachMm, arcMm);
      return known;
    },
  };
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
