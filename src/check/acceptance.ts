import type { Finding, Level } from "../findings/finding.js";
import type { Acceptance } from "../room/room.js";

/**
 * The findings with the reasons given under `accept`, which leave their level as it is, and a note for each
 * acceptance that serves nothing: there is no such finding, or it is no warning.
 */
export function withAcceptances(findings: readonly Finding[], accept: readonly Acceptance[]): Finding[] {
  const acceptedBy = byWhatTheySpeakOf(accept);
  const levels = levelsSpokenOf(findings);
  return [
    ...findings.map((finding) => ({ ...finding, accepted: reasonFor(finding, acceptedBy) })),
    ...accept.flatMap((acceptance) => servesNothing(levels, acceptance)),
  ];
}

/** A code and a loudspeaker; an acceptance that names none speaks of them all. */
const spokenOf = (code: string, speaker: string | null): string => `${code} ${speaker ?? ""}`;

/** The first acceptance of each code and loudspeaker, and its place among all. */
type AcceptedBy = ReadonlyMap<string, { readonly why: string; readonly place: number }>;

function byWhatTheySpeakOf(accept: readonly Acceptance[]): AcceptedBy {
  const first = new Map<string, { why: string; place: number }>();
  for (const [place, { code, speaker, why }] of accept.entries()) {
    const key = spokenOf(code, speaker);
    if (!first.has(key)) first.set(key, { why, place });
  }
  return first;
}

/** Of two that speak of it the reason of the one that comes first in the file. */
function reasonFor({ level, code, speaker }: Finding, acceptedBy: AcceptedBy): string | null {
  if (level !== "warning") return null;
  const ofAll = acceptedBy.get(spokenOf(code, null));
  const ofIt = acceptedBy.get(spokenOf(code, speaker));
  if (ofAll === undefined || ofIt === undefined) return (ofAll ?? ofIt)?.why ?? null;
  return ofAll.place <= ofIt.place ? ofAll.why : ofIt.why;
}

/** The levels that findings of each code have, of each loudspeaker and of all together. */
function levelsSpokenOf(findings: readonly Finding[]): ReadonlyMap<string, ReadonlySet<Level>> {
  const levels = new Map<string, Set<Level>>();
  for (const { code, speaker, level } of findings) {
    for (const key of new Set([spokenOf(code, null), spokenOf(code, speaker)])) {
      const before = levels.get(key) ?? new Set();
      levels.set(key, before.add(level));
    }
  }
  return levels;
}

function servesNothing(levels: ReadonlyMap<string, ReadonlySet<Level>>, acceptance: Acceptance): Finding[] {
  const found = levels.get(spokenOf(acceptance.code, acceptance.speaker));
  if (found?.has("warning") === true) return [];
  const { code, speaker, path } = acceptance;
  return [
    {
      code: "accept-matches-nothing",
      level: "note",
      figures: {
        accepted: code,
        speaker,
        because: found === undefined ? "nothing-found" : "not-a-warning",
      },
      speaker,
      surface: null,
      path,
      fix: null,
      accepted: null,
    },
  ];
}
