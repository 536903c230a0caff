import type { Comparison } from "./compare.js";
import type { Job, LocatedFinding } from "./job.js";
import { type FindingJson, findingJson } from "./job-json.js";

/*
 * What is otherwise between two rooms, for machines: as in the answer about one room, lengths in millimetres and angles
 * in degrees under keys without units, full doubles, messages in English. Keys may be added, never renamed.
 */

export interface ComparisonJson {
  readonly openings: readonly object[];
  readonly surfaces: readonly object[];
  readonly members: readonly object[];
  readonly obstructions: readonly object[];
  readonly seats: readonly object[];
  readonly cables: readonly object[];
  readonly holes: readonly object[];
  readonly findings: {
    readonly new: readonly FindingJson[];
    readonly gone: readonly FindingJson[];
    readonly changed: readonly { readonly before: FindingJson; readonly after: FindingJson }[];
  };
}

/** The parts of a comparison; what is open or not to be said is null. */
export function comparisonJson(comparison: Comparison, before: Job, after: Job): ComparisonJson {
  const { openings, surfaces, members, obstructions, seats, cables, holes, findings } = comparison;
  const old = (finding: LocatedFinding): FindingJson => findingJson(finding, before.room.units);
  const now = (finding: LocatedFinding): FindingJson => findingJson(finding, after.room.units);
  return {
    openings: openings.map(plain),
    surfaces: surfaces.map(plain),
    members: members.map(plain),
    obstructions: obstructions.map(plain),
    seats: seats.map(plain),
    cables: cables.map(plain),
    holes: holes.map(plain),
    findings: {
      new: findings.added.map(now),
      gone: findings.gone.map(old),
      changed: findings.changed.map((pair) => ({ before: old(pair.before), after: now(pair.after) })),
    },
  };
}

/** The same with this format's keys: no units, words joined by `_`. */
function plain(change: object): object {
  return Object.fromEntries(Object.entries(change).map(([key, value]) => [keyOf(key), plainValue(value)]));
}

function plainValue(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plainValue);
  if (typeof value === "number") return Number.isFinite(value) ? value : null;
  return typeof value === "object" && value !== null ? plain(value) : value;
}

/** A length that has no other name keeps `mm` for one. */
const keyOf = (key: string): string =>
  key.replace(/(?<=.)(?:Mm|Deg)$/u, "").replaceAll(/[A-Z]/gu, (letter) => `_${letter.toLowerCase()}`);
