import type { CellLine } from "../drawing/table.js";
import type { Level } from "../findings/finding.js";
import type { LocatedFinding } from "../job.js";
import { findingText, fixText } from "../words/finding-text.js";
import type { Order } from "./sheet.js";

/** Findings about one loudspeaker, and the errors of its surface, which forbid every opening there; the gravest first. */
export function findingsAbout({ job }: Order, speaker: { id: string; surface: string }): LocatedFinding[] {
  return byLevel(
    job.findings.filter((finding) =>
      finding.speaker === null
        ? finding.level === "error" && finding.surface === speaker.surface
        : finding.speaker === speaker.id,
    ),
  );
}

const RANK: Readonly<Record<Level, number>> = { error: 0, warning: 1, note: 2 };

/** Errors first, then warnings, then notes; otherwise as they were. */
export const byLevel = (findings: readonly LocatedFinding[]): LocatedFinding[] =>
  [...findings].sort((a, b) => RANK[a.level] - RANK[b.level]);

/** A finding's sentence, where to move to, and the reason why it was accepted; errors in bold. */
export function findingLines(order: Order, finding: LocatedFinding): CellLine[] {
  const { words, measure } = order;
  const face = finding.level === "error" ? "bold" : "regular";
  const fix = fixText(words, measure, finding);
  const accepted = finding.accepted === null ? null : words.cover.findings.accepted(finding.accepted);
  return [findingText(words, measure, finding), fix, accepted]
    .filter((line) => line !== null)
    .map((line, index) => ({ words: line, capMm: 2.5, face: index === 0 ? face : "regular" }));
}
