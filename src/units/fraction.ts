import type { Fraction } from "./definitions.js";

export function sum(a: Fraction, b: Fraction): Fraction {
  return { over: a.over * b.under + b.over * a.under, under: a.under * b.under };
}

export function product(a: Fraction, b: Fraction): Fraction {
  return { over: a.over * b.over, under: a.under * b.under };
}

/** More than any figure of `MAX_CHARACTERS` needs: the quotient keeps over 100 significant bits at 1e-60. */
const SHIFT_BITS = 320;

/**
 * The double nearest to the fraction (halves to even). The quotient is taken with bits to spare, a remainder
 * sets its last bit so that nothing falls on a false half, and `Number` of a bigint rounds only once (ECMA-262).
 */
export function nearestDouble({ over, under }: Fraction): number {
  const isNegative = over < 0n;
  const size = (isNegative ? -over : over) << BigInt(SHIFT_BITS);
  const remainder = size % under === 0n ? 0n : 1n;
  const magnitude = Number((size / under) | remainder) / 2 ** SHIFT_BITS;
  return isNegative ? -magnitude : magnitude;
}

/** `digits` and `decimals` as written, such as "9" and "125". */
export function fromDecimal(digits: string, decimals: string): Fraction {
  return { over: BigInt(digits + decimals), under: 10n ** BigInt(decimals.length) };
}
