import type { Finding } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { about, type Subject } from "./subject.js";

/** What the loudspeaker needs behind the finished face, against the cavity and the board before it. */
export function tooDeep(subject: Subject): Finding[] {
  const { framing, boardMm } = subject.surface;
  if (framing.kind === "unknown") return [];
  const neededMm = subject.speaker.model.depthMm;
  const availableMm = framing.cavityMm + boardMm;
  if (neededMm <= availableMm + EPSILON_MM) return [];
  return [
    {
      ...about(subject),
      code: "too-deep",
      level: "error",
      figures: { neededMm, availableMm, memberDepthMm: framing.cavityMm, boardMm },
      fix: null,
    },
  ];
}
