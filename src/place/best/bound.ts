import { isInside } from "../../geometry/distance.js";
import { degrees } from "../../geometry/vector.js";
import { type Heading, headingOf } from "../../listen/direction.js";
import { breachesOf, type Window } from "../../listen/window.js";
import { AZIMUTH_COMPARED_TO_DEG } from "../../standards/house-limits.js";
import type { Cost } from "./cost.js";
import type { Spot } from "./field.js";
import type { Piece, Taken } from "./ground.js";
import type { Hull } from "./marks.js";
import { idealIn, leastOffDegOn, viewTo } from "./sight.js";

/*
 * What can be said at once of every place within a hull: what it costs at least, and whether any of it may be clear.
 */

/** Of what is taken, that which comes into the hull; null where the hull is taken as a whole. */
export function stillInTheWay(hull: Hull, taken: readonly Taken[]): readonly Taken[] | null {
  const inTheWay: Taken[] = [];
  for (const one of taken) {
    const distanceMm = one.distanceMm(hull.centre.u, hull.centre.v, hull.radiusMm);
    if (distanceMm >= hull.radiusMm) continue;
    if (distanceMm < 0 && coversCorners(one, hull)) return null;
    inTheWay.push(one);
  }
  return inTheWay;
}

/** Whether any of these pieces comes into the hull. */
export function isIn({ centre: { u, v }, radiusMm }: Hull, pieces: readonly Piece[]): boolean {
  return pieces.some(
    ({ least, most }) =>
      least.u <= u + radiusMm && most.u >= u - radiusMm && least.v <= v + radiusMm && most.v >= v - radiusMm,
  );
}

/** What is taken is convex: where it holds the corners it holds the hull. */
function coversCorners({ distanceMm }: Taken, { corners }: Hull): boolean {
  return corners.every(({ u, v }) => distanceMm(u, v) < 0);
}

/** What comes into a hull, and what came into the larger one that it is a part of. */
interface Ways {
  readonly now: readonly Taken[];
  readonly before: readonly Taken[];
}

/**
 * Whether the hull lies outside the outline or in a void: once none of their edges comes into it. A part of a hull that
 * none came into lies where that lay.
 */
export function liesOutside({ asking }: Spot, { centre }: Hull, { now, before }: Ways): boolean {
  const { finished, voids } = asking.ground.surface;
  if (now.some(isEdge) || !before.some(isEdge)) return false;
  return !isInside(centre, finished) || voids.some((each) => isInside(centre, each.finished));
}

const isEdge = ({ what }: Taken): boolean => what.kind === "edge";

/** Joints that come into a hull, and whether all of it lies over one. */
export interface OverJoints {
  readonly near: readonly Taken[];
  readonly isAll: boolean;
}

export function overJoints(hull: Hull, before: readonly Taken[]): OverJoints {
  if (before.length === 0) return NO_JOINT;
  const { centre, radiusMm } = hull;
  const near = before.filter(({ distanceMm }) => {
    const mm = distanceMm(centre.u, centre.v, radiusMm);
    return mm < radiusMm || mm < 0;
  });
  return { near, isAll: near.some((one) => coversCorners(one, hull)) };
}

const NO_JOINT: OverJoints = { near: [], isAll: false };

/** The least that any place in the hull costs, or less. */
export function leastCost(spot: Spot, hull: Hull, { isAll }: OverJoints): Cost {
  return {
    offDeg: leastOffDeg(spot, hull),
    breaches: leastBreaches(spot, hull),
    jointDeg: isAll ? spot.asking.wish.jointDeg : 0,
  };
}

/** The angle has no turning point on a plane but at the preferred direction itself: the least is there or on a side. */
function leastOffDeg({ sight }: Spot, { corners }: Hull): number {
  return idealIn(sight, corners) ? 0 : leastOffDegOn(sight, corners);
}

/** Figures that no place in the hull has inside the window, by the cone round the view to its centre that holds it. */
function leastBreaches({ asking, sight }: Spot, { centre, radiusMm }: Hull): number {
  const { window } = asking.wish;
  if (window === null) return 0;
  const view = viewTo(sight, asking.ground.surface, centre.u, centre.v);
  const sine = radiusMm / Math.hypot(view.x, view.y, view.z);
  if (sine >= 1) return 0;
  return breachesOfCone(window, headingOf(view), sine);
}

function breachesOfCone(window: Window, heading: Heading, sine: number): number {
  const halfDeg = degrees(Math.asin(sine)) + SLACK_DEG;
  const allDeg = allowanceDeg(heading, halfDeg, sine);
  return breachesOf(window, heading).filter(({ figure, byDeg }) => byDeg > allDeg[figure]).length;
}

/** How far azimuth and elevation change within a cone: its half angle, and more in azimuth the steeper it is. */
function allowanceDeg({ elevationDeg }: Heading, halfDeg: number, sine: number) {
  const level = Math.cos((elevationDeg * Math.PI) / 180);
  const isCompared = elevationDeg + halfDeg <= AZIMUTH_COMPARED_TO_DEG;
  const azimuth = isCompared && sine < level ? degrees(Math.asin(sine / level)) + SLACK_DEG : 360;
  return { azimuth, elevation: halfDeg };
}

/** For what doubles lose on the way. */
const SLACK_DEG = 1e-9;
