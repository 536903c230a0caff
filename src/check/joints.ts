import type { Finding } from "../findings/finding.js";
import { bodyOfSegment, bodyOfShape, separationMm } from "../geometry/body.js";
import { distanceToSegmentMm } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint } from "../geometry/vector.js";
import { longestMm } from "../place/fitting.js";
import type { Joint } from "../room/room.js";
import { about, type Subject } from "./subject.js";

/** Joints of the board that the opening lies over; of each kind the one nearest to its centre. */
export function jointThrough(subject: Subject): Finding[] {
  const { surface, speaker, centre } = subject;
  const opening = bodyOfShape(speaker.opening, centre);
  const reachMm = longestMm(speaker.opening) / 2;
  const through = surface.joints
    .filter((joint) => liesWithin(joint, centre, reachMm))
    .filter((joint) => separationMm(bodyOfSegment(joint), opening) < -EPSILON_MM)
    .map((joint) => ({ joint: joint.kind, offCentreMm: distanceToSegmentMm(centre, joint) }))
    .sort((a, b) => a.offCentreMm - b.offCentreMm);
  return through
    .filter((one, index) => through.findIndex(({ joint }) => joint === one.joint) === index)
    .map((figures) => ({
      ...about(subject),
      code: "joint-through-opening",
      level: "warning",
      figures,
      fix: subject.fixOffJoints(),
    }));
}

/** Whether a joint comes into the upright box so far round a point: of thousands nearly none does. */
const liesWithin = ({ from, to }: Joint, { u, v }: SurfacePoint, mm: number): boolean =>
  Math.min(from.u, to.u) <= u + mm &&
  Math.max(from.u, to.u) >= u - mm &&
  Math.min(from.v, to.v) <= v + mm &&
  Math.max(from.v, to.v) >= v - mm;
