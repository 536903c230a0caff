import type { Code } from "../../findings/finding.js";
import type { Opening } from "../../job.js";
import type { Order } from "../sheet.js";

/** Codes of the errors that forbid to cut an opening, its own and its surface's, each once. */
export function codesAgainst({ job }: Order, { speaker, surface }: Opening): readonly Code[] {
  const codes = job.findings
    .filter(({ level }) => level === "error")
    .filter(
      (finding) =>
        finding.speaker === speaker.id || (finding.speaker === null && finding.surface === surface.name),
    )
    .map(({ code }) => code);
  return [...new Set(codes)];
}
