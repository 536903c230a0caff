import type { Finding } from "../findings/finding.js";
import { SECOND_SUPPORT_FROM_KG } from "../standards/house-limits.js";
import { about, type Subject } from "./subject.js";

/** A heavy loudspeaker overhead that nothing but board and clamps will hold. */
export function secondSupport(subject: Subject): Finding[] {
  const { surface, speaker } = subject;
  const { weightKg } = speaker.model;
  if (surface.kind !== "ceiling" || surface.secondSupport) return [];
  if (weightKg === null || weightKg < SECOND_SUPPORT_FROM_KG) return [];
  return [
    { ...about(subject), code: "needs-second-support", level: "warning", figures: { weightKg }, fix: null },
  ];
}
