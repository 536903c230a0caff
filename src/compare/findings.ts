import type { LocatedFinding } from "../job.js";

export interface FindingsCompared {
  readonly added: readonly LocatedFinding[];
  readonly gone: readonly LocatedFinding[];
  /** About the same thing, with other figures or another level, or accepted since. */
  readonly changed: readonly { readonly before: LocatedFinding; readonly after: LocatedFinding }[];
}

/** Findings that are new, gone, or about the same thing otherwise; where they stand in the file does not matter. */
export function findingsCompared(
  before: readonly LocatedFinding[],
  after: readonly LocatedFinding[],
): FindingsCompared {
  const left = [...before];
  const added: LocatedFinding[] = [];
  const changed: { before: LocatedFinding; after: LocatedFinding }[] = [];
  for (const finding of after) {
    const index = left.findIndex((other) => subjectOf(other) === subjectOf(finding));
    const [was] = index < 0 ? [] : left.splice(index, 1);
    if (was === undefined) added.push(finding);
    else if (said(was) !== said(finding)) changed.push({ before: was, after: finding });
  }
  return { added, gone: left, changed };
}

/** What a finding is about: its figures without those that only say how much. */
function subjectOf({ code, speaker, surface, figures }: LocatedFinding): string {
  const named = Object.entries(figures).filter(([, value]) => typeof value !== "number");
  return JSON.stringify([code, speaker, surface, named]);
}

/** Hundredths are as fine as the house is; figures that differ by less were only reckoned in another order. */
function said({ level, accepted, figures }: LocatedFinding): string {
  const rounded = (_key: string, value: unknown): unknown =>
    typeof value === "number" ? Math.round(value * 100) : value;
  return JSON.stringify([level, accepted, figures], rounded);
}
