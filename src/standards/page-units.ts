/** PDF user units in an inch (ISO 32000-1, 8.3.2.3: the default unit is 1/72 in). */
export const PDF_UNITS_PER_INCH = 72;
/** CSS and SVG pixels in an inch (W3C CSS Values and Units Level 4, 6.2: 1 in = 96 px). */
export const CSS_PIXELS_PER_INCH = 96;
/** Longest page side in PDF units (ISO 32000-1, Annex C.2; dropped in ISO 32000-2, but readers still hold to it). */
export const MAX_PAGE_SIDE_PDF_UNITS = 14_400;
