import { MM_PER_INCH } from "./definitions.js";
import { type Rounding, roundToSteps } from "./rounding.js";

/** A length as a person reads it. */
export interface Figure {
  /** As printed: a rounded figure bears `ROUNDED_MARK` in front. */
  readonly text: string;
  /** Without the mark; `parseLength` reads it. */
  readonly plain: string;
  /** Whether it differs from the length by more than `EXACT_WITHIN_MM`. */
  readonly rounded: boolean;
}

export const ROUNDED_MARK = "≈";

export interface FractionOptions {
  /** Finest division of the tape; 16 unless said. */
  readonly denominator?: 2 | 4 | 8 | 16 | 32 | 64;
  readonly rounding?: Rounding;
}

export interface DecimalOptions {
  /** Places after the point; 0 unless said. */
  readonly decimals?: number;
  readonly rounding?: Rounding;
}

const INCHES_PER_FOOT = 12;

/** As a tape reads: `9' 1 1/2"`, `1' 0"`, under a foot `11 1/2"`. Throws `RangeError` on NaN and infinities. */
export function feetInches(mm: number, options: FractionOptions = {}): Figure {
  return inFractions(mm, options, (wholeInches, fraction) => {
    const feet = Math.floor(wholeInches / INCHES_PER_FOOT);
    const inchesText = inchesAndFraction(wholeInches % INCHES_PER_FOOT, fraction, feet > 0);
    return feet > 0 ? `${feet}' ${inchesText}` : inchesText;
  });
}

/** In inches alone: `109 1/2"`. Throws `RangeError` on NaN and infinities. */
export function inches(mm: number, options: FractionOptions = {}): Figure {
  return inFractions(mm, options, (wholeInches, fraction) => inchesAndFraction(wholeInches, fraction, false));
}

/** In millimetres: `2781 mm`. Throws `RangeError` on NaN and infinities. */
export function millimetres(mm: number, { decimals = 0, rounding = "nearest" }: DecimalOptions = {}): Figure {
  const perMm = 10 ** decimals;
  const { count, rounded } = roundToSteps(mm, 1 / perMm, rounding);
  return marked(`${(count / perMm).toFixed(decimals)} mm`, rounded);
}

function inFractions(
  mm: number,
  { denominator = 16, rounding = "nearest" }: FractionOptions,
  write: (wholeInches: number, fraction: string) => string,
): Figure {
  const { count, rounded } = roundToSteps(mm, MM_PER_INCH / denominator, rounding);
  const size = Math.abs(count);
  const written = write(Math.floor(size / denominator), fractionText(size % denominator, denominator));
  return marked(count < 0 ? `-${written}` : written, rounded);
}

/** In lowest terms; empty for none. Both ends are halved while they can be: a tape's divisions are halves of halves. */
function fractionText(over: number, under: number): string {
  if (over === 0) return "";
  return over % 2 === 0 ? fractionText(over / 2, under / 2) : `${over}/${under}`;
}

function inchesAndFraction(whole: number, fraction: string, withZero: boolean): string {
  const wholeText = whole > 0 || withZero || fraction === "" ? String(whole) : "";
  return `${[wholeText, fraction].filter((part) => part !== "").join(" ")}"`;
}

function marked(plain: string, rounded: boolean): Figure {
  return { text: rounded ? ROUNDED_MARK + plain : plain, plain, rounded };
}
