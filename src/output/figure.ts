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
  return String(Math.round(value * PLACES) / PLACES + 0);
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
