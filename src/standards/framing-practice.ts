import { inchesInMm } from "../units/definitions.js";
import { LUMBER } from "./lumber.js";

/*
 * What framers and installers usually do. Common practice, no source: each is a default or an advice, never a rule,
 * and what is measured on site stands above it.
 */

/** Centre to centre: 12, 16, 19.2 and 24 in, and the metric 400 and 600 mm. */
export const USUAL_SPACINGS_MM: readonly number[] = [
  inchesInMm(12),
  400,
  inchesInMm(16),
  inchesInMm(19.2),
  600,
  inchesInMm(24),
];

/** Plates of a stud wall where nothing else is said: one under the studs and two over them, laid flat. */
export const USUAL_PLATES = { below: 1, above: 2, thicknessMm: LUMBER["2x4"].widthMm };

/** Gap asked for beyond the clamps where the file says nothing: 1/4 in. */
export const USUAL_CLEARANCE_MM = inchesInMm(0.25);

/** Thickness of board that the clamps of a loudspeaker usually hold: 3/8 to 1 1/4 in. */
export const USUAL_CLAMP_RANGE_MM: readonly [number, number] = [inchesInMm(0.375), inchesInMm(1.25)];

/** Gap from an opening to a member that installers advise where clamps swing: 1 in. */
export const ADVISED_GAP_MM = inchesInMm(1);

/** Studs on each side of a door or a window: one king, full height, and one jack under the header. */
export const USUAL_OPENING_STUDS = 2;
