import { inchesInMm } from "../units/definitions.js";

/*
 * How openings in board are cut and checked on site. Common practice, no source: the flange covers what is allowed.
 */

/** How much larger than stated the hole may become across; smaller it may not. */
export const CUT_OVER_MM = inchesInMm(0.125);

/** How far an opposite tape may be off before somebody asks: rooms are not square. */
export const CHECK_TAPE_WITHIN_MM = inchesInMm(0.5);
