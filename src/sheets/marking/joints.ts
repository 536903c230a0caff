import { line } from "../../drawing/pen.js";
import type { Surface } from "../../room/room.js";
import { LINES } from "./lines.js";
import type { Piece } from "./piece.js";
import type { View } from "./view.js";

/** Where sheets of board meet: faint, since nobody cuts by them. */
export function jointsPiece({ joints }: Surface, view: View): Piece {
  return {
    layer: "framing",
    rank: 9,
    items: joints.map(({ from, to }) => line(view.place(from), view.place(to), LINES.joint)),
  };
}
