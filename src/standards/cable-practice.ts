import { inchesInMm } from "../units/definitions.js";

/*
 * What installers usually do with loudspeaker cable. Common practice, no source: each is a default, and what the
 * room file says stands above it.
 */

/** Gauges that are at hand: 16 for short runs, 14 for most, 12 for long ones. */
export const USUAL_GAUGES: readonly number[] = [16, 14, 12];

/**
 * Most that a run may add to its load's impedance: 5 %, the figure that the widely printed tables of longest runs
 * are made for. It is 0.424 dB.
 */
export const MOST_SHARE_OF_LOAD = 0.05;

/** Left at the loudspeaker: 3 ft. */
export const USUAL_LOOP_MM = inchesInMm(36);
/** Left at the equipment: 6 ft, the least of what is usual there. */
export const USUAL_RACK_LOOP_MM = inchesInMm(72);
/** Added to each run, as pulled cable is never straight. */
export const USUAL_SPARE_PERCENT = 5;

/** Outside diameter in mm by the number of conductors in the jacket, where nobody has measured the cable. */
export const USUAL_DIAMETER_MM = { two: 8, four: 10 };

/** Spools are sold in 500 ft. */
export const USUAL_SPOOL_MM = inchesInMm(500 * 12);

/** Bits go up in steps of 1/8 in. */
export const BIT_STEP_MM = inchesInMm(0.125);
