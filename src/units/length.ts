import { FOOT_IN_MM, INCH_IN_MM, ONE } from "./definitions.js";
import { splitSign } from "./figure.js";
import { fromDecimal, nearestDouble, product, sum } from "./fraction.js";
import { type MeasureProblem, type MeasureResult, readable, readMeasure, type UnitTable } from "./measure.js";

/** What is wrong with a length. `no-unit` also stands for the inches of `9' 1`. */
export type LengthProblem =
  | Exclude<MeasureProblem, { kind: "not-a-figure" }>
  /** Feet with 12 inches or more beside them: no tape reads so. Both as written. */
  | { readonly kind: "inches-over-twelve"; readonly feet: string; readonly inches: string }
  | { readonly kind: "too-large"; readonly limitMm: number }
  | { readonly kind: "not-a-length" };

export type LengthResult =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly problem: LengthProblem };

/** Our own limit: 10 km, far past any building, so that what is longer is a slip. */
export const MAX_LENGTH_MM = 10_000_000;

const FOOT_NAMES = ["'", "ft", "foot", "feet"];
const INCH_NAMES = ['"', "in", "inch", "inches"];
const METRIC: UnitTable = new Map([
  ["mm", ONE],
  ["cm", { over: 10n, under: 1n }],
  ["m", { over: 1000n, under: 1n }],
]);
const INCHES: UnitTable = new Map(INCH_NAMES.map((name) => [name, INCH_IN_MM]));
const LENGTHS: UnitTable = new Map([
  ...METRIC,
  ...INCHES,
  ...FOOT_NAMES.map((name) => [name, FOOT_IN_MM] as const),
]);

const FEET_AND_MORE = /^(?<feet>\d+) ?(?:'|ft\.?|foot|feet) ?-? ?(?<inches>[\d.].*)/u;

/**
 * The length in mm, as the double nearest to what is written, so that every notation of one length gives one number.
 * Reads `9' 1"`, `9'-1 1/2"`, `109 1/2"`, `9.125 ft`, `9 ft 1 in`, `2780 mm`, `278 cm`, `2.78 m`, and 0 alone, with
 * ASCII, typographic or prime marks; a leading minus is read, for the caller to refuse. Never throws.
 */
export function parseLength(text: string): LengthResult {
  const read = readable(text);
  if (!read.ok) return { ok: false, problem: lengthProblem(read.problem) };
  const { negative, rest } = splitSign(read.tidied);
  const length = readFeetAndInches(rest) ?? readMeasure(rest, LENGTHS);
  if (!length.ok) return { ok: false, problem: lengthProblem(length.problem) };
  const mm = nearestDouble(length.value);
  if (mm > MAX_LENGTH_MM) return { ok: false, problem: { kind: "too-large", limitMm: MAX_LENGTH_MM } };
  return { ok: true, mm: negative && mm !== 0 ? -mm : mm };
}

type FeetAndInches =
  | MeasureResult
  | { readonly ok: false; readonly problem: Extract<LengthProblem, { kind: "inches-over-twelve" }> };

/** Whole feet and then inches; null where the text is not of that form. */
function readFeetAndInches(rest: string): FeetAndInches | null {
  const { feet = "", inches = "" } = FEET_AND_MORE.exec(rest)?.groups ?? {};
  if (feet === "") return null;
  const read = readMeasure(inches, INCHES);
  if (!read.ok) return read;
  const feetMm = product(fromDecimal(feet, ""), FOOT_IN_MM);
  if (read.value.over * FOOT_IN_MM.under >= FOOT_IN_MM.over * read.value.under) {
    return { ok: false, problem: { kind: "inches-over-twelve", feet, inches } };
  }
  return { ok: true, value: sum(feetMm, read.value) };
}

function lengthProblem(problem: MeasureProblem | LengthProblem): LengthProblem {
  return problem.kind === "not-a-figure" ? { kind: "not-a-length" } : problem;
}
