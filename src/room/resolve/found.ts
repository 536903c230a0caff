import type { Problem } from "../../findings/complaint.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Member, Path } from "../room.js";
import type { FoundFile, FramingFile } from "../schema/framing.js";
import { type CentresOptions, orderProblem, outsideProblem, toCentreMm } from "./centres.js";
import { type Resolved, refused, resolved } from "./resolved.js";

/** A member's centre from the framing face of the wall that is measured from, and how it is known. */
export interface Centre extends Pick<Member, "number" | "basis" | "found"> {
  readonly mm: number;
}

/** What stands there, by where it stands, and what somebody looked for in vain. */
export interface AsFound {
  readonly standing: readonly Centre[];
  /** Where the layout has them. */
  readonly missing: readonly Centre[];
  /** Numbers of those that the layout does not have. */
  readonly extra: readonly number[];
}

/** A centre and the entry under `found` that it comes from; null where the layout alone says it. */
interface Told extends Centre {
  readonly by: Entry | null;
}

interface Entry {
  readonly told: FoundFile;
  readonly path: Path;
}

/**
 * The layout's centres with what was found since. Every entry counts from the layout as given, so that a stretch and one
 * of its members can both be told; the last one that names a member holds. What is missing leaves the others their
 * numbers, and what is there besides takes the next ones, so that numbers on framing and sheets stay true.
 */
export function asFound(
  entry: FramingFile,
  laid: readonly number[],
  options: CentresOptions,
): Resolved<AsFound> {
  const entries = (entry.found ?? []).map(
    (told, index): Entry => ({ told, path: [...options.path, "found", index] }),
  );
  const unknown = entries.flatMap(({ told, path }) => unknownMembers(told, laid.length, path));
  if (unknown.length > 0) return refused(...unknown);
  const addMm = toCentreMm(entry, options);
  const basis = entry.at === undefined ? "assumed" : "measured";
  const lastWords = lastWordsOn(laid.length, entries);
  const centres = laid.map((mm, index): Told => {
    const number = index + 1;
    const by = lastWords.get(number) ?? null;
    return by === null
      ? { number, mm, basis, found: null, by }
      : { number, mm: foundMm(by.told, mm, addMm), ...proofOf(by), by };
  });
  const [missing, there] = [centres.filter(isMissing), centres.filter((centre) => !isMissing(centre))];
  const extra = entries.flatMap((by): readonly Told[] =>
    "extra" in by.told ? [{ number: 0, mm: by.told.extra + addMm, ...proofOf(by), by }] : [],
  );
  const counted = extra.map((one, index) => ({ ...one, number: laid.length + 1 + index }));
  const problems = [
    ...misplaced(entry, there, options),
    ...counted.flatMap((one) => outside(entry, one, options)),
  ];
  if (problems.length > 0) return refused(...problems);
  return resolved({
    standing: [...there, ...counted].sort((a, b) => a.mm - b.mm),
    missing,
    extra: counted.map(({ number }) => number),
  });
}

const isMissing = ({ by }: Told): boolean => by !== null && "missing" in by.told;

const proofOf = ({ told: { by, on } }: Entry): Pick<Centre, "basis" | "found"> => ({
  basis: "measured",
  found: { by, on },
});

function foundMm(told: FoundFile, laidMm: number, addMm: number): number {
  if ("at" in told) return told.at + addMm;
  return "shift" in told ? laidMm + told.shift : laidMm;
}

function numbersOf(told: FoundFile): Readonly<Record<string, number>> {
  if ("extra" in told) return {};
  if ("missing" in told) return { missing: told.missing };
  return "member" in told ? { member: told.member } : { from: told.from, to: told.to };
}

/** By the numbers of so many members, the last entry that names each. */
function lastWordsOn(count: number, entries: readonly Entry[]): ReadonlyMap<number, Entry> {
  const last = new Map<number, Entry>();
  // From the last entry on: what it names nobody before it has to look at again.
  const next = Int32Array.from({ length: count + 2 }, (_, number) => number);
  const openFrom = (number: number): number => {
    let end = number;
    while (end <= count && next[end] !== end) end = next[end] ?? end;
    for (let at = number; at < end; ) {
      const after = next[at] ?? end;
      next[at] = end;
      at = after;
    }
    return end;
  };
  for (const entry of [...entries].reverse()) {
    const numbers = Object.values(numbersOf(entry.told));
    if (numbers.length === 0) continue;
    const most = Math.min(count, Math.max(...numbers));
    for (let number = openFrom(Math.min(...numbers)); number <= most; number = openFrom(number)) {
      last.set(number, entry);
      next[number] = number + 1;
    }
  }
  return last;
}

function unknownMembers(told: FoundFile, count: number, path: Path): readonly Problem[] {
  return Object.entries(numbersOf(told))
    .filter(([, number]) => number > count)
    .map(([key, number]) => ({
      code: "found-no-member",
      path: [...path, key],
      at: "value",
      figures: { number, count },
    }));
}

/** Found where no tape can have found it: not after the member in front of it, or off the surface. One problem an entry. */
function misplaced(
  entry: FramingFile,
  centres: readonly Told[],
  options: CentresOptions,
): readonly Problem[] {
  const readings = centres.map(({ mm }) => mm - toCentreMm(entry, options));
  const problems = centres.flatMap((centre, index) => {
    const path = (centre.by ?? centres[index - 1]?.by)?.path ?? null;
    if (path === null) return [];
    return [...orderProblem(readings, index, path), ...outside(entry, centre, options)];
  });
  const told = new Set<Path>();
  return problems.filter(({ path }) => !told.has(path) && told.add(path));
}

const outside = (entry: FramingFile, { mm, by }: Told, options: CentresOptions): readonly Problem[] =>
  by === null ? [] : offSurface(mm, entry, options, by.path);

function offSurface(mm: number, entry: FramingFile, options: CentresOptions, path: Path): readonly Problem[] {
  const beforeMm = -mm - entry.member.widthMm / 2;
  if (beforeMm <= EPSILON_MM) return outsideProblem(mm, entry, { ...options, path });
  return [{ code: "member-outside", path, at: "value", figures: { byMm: beforeMm } }];
}
