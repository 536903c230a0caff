import type { Size } from "./gauge.js";
import { packed } from "./packing.js";
import type { CableRun } from "./run.js";

/** What a spool is of. */
export interface CableKind {
  /** Null where the size is still open. */
  readonly size: Size | null;
  readonly conductors: number;
}

export interface Spool extends CableKind {
  readonly spoolMm: number;
  /** In the order of pulling: the longest first, so that what is left over always serves the next. */
  readonly runs: readonly { readonly speaker: string; readonly lengthMm: number }[];
  readonly leftMm: number;
}

export interface CableTotal extends CableKind {
  readonly runs: number;
  readonly lengthMm: number;
  readonly spools: number;
  readonly boughtMm: number;
}

export interface PullPlan {
  readonly spools: readonly Spool[];
  /** Runs longer than any spool: ask for another length. */
  readonly tooLong: readonly { readonly speaker: string; readonly lengthMm: number }[];
  readonly totals: readonly CableTotal[];
  /** True where no other grouping would buy less. */
  readonly exact: boolean;
}

/** Runs by what they are of, each kind grouped to spools of the stock's lengths with the least length bought. */
export function pullPlanOf(runs: readonly CableRun[], spoolsMm: readonly number[]): PullPlan {
  const longestMm = Math.max(...spoolsMm);
  const fitting = runs.filter(({ lengthMm }) => lengthMm <= longestMm);
  const kinds = kindsOf(fitting).map((kind) => ({ kind, ...spoolsFor(kind, fitting, spoolsMm) }));
  const spools = kinds.flatMap((each) => each.spools);
  return {
    spools,
    tooLong: runs.filter((run) => !fitting.includes(run)).map(entry),
    totals: kindsOf(runs).map((kind) => totalOf(kind, runs, spools)),
    exact: kinds.every(({ exact }) => exact),
  };
}

const entry = ({ speaker, lengthMm }: CableRun) => ({ speaker: speaker.id, lengthMm });

const keyOf = ({ size, conductors }: CableKind): string => `${JSON.stringify(size)} ${conductors}`;

/** Each kind once, in the order in which it first comes. */
function kindsOf(runs: readonly CableKind[]): readonly CableKind[] {
  const kinds = new Map<string, CableKind>();
  for (const { size, conductors } of runs) {
    const kind = { size, conductors };
    if (!kinds.has(keyOf(kind))) kinds.set(keyOf(kind), kind);
  }
  return [...kinds.values()];
}

const ofKind = <Each extends CableKind>(kind: CableKind, each: readonly Each[]): readonly Each[] =>
  each.filter((one) => keyOf(one) === keyOf(kind));

function spoolsFor(
  kind: CableKind,
  runs: readonly CableRun[],
  spoolsMm: readonly number[],
): { readonly spools: readonly Spool[]; readonly exact: boolean } {
  const own = ofKind(kind, runs);
  const packing = packed(
    own.map(({ lengthMm }) => lengthMm),
    spoolsMm,
  );
  const spools = packing.spools.map(({ spoolMm, lengths }): Spool => {
    const taken = lengths.flatMap((index) => own[index] ?? []).sort((a, b) => b.lengthMm - a.lengthMm);
    const usedMm = taken.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    return { ...kind, spoolMm, runs: taken.map(entry), leftMm: spoolMm - usedMm };
  });
  return { spools, exact: packing.exact };
}

function totalOf(kind: CableKind, runs: readonly CableRun[], spools: readonly Spool[]): CableTotal {
  const own = ofKind(kind, runs);
  const bought = ofKind(kind, spools);
  return {
    ...kind,
    runs: own.length,
    lengthMm: own.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    spools: bought.length,
    boughtMm: bought.reduce((sum, { spoolMm }) => sum + spoolMm, 0),
  };
}
