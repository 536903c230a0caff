/*
 * Straight ceiling loudspeakers that fill an area, spaced by the circles that they cover on the ear plane. Formulas of
 * the trade's handbooks and examinations (read in secondary texts); the shares of the diameter are plane geometry.
 */

export const PATTERNS = ["square", "hexagon"] as const;
export type Pattern = (typeof PATTERNS)[number];

/**
 * How far the circles overlap: they touch; no point lies outside all of them (between four of a square or three of a
 * hexagon); or the edge of each reaches the middle of the next.
 */
export const OVERLAPS = ["edge-to-edge", "no-gap", "double"] as const;
export type Overlap = (typeof OVERLAPS)[number];

/**
 * Diameter of the circle on the ear plane inside which a loudspeaker is within 6 dB of its axis, in mm:
 * D = 2 (H - h) tan(angle / 2). Published worked example: 2.8 m, ears at 1.5 m, 90 degrees: 2.600 m.
 */
export const coverageDiameterMm = (dropMm: number, coverageDeg: number): number =>
  2 * dropMm * Math.tan((coverageDeg / 2) * (Math.PI / 180));

/** Centre to centre along a row, as a share of the diameter. */
const SPACING_SHARES: Readonly<Record<Pattern, Readonly<Record<Overlap, number>>>> = {
  square: { "edge-to-edge": 1, "no-gap": Math.SQRT1_2, double: 1 / 2 },
  hexagon: { "edge-to-edge": 1, "no-gap": Math.sqrt(3) / 2, double: 1 / 2 },
};

/** Spacing in mm along a row for loudspeakers whose circles have this diameter. */
export const spacingMm = (pattern: Pattern, overlap: Overlap, diameterMm: number): number =>
  SPACING_SHARES[pattern][overlap] * diameterMm;

/** From row to row, as a share of the spacing along a row; in a hexagon alternate rows stand half a spacing aside. */
export const ROW_SHARE: Readonly<Record<Pattern, number>> = { square: 1, hexagon: Math.sqrt(3) / 2 };

/** What is usually asked of an even level: 3 dB either side of its mean. Common practice, no source. */
export const EVEN_WITHIN_DB = 3;
