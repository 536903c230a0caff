import type { Finding } from "../findings/finding.js";
import { distanceToSegmentMm } from "../geometry/distance.js";
import { jointsThrough } from "../place/joints-through.js";
import { about, type Subject } from "./subject.js";

/** Joints of the board that the opening lies over; of each kind the one nearest to its centre. */
export function jointThrough(subject: Subject): Finding[] {
  const { surface, speaker, centre } = subject;
  const through = jointsThrough(surface, speaker.opening, centre)
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
