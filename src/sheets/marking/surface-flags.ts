import type { PagePoint } from "../../drawing/drawing.js";
import { boxAbout, inTurn, type LabelWish, middlesOver } from "../../drawing/label-places.js";
import { point } from "../../drawing/pen.js";
import { type Flag, flagRow } from "./flags.js";
import type { Piece } from "./piece.js";
import type { View } from "./view.js";

/** Numbers of the findings about the surface as a whole, near its top left corner. */
export function surfaceFlagsPiece(flags: readonly Flag[], view: View): Piece {
  const own = flags.filter(({ finding }) => finding.speaker === null);
  const row = flagRow(own, view.heights.smallMm);
  const corner = point(view.box.x + row.widthMm / 2 + 1, view.box.y + row.heightMm / 2 + 1);
  const wish = (middles: readonly PagePoint[]): LabelWish => ({
    ...row,
    middles,
    draw: (middle) => row.draw(boxAbout(middle, row)),
  });
  const placed = inTurn(wish([corner]), () => wish(middlesOver(view.box, corner, 4)));
  return { layer: "notes", rank: 2, items: [], wishes: own.length === 0 ? [] : [placed] };
}
