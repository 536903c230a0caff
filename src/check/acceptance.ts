import type { Finding } from "../findings/finding.js";
import type { Acceptance } from "../room/room.js";

/**
 * The findings with the reasons given under `accept`, which leave their level as it is, and a note for each
 * acceptance that serves nothing: there is no such finding, or it is no warning.
 */
export function withAcceptances(findings: readonly Finding[], accept: readonly Acceptance[]): Finding[] {
  return [
    ...findings.map((finding) => ({ ...finding, accepted: reasonFor(finding, accept) })),
    ...accept.flatMap((acceptance) => servesNothing(findings, acceptance)),
  ];
}

function reasonFor(finding: Finding, accept: readonly Acceptance[]): string | null {
  if (finding.level !== "warning") return null;
  return accept.find((acceptance) => speaksOf(acceptance, finding))?.why ?? null;
}

/** An acceptance that names no loudspeaker speaks of them all. */
function speaksOf({ code, speaker }: Acceptance, finding: Finding): boolean {
  return finding.code === code && (speaker === null || finding.speaker === speaker);
}

function servesNothing(findings: readonly Finding[], acceptance: Acceptance): Finding[] {
  const spokenOf = findings.filter((finding) => speaksOf(acceptance, finding));
  if (spokenOf.some(({ level }) => level === "warning")) return [];
  const { code, speaker, path } = acceptance;
  return [
    {
      code: "accept-matches-nothing",
      level: "note",
      figures: {
        accepted: code,
        speaker,
        because: spokenOf.length === 0 ? "nothing-found" : "not-a-warning",
      },
      speaker,
      surface: null,
      path,
      fix: null,
      accepted: null,
    },
  ];
}
