import type { Opening } from "../../job.js";
import type { Order } from "../sheet.js";

/** Why an opening is not to be cut, in a few words each; the findings' sentences say it in full. */
export function reasonsNotToCut({ job, words }: Order, { speaker, surface }: Opening): readonly string[] {
  const reasons = job.findings
    .filter(({ level }) => level === "error")
    .filter(
      (finding) =>
        finding.speaker === speaker.id || (finding.speaker === null && finding.surface === surface.name),
    )
    .map(({ code }) => words.marking.reason[code]);
  return [...new Set(reasons)];
}
