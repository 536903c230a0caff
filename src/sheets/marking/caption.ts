import type { Item } from "../../drawing/drawing.js";
import { point } from "../../drawing/pen.js";
import { textBlock } from "../../drawing/text-block.js";
import type { ChainOf } from "./chains.js";
import type { Margins, View } from "./view.js";

/** Least width of the corner that a caption stands in. */
const LEAST_MM = 34;
const AIR_MM = 1.5;

/**
 * What the members' figures are, in the corner of the drawing beside their chain where no other chain reaches: below
 * a chain on the right, left of one at the top. The margins grow where the words need more.
 */
export function captionIn(
  { caption, chains }: { caption: string | null; chains: readonly ChainOf[] },
  view: View,
  { margins, overhangMm }: { margins: Margins; overhangMm: number },
): { readonly items: readonly Item[]; readonly margins: Margins } {
  const side = chains.find(({ side }) => side === "right" || side === "top")?.side;
  if (caption === null || side === undefined) return { items: [], margins };
  const { box, heights } = view;
  const air = overhangMm + AIR_MM;
  const corner = side === "right" ? "right" : "left";
  const wide = { ...margins, [corner]: Math.max(margins[corner], LEAST_MM + air) };
  const block = textBlock(caption, { x: 0, y: 0, widthMm: wide[corner] - air, capMm: heights.smallMm });
  const high = block.heightMm + air;
  const at =
    side === "right"
      ? point(box.x + box.widthMm + air, box.y + box.heightMm + air)
      : point(box.x - wide.left, box.y - air - block.heightMm);
  const [edge] = side === "right" ? (["bottom"] as const) : (["top"] as const);
  return {
    items: block.items.map((item) => moved(item, at)),
    margins: { ...wide, [edge]: Math.max(wide[edge], high) },
  };
}

/** Words of a block that was made at the page's corner. */
function moved(item: Item, { x, y }: { x: number; y: number }): Item {
  return item.kind === "text" ? { ...item, at: point(item.at.x + x, item.at.y + y) } : item;
}
