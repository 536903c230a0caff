import { type Fraction, ONE } from "./definitions.js";
import { readFigure, splitUnit, tidy } from "./figure.js";
import { product } from "./fraction.js";

/** Names of units, in lower case, and what each is in the house's own unit. */
export type UnitTable = ReadonlyMap<string, Fraction>;

/** What is wrong with a figure and its unit; the text itself is the caller's to show. */
export type MeasureProblem =
  /** A bare number other than 0. */
  | { readonly kind: "no-unit"; readonly figure: string }
  | { readonly kind: "unknown-unit"; readonly figure: string; readonly unit: string }
  /** A comma, which is a decimal sign to some and parts thousands for others. */
  | { readonly kind: "comma" }
  | { readonly kind: "not-a-figure" };

export type MeasureResult =
  | { readonly ok: true; readonly value: Fraction }
  | { readonly ok: false; readonly problem: MeasureProblem };

export const NOT_A_FIGURE: MeasureResult = { ok: false, problem: { kind: "not-a-figure" } };

/** One figure with one unit, without a sign, exactly. A bare 0 needs no unit. */
export function readMeasure(rest: string, units: UnitTable): MeasureResult {
  const parts = splitUnit(rest);
  const value = readFigure(parts.figure);
  if (value === null) return NOT_A_FIGURE;
  const unit = parts.unit === "" && value.over === 0n ? ONE : units.get(parts.unit.replace(/\.$/u, ""));
  if (unit !== undefined) return { ok: true, value: product(value, unit) };
  return { ok: false, problem: unitProblem(parts) };
}

function unitProblem({ figure, unit }: { figure: string; unit: string }): MeasureProblem {
  if (unit === "") return { kind: "no-unit", figure };
  return /^[\p{L}°%]+\.?$/u.test(unit) ? { kind: "unknown-unit", figure, unit } : { kind: "not-a-figure" };
}

/** The tidied text, or what keeps it from being read at all. */
export function readable(
  text: string,
): { readonly ok: true; readonly tidied: string } | { readonly ok: false; readonly problem: MeasureProblem } {
  const tidied = tidy(text);
  if (tidied === null) return { ok: false, problem: { kind: "not-a-figure" } };
  if (/\d,\d/u.test(tidied)) return { ok: false, problem: { kind: "comma" } };
  return { ok: true, tidied };
}
