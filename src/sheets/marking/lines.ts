import { grey, type Stroke } from "../../drawing/drawing.js";
import { dashed, PEN } from "../../drawing/pen.js";

/** Line styles of a marking sheet, which say what a colour would: the drawing and its key use the same. */
export const LINES = {
  assumed: dashed(PEN.thin, 2.5, 1.2),
  keep: dashed(PEN.fine, 0.6, 0.9),
  behind: dashed(PEN.outline, 4, 1, 1, 1),
  /** ISO 128's line for the extreme positions of what moves: long dash, two dots (from memory). */
  clear: { ...PEN.fine, ink: grey(0.35), dashMm: [4.5, 0.8, 0.5, 0.8, 0.5, 0.8] },
  missing: { ...dashed(PEN.fine, 0.3, 2), ink: grey(0.35) },
  /** Pairs of short dashes. */
  strap: dashed(PEN.thin, 1.4, 0.6, 1.4, 2.2),
  joint: { ...dashed(PEN.fine, 6, 1.5, 0.4, 1.5), ink: grey(0.45) },
} as const satisfies Record<string, Stroke>;
