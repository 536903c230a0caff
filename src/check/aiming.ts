import type { Finding } from "../findings/finding.js";
import { EPSILON_DEG } from "../geometry/epsilon.js";
import { about, type Subject } from "./subject.js";

/** A tilted baffle that stands square over its target has no way to be turned. */
export function aimUndefined(subject: Subject): Finding[] {
  const { aim, speaker } = subject;
  if (aim === null || aim.arrowDeg !== null || speaker.model.baffleTiltDeg === 0) return [];
  return [
    { ...about(subject), code: "aim-undefined", level: "note", figures: { target: aim.target }, fix: null },
  ];
}

/** A target further off the axis than half the coverage: the sound passes it by. */
export function aimPastTilt(subject: Subject): Finding[] {
  const { aim, speaker } = subject;
  const { coverageDeg } = speaker.model;
  if (aim === null || coverageDeg === null) return [];
  const limitDeg = coverageDeg / 2;
  if (aim.offAxisDeg <= limitDeg + EPSILON_DEG) return [];
  return [
    {
      ...about(subject),
      code: "aim-past-tilt",
      level: "warning",
      figures: { target: aim.target, offAxisDeg: aim.offAxisDeg, limitDeg },
      fix: null,
    },
  ];
}
