import { SENSITIVITY_DISTANCE_MM } from "../standards/sound.js";

/** At half the coverage angle a loudspeaker is down by this: that is how data sheets state coverage. */
const AT_HALF_COVERAGE_DB = 6;
/** No loudspeaker in a room falls silent behind its axis: the model goes no further down. Our own choice. */
const MOST_OFF_AXIS_DB = 20;

/**
 * How much less a loudspeaker gives off its axis, in dB, 0 or more. A MODEL, not a measurement: a smooth lobe, the
 * same all round the axis and at every frequency, whose level in dB falls with the square of the angle, through
 * -6 dB at half the stated coverage angle. Real ones are wider in the bass and narrower in the treble; past half the
 * coverage it only says that there is less.
 */
export function offAxisLossDb(offAxisDeg: number, coverageDeg: number): number {
  const share = offAxisDeg / (coverageDeg / 2);
  return Math.min(MOST_OFF_AXIS_DB, AT_HALF_COVERAGE_DB * share ** 2);
}

/** Level against that at 1 m on the same line, in dB: the inverse square law, -20 lg(r / 1 m). */
export const distanceDb = (distanceMm: number): number =>
  -20 * Math.log10(distanceMm / SENSITIVITY_DISTANCE_MM);

/** From a loudspeaker to an ear. */
export interface SoundPath {
  readonly distanceMm: number;
  /** Null where nobody knows the axis. */
  readonly offAxisDeg: number | null;
  /** Null where no coverage is stated. */
  readonly coverageDeg: number | null;
}

/** Level at the end of a path against 1 m on the axis, in dB; by distance alone where axis or coverage is unknown. */
export function levelDb({ distanceMm, offAxisDeg, coverageDeg }: SoundPath): number {
  const known = offAxisDeg !== null && coverageDeg !== null;
  return distanceDb(distanceMm) - (known ? offAxisLossDb(offAxisDeg, coverageDeg) : 0);
}
