import type { Finding } from "../findings/finding.js";
import { framingAt } from "../place/gaps.js";
import { about, type Subject } from "./subject.js";

/** An opening where nobody has said what is behind: the whole surface, or past the last measured member. */
export function framingUnknown(subject: Subject): Finding[] {
  if (framingAt(subject) !== null) return [];
  const beyondMeasured = subject.surface.framing.kind === "known";
  return [
    {
      ...about(subject),
      code: "framing-unknown",
      level: "error",
      figures: { surface: subject.surface.name, beyondMeasured },
      fix: beyondMeasured ? subject.fix() : null,
    },
  ];
}
