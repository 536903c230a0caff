import type { Finding } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { about, type Subject } from "./subject.js";

/** Board thinner or thicker than the loudspeaker's clamps hold. */
export function boardRange(subject: Subject): Finding[] {
  const { boardRangeMm } = subject.speaker.model;
  const boardMm = subject.surface.layersMm.reduce((sum, mm) => sum + mm, 0);
  if (boardRangeMm === null) return [];
  const [leastMm, mostMm] = boardRangeMm;
  if (boardMm >= leastMm - EPSILON_MM && boardMm <= mostMm + EPSILON_MM) return [];
  return [
    {
      ...about(subject),
      code: "board-out-of-clamp-range",
      level: "error",
      figures: { boardMm, leastMm, mostMm },
      fix: null,
    },
  ];
}
