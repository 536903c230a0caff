import type { Item, PagePoint } from "./drawing.js";
import { type LabelLine, label } from "./label.js";
import { type LabelWish, middlesAlong } from "./label-places.js";
import { line, outline, PEN, point } from "./pen.js";

/** A measured distance between two points: a line with a head at both ends and its figure somewhere on it (ISO 129-1). */
export interface Dimension {
  readonly items: readonly Item[];
  /** Its figure, which goes where the line is free. */
  readonly figure: LabelWish;
}

export function dimension(from: PagePoint, to: PagePoint, figure: LabelLine): Dimension {
  const words = label([figure]);
  return {
    items: [line(from, to, PEN.fine), head(to, from), head(from, to)],
    figure: { ...words, middles: middlesAlong(from, to) },
  };
}

/** Half the angle of a dimension's head: ISO 129-1 draws it of 15 to 90 degrees. */
const HALF_ANGLE = (10 * Math.PI) / 180;
const HEAD_MM = 2;

/** A filled head with its tip at `tip`, coming from `tail`; nothing where the two are one point. */
export function head(tail: PagePoint, tip: PagePoint): Item {
  const longMm = Math.hypot(tip.x - tail.x, tip.y - tail.y);
  const size = Math.min(HEAD_MM, longMm / 3);
  const along = longMm === 0 ? point(0, 0) : point((tip.x - tail.x) / longMm, (tip.y - tail.y) / longMm);
  const half = size * Math.tan(HALF_ANGLE);
  const base = point(tip.x - along.x * size, tip.y - along.y * size);
  const wings = [1, -1].map((side) => point(base.x - along.y * half * side, base.y + along.x * half * side));
  return outline([tip, ...wings], { fill: PEN.fine.ink });
}
