import type { Measured } from "../../findings/complaint.js";
import { feetInches } from "../../units/format.js";
import { type LengthProblem, parseLength } from "../../units/length.js";
import {
  parseQuantity,
  type Quantity,
  type QuantityProblem,
  type QuantityResult,
} from "../../units/quantity.js";
import { shown } from "../shown.js";
import { complain, type Reading } from "./complain.js";
import { written } from "./written.js";

/*
 * Figures with their units. Every scalar of the file comes here as it was written, so that no figure has been a
 * floating number before its unit is known. In the JSON Schema for editors a bare number other than 0 is an error too.
 */

export interface Limits {
  /** Both as a person would type them. */
  readonly least: string;
  readonly most: string;
}

const WITH_UNIT_OR_ZERO = { type: ["string", "number"], minimum: 0, maximum: 0 } as const;

/** A length in mm. */
export const length = (limits: Limits, description: string) =>
  lengthWithin(limits).meta({ description, ...WITH_UNIT_OR_ZERO });

type Length = ReturnType<typeof newLengthWithin>;

const lengths = new WeakMap<Limits, Length>();

function lengthWithin(limits: Limits): Length {
  const found = lengths.get(limits) ?? newLengthWithin(limits);
  lengths.set(limits, found);
  return found;
}

function newLengthWithin(limits: Limits) {
  const [leastMm, mostMm] = [lengthMm(limits.least), lengthMm(limits.most)];
  return written.transform((typed, context) => {
    const read = parseLength(typed);
    if (!read.ok) return complainOfLength(context, typed, read.problem, limits);
    if (read.mm >= leastMm && read.mm <= mostMm) return read.mm;
    return complain(context, "out-of-limits", { typed: shown(typed), ...limits });
  });
}

/** A limit of ours as mm; it is a constant of this program, so a bad one throws. */
function lengthMm(text: string): number {
  const read = parseLength(text);
  if (!read.ok) throw new RangeError(`not a length: ${text}`);
  return read.mm;
}

const LENGTH_WAYS = [`9' 1 1/2"`, "2780 mm", "2.78 m"];

/** With a point in the place of the comma; without either where it may have parted thousands. */
function waysWithPoint(typed: string): readonly string[] {
  const thousands = /(?<!\d)[1-9]\d{0,2},\d{3}(?!\d)/u.test(typed) ? [typed.replace(",", "")] : [];
  return [typed.replace(",", "."), ...thousands];
}

function complainOfLength(context: Reading, text: string, problem: LengthProblem, limits: Limits): never {
  const typed = shown(text);
  switch (problem.kind) {
    case "no-unit":
      return complain(context, "no-unit", { typed, ways: waysToWrite(typed, problem.figure) });
    case "unknown-unit":
      return complain(context, "unknown-unit", {
        typed,
        unit: problem.unit,
        ways: waysToWrite(typed, problem.figure),
      });
    case "comma":
      return complain(context, "comma-in-figure", { typed, ways: waysWithPoint(typed) });
    case "inches-over-twelve":
      return complain(context, "inches-over-twelve", { typed, instead: carried(problem) });
    case "too-large":
      return complain(context, "out-of-limits", { typed, ...limits });
    case "not-a-length":
      return complain(context, "not-a-measure", { typed, measured: "length", ways: LENGTH_WAYS });
  }
}

/** The ways to write a bare figure; where feet stand before it, it can only be inches. */
function waysToWrite(typed: string, figure: string): readonly string[] {
  if (/['’′]|ft|feet|foot/u.test(typed)) return [`${typed}"`];
  return [`${figure}"`, `${figure} mm`, `${figure} cm`, `${figure} ft`];
}

function carried({ feet, inches }: { readonly feet: string; readonly inches: string }): string | null {
  const [whole, rest] = [parseLength(`${feet} ft`), parseLength(inches)];
  return whole.ok && rest.ok ? feetInches(whole.mm + rest.mm, { denominator: 64 }).plain : null;
}

interface QuantityOptions {
  readonly quantity: Quantity;
  readonly least: number;
  readonly most: number;
  readonly description: string;
}

const MEASURED: Readonly<Record<Quantity, Measured>> = {
  deg: "angle",
  dB: "level",
  ohm: "impedance",
  W: "power",
  kg: "weight",
  percent: "share",
  C: "temperature",
  F: "temperature",
  mm2: "cross-section",
};

/** What is written after a figure, in the order in which we propose it. */
const UNITS: Readonly<Record<Quantity, readonly string[]>> = {
  deg: [" deg", "°"],
  dB: [" dB"],
  ohm: [" ohm", " Ω"],
  W: [" W"],
  kg: [" lb", " kg"],
  percent: ["%"],
  C: [" °C", " C"],
  F: [" °F", " F"],
  mm2: [" mm2", " mm²"],
};

const TYPICAL: Readonly<Record<Quantity, string>> = {
  deg: "20",
  dB: "88",
  ohm: "8",
  W: "100",
  kg: "7",
  percent: "5",
  C: "20",
  F: "68",
  mm2: "2.5",
};

const waysOf = (quantity: Quantity, figure: string): readonly string[] =>
  UNITS[quantity].map((unit) => `${figure}${unit}`);

/** A quantity in the unit that names it. */
export function quantity({ description, ...limits }: QuantityOptions) {
  return written
    .transform((typed, context) => readQuantity(typed, context, limits))
    .meta({ description, ...WITH_UNIT_OR_ZERO });
}

/** A quantity as it was typed, in the unit that names it; complains where it is none. */
export function readQuantity(typed: string, context: Reading, limits: QuantityLimits): number {
  const read = parseQuantity(typed, limits.quantity);
  if (!read.ok) return complainOfQuantity(context, typed, read.problem, limits);
  if (read.value >= limits.least && read.value <= limits.most) return read.value;
  return complain(context, "out-of-limits", { typed: shown(typed), ...limitsOf(limits) });
}

const KELVINS_PER_FAHRENHEIT = 5 / 9;
const FREEZING_F = 32;

/** A temperature in degrees Celsius; degrees Fahrenheit are read too. */
export function temperature({ least, most, description }: Omit<QuantityOptions, "quantity">) {
  return written
    .transform((typed, context) => {
      const [celsius, fahrenheit] = [parseQuantity(typed, "C"), parseQuantity(typed, "F")];
      const value = celsius.ok
        ? celsius.value
        : fahrenheit.ok && (fahrenheit.value - FREEZING_F) * KELVINS_PER_FAHRENHEIT;
      const limits = { quantity: "C", least, most } as const;
      if (value === false) return complainOfQuantity(context, typed, problemOf(celsius), limits);
      if (value >= least && value <= most) return value;
      return complain(context, "out-of-limits", { typed: shown(typed), ...limitsOf(limits) });
    })
    .meta({ description, ...WITH_UNIT_OR_ZERO });
}

const problemOf = (read: QuantityResult): QuantityProblem =>
  read.ok ? { kind: "not-a-quantity" } : read.problem;

type QuantityLimits = Omit<QuantityOptions, "description">;

const limitsOf = ({ quantity, least, most }: QuantityLimits): Limits => {
  const unit = quantity === "kg" ? " kg" : UNITS[quantity][0];
  return { least: `${least}${unit}`, most: `${most}${unit}` };
};

function complainOfQuantity(
  context: Reading,
  text: string,
  problem: QuantityProblem,
  limits: QuantityLimits,
): never {
  const typed = shown(text);
  switch (problem.kind) {
    case "no-unit":
      return complain(context, "no-unit", { typed, ways: waysOf(limits.quantity, problem.figure) });
    case "unknown-unit": {
      const ways = waysOf(limits.quantity, problem.figure);
      return complain(context, "unknown-unit", { typed, unit: problem.unit, ways });
    }
    case "comma":
      return complain(context, "comma-in-figure", { typed, ways: waysWithPoint(typed) });
    case "too-large":
      return complain(context, "out-of-limits", { typed, ...limitsOf(limits) });
    case "not-a-quantity": {
      const ways = waysOf(limits.quantity, TYPICAL[limits.quantity]);
      return complain(context, "not-a-measure", { typed, measured: MEASURED[limits.quantity], ways });
    }
  }
}

interface WholeOptions {
  readonly least: number;
  readonly most: number;
  readonly description: string;
}

/** A whole number without a unit, written plainly: no sign, no point, no leading zero. */
export function wholeNumber({ least, most, description }: WholeOptions) {
  return written
    .transform((typed, context) => {
      const value = /^(?:0|[1-9]\d{0,8})$/u.test(typed) ? Number(typed) : Number.NaN;
      if (value >= least && value <= most) return value;
      return complain(context, "not-a-whole-number", { typed: shown(typed), least, most });
    })
    .meta({ description, type: "integer", minimum: least, maximum: most });
}
