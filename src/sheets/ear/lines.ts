import { grey, type Stroke } from "../../drawing/drawing.js";
import { dashed, PEN } from "../../drawing/pen.js";

/** Line styles of the drawings of what the seats hear; the drawings and their key use the same. */
export const LINES = {
  direction: PEN.fine,
  overhead: PEN.thin,
  wall: dashed(PEN.thin, 3, 1.4),
  axis: dashed(PEN.fine, 6, 1.2, 0.8, 1.2),
  earPlane: dashed(PEN.fine, 1.2, 1.2),
} as const satisfies Record<string, Stroke>;

/** Of the windows that the layout allows: light, so that lines and words stand on it. */
export const WINDOW_FILL = grey(0.86);
