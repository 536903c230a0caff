/** Heights of lettering on technical drawings, in mm of capitals (ISO 3098, from memory). */
export const LETTERING_HEIGHTS_MM: readonly number[] = [2.5, 3.5, 5, 7, 10, 14, 20];

/** Least height of lettering, in mm of capitals (ISO 3098, from memory). */
export const LEAST_LETTERING_MM = 2.5;

/** Widths of lines on technical drawings, in mm (ISO 128, from memory); a wide line is twice a narrow one. */
export const LINE_WIDTHS_MM: readonly number[] = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];
