import { type Fraction, ONE, POUND_IN_KG } from "./definitions.js";
import { splitSign } from "./figure.js";
import { nearestDouble } from "./fraction.js";
import { type MeasureProblem, readable, readMeasure, type UnitTable } from "./measure.js";

/** The quantities of the room file other than lengths, each by the unit that its value is given back in. */
export type Quantity = "deg" | "dB" | "ohm" | "W" | "kg" | "percent" | "C" | "F" | "mm2";

export type QuantityProblem =
  | Exclude<MeasureProblem, { kind: "not-a-figure" }>
  | { readonly kind: "too-large"; readonly limit: number }
  | { readonly kind: "not-a-quantity" };

export type QuantityResult =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly problem: QuantityProblem };

/** Our own limit: no angle, level, power, weight or share on a data sheet is above it. */
export const MAX_QUANTITY = 1_000_000;

const UNITS: Readonly<Record<Quantity, UnitTable>> = {
  deg: table({ deg: ONE, degree: ONE, degrees: ONE, "°": ONE }),
  dB: table({ db: ONE }),
  ohm: table({ ohm: ONE, ohms: ONE, ω: ONE }),
  W: table({ w: ONE, watt: ONE, watts: ONE }),
  kg: table({ kg: ONE, g: { over: 1n, under: 1000n }, lb: POUND_IN_KG, lbs: POUND_IN_KG }),
  percent: table({ "%": ONE, percent: ONE }),
  C: table({ c: ONE, "°c": ONE }),
  F: table({ f: ONE, "°f": ONE }),
  mm2: table({ mm2: ONE, "mm²": ONE }),
};

function table(units: Readonly<Record<string, Fraction>>): UnitTable {
  return new Map(Object.entries(units));
}

/** The quantity in the unit that names it (`7 lb` asked for as "kg" gives 3.175...). A minus is read. Never throws. */
export function parseQuantity(text: string, quantity: Quantity): QuantityResult {
  const read = readable(text);
  if (!read.ok) return { ok: false, problem: quantityProblem(read.problem) };
  const { negative, rest } = splitSign(read.tidied);
  const measure = readMeasure(rest, UNITS[quantity]);
  if (!measure.ok) return { ok: false, problem: quantityProblem(measure.problem) };
  const value = nearestDouble(measure.value);
  if (value > MAX_QUANTITY) return { ok: false, problem: { kind: "too-large", limit: MAX_QUANTITY } };
  return { ok: true, value: negative && value !== 0 ? -value : value };
}

/** An angle in degrees, `20 deg` or `20°`. */
export function parseAngle(text: string): QuantityResult {
  return parseQuantity(text, "deg");
}

function quantityProblem(problem: MeasureProblem): QuantityProblem {
  return problem.kind === "not-a-figure" ? { kind: "not-a-quantity" } : problem;
}
