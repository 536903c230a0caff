import { InternalError } from "../findings/internal-error.js";

const PLACES = 10_000;
/** Beyond this, in mm or points, no page can be meant. */
const LARGEST = 1e6;

/** Throws an InternalError for what is no number on a page: NaN, infinite, or a kilometre away. */
export function refuseUnprintable(value: number): void {
  if (!(Math.abs(value) <= LARGEST)) throw new InternalError(`${value} is no figure to draw with`);
}

/** The one rounding at output: to 1/10000 mm, without exponent, trailing zeros or a minus before 0. */
export function figure(value: number): string {
  refuseUnprintable(value);
  const parts = Math.round(value * PLACES);
  return parts < 0 ? `-${digits(-parts)}` : digits(parts);
}

/** Whole and decimals apart: a fraction takes JavaScript three times as long to write, and a page has thousands. */
function digits(parts: number): string {
  const rest = parts % PLACES;
  const whole = String((parts - rest) / PLACES);
  return rest === 0 ? whole : whole + decimals(rest);
}

const written = new Array<string | undefined>(PLACES);

/** What stands behind the whole number, without zeros at its end; each is written once. */
function decimals(rest: number): string {
  const known =
    written[rest] ??
    `.${String(PLACES + rest)
      .slice(1)
      .replace(/0+$/u, "")}`;
  written[rest] = known;
  return known;
}

/** A factor of a matrix, which multiplies up to a page's length: to 1e-10 and never in exponent form. */
export function factor(value: number): string {
  refuseUnprintable(value);
  return Number.isInteger(value) ? String(value + 0) : shortened(value.toFixed(10));
}

/** Without the zeros at its end, nor a minus before nothing. */
function shortened(decimal: string): string {
  const short = decimal.replace(/\.?0+$/u, "");
  return short === "-0" ? "0" : short;
}
