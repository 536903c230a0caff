/** "up" is toward greater values, "down" toward lesser ones; "nearest" takes halves away from zero. */
export type Rounding = "nearest" | "up" | "down";

/**
 * What counts as exact: far below anything that a tape shows, far above the noise of doubles at a building's size.
 * Our own choice.
 */
export const EXACT_WITHIN_MM = 1e-6;

export interface Steps {
  /** A whole number of steps. */
  readonly count: number;
  /** Whether those steps differ from the length by more than `EXACT_WITHIN_MM`. */
  readonly rounded: boolean;
}

/** The whole number of steps of `stepMm` in `mm`. Throws `RangeError` on NaN and infinities: the edge refuses them. */
export function roundToSteps(mm: number, stepMm: number, rounding: Rounding): Steps {
  if (!Number.isFinite(mm)) throw new RangeError(`not a length: ${mm}`);
  const steps = mm / stepMm;
  const exactWithin = EXACT_WITHIN_MM / stepMm;
  const count = WHOLE[rounding](steps, exactWithin);
  return { count, rounded: Math.abs(count * stepMm - mm) > EXACT_WITHIN_MM };
}

const WHOLE: Readonly<Record<Rounding, (steps: number, exactWithin: number) => number>> = {
  nearest: (steps, exactWithin) => Math.sign(steps) * Math.floor(Math.abs(steps) + 0.5 + exactWithin),
  up: (steps, exactWithin) => Math.ceil(steps - exactWithin),
  down: (steps, exactWithin) => Math.floor(steps + exactWithin),
};

export interface Range {
  readonly lowMm: number;
  readonly highMm: number;
  readonly stepMm: number;
}

/**
 * The multiple of `stepMm` inside [lowMm, highMm] that is nearest to `mm` (the ends may be infinite), or null where
 * the range holds none. For what must stay inside, as a centre in its clear area.
 */
export function roundInto(mm: number, { lowMm, highMm, stepMm }: Range): number | null {
  const exactWithin = EXACT_WITHIN_MM / stepMm;
  const first = Math.ceil(lowMm / stepMm - exactWithin);
  const last = Math.floor(highMm / stepMm + exactWithin);
  const { count } = roundToSteps(mm, stepMm, "nearest");
  if (first > last) return null;
  // Adding 0 turns a negative zero, which `Math.ceil` makes of -0.5, into a plain one.
  return Math.min(Math.max(count, first), last) * stepMm + 0;
}
