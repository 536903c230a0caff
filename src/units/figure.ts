import type { Fraction } from "./definitions.js";
import { fromDecimal, sum } from "./fraction.js";

/*
 * A figure is what stands before a unit: `9`, `9.125`, `.5`, `1/2`, `1 1/2`, `1-1/2`. No exponent, no hexadecimal,
 * no thousands: nobody writes a tape that way, so it is a slip.
 */

/** Longer than anything that a tape or a data sheet says; keeps every step below short however long the input. */
export const MAX_CHARACTERS = 64;

export interface Measure {
  readonly negative: boolean;
  /** What follows the sign: a figure and its unit, spaces at neither end. */
  readonly rest: string;
}

/** The text in plain ASCII marks and lower case, or null where it is too long to be a figure with a unit. */
export function tidy(text: string): string | null {
  if (text.length > 4 * MAX_CHARACTERS) return null;
  const trimmed = text.trim();
  if (trimmed.length > MAX_CHARACTERS) return null;
  return trimmed
    .replace(/[¼-¾⅐-⅞]/gu, (character) => ` ${character.normalize("NFKC")}`)
    .replace(/\u2044/gu, "/")
    .replace(/[‘’ʼʹ′]/gu, "'")
    .replace(/[“”ʺ″]/gu, '"')
    .replace(/''/gu, '"')
    .replace(/[‐‑‒–−]/gu, "-")
    .replace(/\u2126/gu, "Ω")
    .replace(/\s+/gu, " ")
    .trim()
    .toLowerCase();
}

/** Takes a leading minus off. */
export function splitSign(tidied: string): Measure {
  const negative = tidied.startsWith("-");
  return { negative, rest: negative ? tidied.slice(1).trimStart() : tidied };
}

const FRACTION = /^(?:(?<whole>\d+)(?: ?- ?| ))?(?<over>\d+) ?\/ ?(?<under>\d+)$/u;
const DECIMAL = /^(?<digits>\d*)(?:\.(?<decimals>\d+))?$/u;

/** The value of a figure, or null where the text is none: a mixed one needs a proper fraction, `1 5/4` is a slip. */
export function readFigure(figure: string): Fraction | null {
  return readFraction(figure) ?? readDecimal(figure);
}

function readFraction(figure: string): Fraction | null {
  const { whole, over = "", under = "" } = FRACTION.exec(figure)?.groups ?? {};
  const fraction = { over: BigInt(over), under: BigInt(under) };
  // BigInt of nothing is 0: what is no fraction has nothing under it, as 1/0 has.
  if (fraction.under === 0n) return null;
  if (whole === undefined) return fraction;
  return fraction.over < fraction.under ? sum({ over: BigInt(whole), under: 1n }, fraction) : null;
}

function readDecimal(figure: string): Fraction | null {
  const { digits = "", decimals = "" } = DECIMAL.exec(figure)?.groups ?? {};
  return digits === "" && decimals === "" ? null : fromDecimal(digits, decimals);
}

/** A figure and the unit after it, as tidied; no figure where the text does not begin with the characters of one. */
export function splitUnit(rest: string): { readonly figure: string; readonly unit: string } {
  const [figure = ""] = /^[\d./ -]*[\d/]/u.exec(rest) ?? [];
  return { figure, unit: rest.slice(figure.length).trimStart() };
}
