import type { Item } from "../../drawing/drawing.js";
import { label } from "../../drawing/label.js";
import { arrow, line, PEN, point } from "../../drawing/pen.js";
import { pointNameOf } from "../../findings/edge-name.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { pointAt, tapeLine } from "../../place/tapes.js";
import type { Framing, Room } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { facesAt } from "../tapes.js";
import type { Piece } from "./piece.js";
import type { SurfaceStage } from "./surface-stage.js";
import type { View } from "./view.js";

export type Known = Extract<Framing, { kind: "known" }>;

export const isAlongAxis = ({ direction }: Known): boolean =>
  Math.max(Math.abs(direction.u), Math.abs(direction.v)) > 1 - 1e-9;

/**
 * Where the figures of members at an angle begin: the corner as it stands on the faces that are touched, or the mark,
 * which stays where it was made. Null where they are measured from a wall.
 */
export function zeroPoint(room: Room, { surface, stage }: SurfaceStage): SurfacePoint | null {
  const { framing } = surface;
  if (framing.kind === "unknown") return null;
  const { from, zero } = framing.layout;
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
  const { framing } = at.surface;
  const zero = zeroPoint(job.room, at);
  if (framing.kind === "unknown" || zero === null || isAlongAxis(framing)) {
    return { layer: "dimensions", rank: 5, items: [] };
  }
  const { away } = framing.layout.zero;
  const { x, y } = view.place(zero);
  const along = (mm: number) => point(x + away.u * mm, y - away.v * mm);
  const cross: Item[] = [
    line(point(x - CROSS_MM, y), point(x + CROSS_MM, y)),
    line(point(x, y - CROSS_MM), point(x, y + CROSS_MM)),
  ];
  const said = label([{ words: "0", capMm: view.heights.smallMm, face: "bold" }]);
  return {
    layer: "dimensions",
    rank: 5,
    items: [...cross, ...arrow(along(0), along(ARROW_MM), PEN.thin)],
    wishes: [{ ...said, middles: [along(ARROW_MM + 3), along(ARROW_MM + 5)], optional: true }],
  };
}
