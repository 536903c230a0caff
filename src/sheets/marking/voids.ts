import { WHITE } from "../../drawing/drawing.js";
import { label } from "../../drawing/label.js";
import { middleOf, middlesOver } from "../../drawing/label-places.js";
import { outline, PEN } from "../../drawing/pen.js";
import { voidEdgesOn } from "../../listen/edges.js";
import type { Faces, Surface, Void } from "../../room/room.js";
import type { Order } from "../sheet.js";
import type { Piece, WordsWish } from "./piece.js";
import { boxOf, type View } from "./view.js";

/** What lies in the surface and is not of it, as a tray in a ceiling: empty, with its name. */
export function voidsPiece(order: Order, surface: Surface, faces: Faces, view: View): Piece {
  return {
    layer: "framing",
    rank: 3,
    items: surface.voids.map((each) =>
      outline(cornersOf(surface, each, faces).map(view.place), { stroke: PEN.outline, fill: WHITE }),
    ),
    wishes: surface.voids.map((each) => nameWish(order, each, view)),
  };
}

const cornersOf = (surface: Surface, each: Void, faces: Faces) =>
  voidEdgesOn({ ...surface, voids: [each] }, faces).map(({ from }) => from);

function nameWish({ words }: Order, { name, edges }: Void, view: View): WordsWish {
  const box = boxOf(edges.map(({ from }) => view.place(from)));
  const said = label([{ words: words.frame.wall(name), capMm: view.heights.wallMm, face: "bold" }]);
  return { ...said, middles: middlesOver(box, middleOf(box), 4), optional: true };
}
