import type { Problem } from "../../findings/complaint.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Found, Member, Path } from "../room.js";
import type { FoundFile, FramingFile } from "../schema/framing.js";
import { type CentresOptions, orderProblem, outsideProblem, toCentreMm } from "./centres.js";
import { type Resolved, refused, resolved } from "./resolved.js";

/** A member's centre from the framing face of the wall that is measured from, and how it is known. */
export interface Centre extends Pick<Member, "basis" | "found"> {
  readonly mm: number;
}

/** A centre and the entry under `found` that it comes from; null where the layout alone says it. */
interface Told extends Centre {
  readonly by: Path | null;
}

/**
 * The layout's centres with what was found since, ascending. Every entry counts from the layout as given, so that a
 * stretch and one of its members can both be told; the last one that names a member holds.
 */
export function asFound(
  entry: FramingFile,
  laid: readonly number[],
  options: CentresOptions,
): Resolved<readonly Centre[]> {
  const entries = (entry.found ?? []).map((told, index) => ({
    told,
    path: [...options.path, "found", index],
  }));
  const unknown = entries.flatMap(({ told, path }) => unknownMembers(told, laid.length, path));
  if (unknown.length > 0) return refused(...unknown);
  const basis = entry.at === undefined ? "assumed" : "measured";
  const centres = laid.map((mm, index): Told => {
    const last = entries.findLast(({ told }) => names(told, index + 1));
    if (last === undefined) return { mm, basis, found: null, by: null };
    const found: Found = { by: last.told.by, on: last.told.on };
    return {
      mm: foundMm(last.told, mm, toCentreMm(entry, options)),
      basis: "measured",
      found,
      by: last.path,
    };
  });
  const problems = misplaced(entry, centres, options);
  return problems.length > 0 ? refused(...problems) : resolved(centres);
}

const foundMm = (told: FoundFile, laidMm: number, addMm: number): number =>
  "at" in told ? told.at + addMm : laidMm + told.shift;

const numbersOf = (told: FoundFile): Readonly<Record<string, number>> =>
  "member" in told ? { member: told.member } : { from: told.from, to: told.to };

function names(told: FoundFile, number: number): boolean {
  const numbers = Object.values(numbersOf(told));
  return number >= Math.min(...numbers) && number <= Math.max(...numbers);
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
  const problems = centres.flatMap(({ mm, by }, index) => {
    const path = by ?? centres[index - 1]?.by ?? null;
    if (path === null) return [];
    return [
      ...orderProblem(readings, index, path),
      ...(by === null ? [] : offSurface(mm, entry, options, path)),
    ];
  });
  return problems.filter(({ path }, index) => problems.findIndex((other) => other.path === path) === index);
}

function offSurface(mm: number, entry: FramingFile, options: CentresOptions, path: Path): readonly Problem[] {
  const beforeMm = -mm - entry.member.widthMm / 2;
  if (beforeMm <= EPSILON_MM) return outsideProblem(mm, entry, { ...options, path });
  return [{ code: "member-outside", path, at: "value", figures: { byMm: beforeMm } }];
}
