import type { Face, Item } from "../../drawing/drawing.js";
import { dashed, line, PEN, point } from "../../drawing/pen.js";
import { type Chain, type RunningMark, runningChain, type Side } from "../../drawing/running-chain.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { View } from "./view.js";

/** A mark of a running chain where it belongs on the surface. */
export interface ChainMark {
  readonly at: SurfacePoint;
  readonly lines: readonly string[];
  readonly face: Face;
  readonly kind: "zero" | "mark";
}

export interface ChainOf {
  readonly side: Side;
  readonly marks: readonly ChainMark[];
  /** Points that a thin line joins to the chain. */
  readonly extended: readonly SurfacePoint[];
  /** Length of a box to write the found figure in; 0 for none. */
  readonly writeMm: number;
}

const isVertical = (side: Side): boolean => side === "left" || side === "right";

/** A chain at a scale; its figures may run over the ends of its edge by `overhangMm`. */
export function chainIn({ side, marks, writeMm }: ChainOf, view: View, overhangMm: number): Chain {
  const { x, y, widthMm, heightMm } = view.box;
  const [start, long] = isVertical(side) ? [y, heightMm] : [x, widthMm];
  return runningChain({
    side,
    marks: marks.map((mark) => runningMark(mark, side, view)),
    fromMm: start - overhangMm,
    lengthMm: long + 2 * overhangMm,
    capMm: view.heights.smallMm,
    writeMm,
  });
}

function runningMark({ at, lines, face, kind }: ChainMark, side: Side, view: View): RunningMark {
  const place = view.place(at);
  return { atMm: isVertical(side) ? place.y : place.x, lines, face, kind };
}

/** Thin lines from what is dimensioned to the chain's line. */
export function extensions({ side, extended }: ChainOf, view: View, lineMm: number): Item[] {
  return extended.map((at) => {
    const from = view.place(at);
    const to = isVertical(side) ? point(lineMm, from.y) : point(from.x, lineMm);
    return line(from, to, dashed(PEN.fine, 1.2, 1.2));
  });
}
