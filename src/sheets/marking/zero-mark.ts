import type { Item, PagePoint } from "../../drawing/drawing.js";
import { label } from "../../drawing/label.js";
import { arrow, line, PEN, point } from "../../drawing/pen.js";
import { pointNameOf } from "../../findings/edge-name.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { pointAt, tapeLine } from "../../place/tapes.js";
import type { Layout, Room } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { facesAt } from "../tapes.js";
import type { Piece, WordsWish } from "./piece.js";
import { isAlongAxis, rowsOf } from "./rows.js";
import type { SurfaceStage } from "./surface-stage.js";
import type { View } from "./view.js";

/**
 * Where the figures of members at an angle begin: the corner as it stands on the faces that are touched, or the mark,
 * which stays where it was made. Null where they are measured from a wall.
 */
export function zeroPoint(
  room: Room,
  { surface, stage }: SurfaceStage,
  { from, zero }: Layout,
): SurfacePoint | null {
  const name = pointNameOf(from);
  if (name === null || !name.isCorner) return name === null ? null : zero.at;
  const [first, second] = name.walls;
  const faces = facesAt(stage);
  return pointAt([tapeLine(room, surface, first, faces), tapeLine(room, surface, second, faces)], [0, 0]);
}

const ARROW_MM = 9;
const CROSS_MM = 1.5;

/** A cross where they begin, and an arrow square to the members, the way that the tape is held. */
export function zeroPiece({ job }: Order, at: SurfaceStage, view: View): Piece {
  const marks = rowsOf(at.surface).flatMap((row) => {
    const zero = isAlongAxis(row) ? null : zeroPoint(job.room, at, row.layout);
    return zero === null ? [] : [zeroMark(view.place(zero), row.layout.zero.away, view)];
  });
  return {
    layer: "dimensions",
    rank: 5,
    items: marks.flatMap(({ items }) => items),
    wishes: marks.map(({ wish }) => wish),
  };
}

function zeroMark(
  { x, y }: PagePoint,
  away: SurfacePoint,
  { heights }: View,
): { readonly items: readonly Item[]; readonly wish: WordsWish } {
  const along = (mm: number): PagePoint => point(x + away.u * mm, y - away.v * mm);
  const said = label([{ words: "0", capMm: heights.smallMm, face: "bold" }]);
  return {
    items: [
      line(point(x - CROSS_MM, y), point(x + CROSS_MM, y)),
      line(point(x, y - CROSS_MM), point(x, y + CROSS_MM)),
      ...arrow(along(0), along(ARROW_MM), PEN.thin),
    ],
    wish: { ...said, middles: [along(ARROW_MM + 3), along(ARROW_MM + 5)], optional: true },
  };
}
