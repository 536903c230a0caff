import { inchesInMm } from "../units/definitions.js";

/*
 * International Residential Code R302.4.2: what may pass through one side of a fire-rated assembly without a listed
 * enclosure. The clause is from memory (the sum over an area was read in a secondary public copy); the local code
 * and the authority having jurisdiction prevail.
 */

/** Largest steel box that the exception allows: 16 square inches. */
export const LARGEST_BOX_MM2 = 16 * inchesInMm(1) ** 2;

/** Boxes in sum: 100 square inches in each 100 square feet. */
export const BOXES_SHARE_OF_AREA = 100 / (100 * 12 ** 2);

/** Largest gap between a box and the board: 1/8 in. */
export const LARGEST_BOX_GAP_MM = inchesInMm(0.125);
