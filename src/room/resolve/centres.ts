import type { Problem } from "../../findings/complaint.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Path } from "../room.js";
import { MOST_MEMBERS } from "../schema/limits.js";
import type { LaidFile } from "./laid.js";
import { type Resolved, refused, resolved } from "./resolved.js";
import type { Strip } from "./strip.js";

export interface CentresOptions {
  readonly strip: Strip;
  /** From the framing face of the wall that is measured from to the face that its tapes hook on. */
  readonly shiftMm: number;
  readonly path: Path;
}

/** Centres of the members from the framing face of the wall that is measured from, ascending, in mm. */
export function centresOf(entry: LaidFile, options: CentresOptions): Resolved<readonly number[]> {
  const { first, spacing, at } = entry;
  if (at !== undefined && first === undefined && spacing === undefined) return measured(entry, at, options);
  if (at === undefined && first !== undefined && spacing !== undefined) {
    return laidOut(entry, { firstMm: first, spacingMm: spacing }, options);
  }
  const given = ["first", "spacing", "at"].filter((key) => key in entry);
  return refused({ code: "framing-layout", path: options.path, at: "value", figures: { given } });
}

/** From a typed figure to the centre: a near edge is half a member nearer to the wall. */
export function toCentreMm({ mark, member }: LaidFile, { shiftMm }: CentresOptions): number {
  return shiftMm + (mark === "near-edge" ? member.widthMm / 2 : 0);
}

function measured(
  entry: LaidFile,
  at: readonly number[],
  options: CentresOptions,
): Resolved<readonly number[]> {
  const addMm = toCentreMm(entry, options);
  const centres = at.map((typedMm) => typedMm + addMm);
  const problems = centres.flatMap((centreMm, index) => {
    const path = [...options.path, "at", index];
    return [...orderProblem(at, index, path), ...outsideProblem(centreMm, entry, { ...options, path })];
  });
  return problems.length > 0 ? refused(...problems) : resolved(centres);
}

export function orderProblem(at: readonly number[], index: number, path: Path): readonly Problem[] {
  const [before, typed] = [at[index - 1], at[index]];
  if (before === undefined || typed === undefined || typed > before) return [];
  return [{ code: "members-out-of-order", path, at: "value", figures: { typedMm: typed, beforeMm: before } }];
}

/** A member that begins past the far wall is a slip of the tape or of typing. */
export function outsideProblem(
  centreMm: number,
  { member }: LaidFile,
  options: CentresOptions,
): readonly Problem[] {
  const byMm = centreMm - member.widthMm / 2 - options.strip.extentMm;
  if (byMm <= EPSILON_MM) return [];
  return [{ code: "member-outside", path: options.path, at: "value", figures: { byMm } }];
}

interface Laid {
  readonly firstMm: number;
  readonly spacingMm: number;
}

function laidOut(entry: LaidFile, laid: Laid, options: CentresOptions): Resolved<readonly number[]> {
  const { widthMm } = entry.member;
  const start = laid.firstMm + toCentreMm(entry, options);
  const outside = outsideProblem(start, entry, { ...options, path: [...options.path, "first"] });
  if (outside.length > 0) return refused(...outside);
  const path = [...options.path, "spacing"];
  if (laid.spacingMm < widthMm) {
    const figures = { spacingMm: laid.spacingMm, widthMm };
    return refused({ code: "spacing-under-width", path, at: "value", figures });
  }
  const lastMm = options.strip.extentMm + widthMm / 2 - EPSILON_MM;
  const count = Math.max(0, Math.floor((lastMm - start) / laid.spacingMm) + 1);
  if (count > MOST_MEMBERS) {
    return refused({
      code: "too-many",
      path,
      at: "value",
      figures: { of: "members", count, most: MOST_MEMBERS },
    });
  }
  return resolved(Array.from({ length: count }, (_, index) => start + index * laid.spacingMm));
}
