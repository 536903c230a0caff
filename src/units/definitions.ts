/*
 * What each unit is in the house's own (mm, kg). All are exact by definition: NIST SP 811 (2008), Appendix B.8.
 * Kept as whole numbers over whole numbers, so that nothing is lost before the one rounding to a double.
 */

/** A number as one whole number over another, `under` above 0. */
export interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

/** 1 in = 25.4 mm, exactly (NIST SP 811, B.8). */
export const MM_PER_INCH = 25.4;
/** 1 ft = 0.3048 m, exactly (NIST SP 811, B.8). */
export const MM_PER_FOOT = 304.8;
/** 1 lb (avoirdupois) = 0.453 592 37 kg, exactly (NIST SP 811, B.8). */
export const KG_PER_POUND = 0.45359237;

export const INCH_IN_MM: Fraction = { over: 254n, under: 10n };
export const FOOT_IN_MM: Fraction = { over: 3048n, under: 10n };
export const POUND_IN_KG: Fraction = { over: 45359237n, under: 100000000n };
/** A fraction that leaves a figure as it stands. */
export const ONE: Fraction = { over: 1n, under: 1n };

/**
 * Inches in mm as `parseLength` would give them: the double nearest to the exact value for whole inches and tape
 * fractions, where `inches * MM_PER_INCH` may miss it by its last digit.
 */
export function inchesInMm(inches: number): number {
  return (inches * 254) / 10;
}
