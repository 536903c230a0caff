import type { Finding } from "../findings/finding.js";
import { bodyOfShape, supportMm } from "../geometry/body.js";
import { distanceToSegmentMm, isInside, offLineMm } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { allEdgesOn } from "../listen/edges.js";
import { inward } from "../place/run.js";
import type { Edge } from "../room/room.js";
import { about, type Subject } from "./subject.js";

/** The flange, and with it maybe the opening, past the finished outline; of several edges the worst. */
export function outsideSurface(subject: Subject): Finding[] {
  const [worst] = edgesPassed(subject)
    .map((edge) => ({ edge, byMm: reachPastMm(subject, edge) }))
    .sort((a, b) => smallerFirst(b.byMm, a.byMm) || acrossFirst(a.edge, b.edge));
  if (worst === undefined) return [];
  return [
    {
      ...about(subject),
      code: "opening-outside-surface",
      level: "error",
      figures: { edge: worst.edge.along, byMm: worst.byMm },
      fix: subject.fix(),
    },
  ];
}

/** The edges that it lies over; where it lies wholly outside, the one nearest to it. */
function edgesPassed({ surface, centre, distances }: Subject): readonly Edge[] {
  const over = distances.flatMap(({ what, mm }) =>
    what.kind === "edge" && mm < -EPSILON_MM ? [what.edge] : [],
  );
  const inVoid = surface.voids.some(({ finished }) => isInside(centre, finished));
  if (over.length > 0 || (isInside(centre, surface.finished) && !inVoid)) return over;
  const nearestFirst = allEdgesOn(surface, "finish").sort(
    (a, b) =>
      smallerFirst(distanceToSegmentMm(centre, a), distanceToSegmentMm(centre, b)) || acrossFirst(a, b),
  );
  return nearestFirst.slice(0, 1);
}

/** Orders lengths that differ by more than the house's tolerance; others are equal, whatever their last digits say. */
const smallerFirst = (aMm: number, bMm: number): number =>
  Math.abs(aMm - bMm) <= EPSILON_MM ? 0 : aMm - bMm;

/** Between edges that are equally far out: the one across the sheet first, so that a room and its mirror image agree. */
const acrossFirst = (a: Edge, b: Edge): number => Math.abs(inward(b).v) - Math.abs(inward(a).v);

/** A flange reaches as far out of its middle as into the room. */
function reachPastMm({ speaker, centre }: Subject, edge: Edge): number {
  return supportMm(bodyOfShape(speaker.flange), inward(edge)) + offLineMm(centre, edge);
}
