import { inchesInMm } from "../units/definitions.js";

/*
 * How much may be taken out of framing lumber. International Residential Code, editions to 2021, read as quoted on
 * public pages; the local code and the authority having jurisdiction prevail. Sizes are actual, not nominal.
 */

/** R502.8.1 and R802.7.1: a hole in a joist keeps 2 in from its top, its bottom and any other hole or notch. */
export const JOIST_HOLE_EDGE_MM = inchesInMm(2);
const JOIST_HOLE_SHARE = 1 / 3;
const JOIST_NOTCH_SHARE = 1 / 6;
const JOIST_END_NOTCH_SHARE = 1 / 4;

/** Largest hole in a joist of that depth: a third of it, and 2 in of wood over and under; 0 where no hole is allowed. */
export const joistHoleMm = (depthMm: number): number =>
  Math.max(0, Math.min(depthMm * JOIST_HOLE_SHARE, depthMm - 2 * JOIST_HOLE_EDGE_MM));

/** R502.8.1: deepest notch in a joist, outside the middle third of its span; deeper at its ends. */
export const joistNotchMm = (depthMm: number): { readonly outerMm: number; readonly endMm: number } => ({
  outerMm: depthMm * JOIST_NOTCH_SHARE,
  endMm: depthMm * JOIST_END_NOTCH_SHARE,
});

/** R602.6: a hole in a stud keeps 5/8 in from its edge. */
const STUD_HOLE_EDGE_MM = inchesInMm(0.625);
/**
 * R602.6: 40 % of the width in a wall that stands outside or carries (60 % there only in doubled studs, which this
 * does not count on), 60 % in one that does not.
 */
const STUD_HOLE_SHARE = { bearing: 0.4, other: 0.6 };
const STUD_NOTCH_SHARE = { bearing: 0.25, other: 0.4 };

const kindOf = (bearing: boolean): "bearing" | "other" => (bearing ? "bearing" : "other");

/** Largest hole in a stud of that width (a 2x4: 3 1/2 in). */
export const studHoleMm = (widthMm: number, bearing: boolean): number =>
  Math.max(0, Math.min(widthMm * STUD_HOLE_SHARE[kindOf(bearing)], widthMm - 2 * STUD_HOLE_EDGE_MM));

/** R602.6: deepest notch in a stud. */
export const studNotchMm = (widthMm: number, bearing: boolean): number =>
  widthMm * STUD_NOTCH_SHARE[kindOf(bearing)];

/** R602.6.1: a top plate that loses more than this share of its width is tied across with a steel strap. */
const PLATE_TIE_SHARE = 0.5;

export const plateNeedsTie = (widthMm: number, holeMm: number): boolean => holeMm > widthMm * PLATE_TIE_SHARE;

/** NEC 300.4(A)(1), (D): a hole nearer to the wood's edge than 1 1/4 in is covered by a steel plate of 1/16 in. */
const NAIL_PLATE_EDGE_MM = inchesInMm(1.25);

/** Whether a hole through the middle of a member needs plates against nails and screws. */
export const needsNailPlate = (acrossMm: number, holeMm: number): boolean =>
  (acrossMm - holeMm) / 2 < NAIL_PLATE_EDGE_MM - 1e-9;

/**
 * NEC Chapter 9, Table 1 (from memory): how much of a raceway's section its cables may fill, for one, two and more.
 * No code asks it of a bored hole; taken so that what passes can still be pulled.
 */
const FILL = { one: 0.53, two: 0.31, more: 0.4 };

/** Diameter of the hole that so many cables of one diameter pass with room to pull. */
export function bundleHoleMm(cables: number, cableMm: number): number {
  const fill = cables === 1 ? FILL.one : cables === 2 ? FILL.two : FILL.more;
  return cableMm * Math.sqrt(cables / fill);
}
