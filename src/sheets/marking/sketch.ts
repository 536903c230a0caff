import type { Item, PagePoint, Text, Window } from "../../drawing/drawing.js";
import { layer, outline, PEN, point } from "../../drawing/pen.js";
import { textBox } from "../../drawing/text.js";
import { nameWishes } from "./edge-names.js";
import { drawPieces, type Piece } from "./piece.js";
import { type Surround, type Surroundings, surround } from "./surround.js";
import type { Scaled, View } from "./view.js";

/** A drawing to mark by, before it has a scale. */
export interface Sketch extends Surround {
  /** What lies inside the outline; the earlier lies under the later. */
  readonly inside: (view: View) => readonly Piece[];
}

export interface Drawn {
  readonly items: readonly Item[];
  /** Words that found no place: what they say stands in the table. */
  readonly leftOut: number;
  /** Figures that a chain had no room for. */
  readonly dropped: number;
}

/** What a sketch takes on the page with its chains and names. */
export function sketchSize(sketch: Sketch, scaled: Scaled): { widthMm: number; heightMm: number } {
  const { widthMm, heightMm } = wholeBox(surround(sketch, scaled, point(0, 0)));
  return { widthMm, heightMm };
}

function wholeBox({ view, margins }: Surroundings): Window {
  return {
    x: view.box.x - margins.left,
    y: view.box.y - margins.top,
    widthMm: margins.left + view.box.widthMm + margins.right,
    heightMm: margins.top + view.box.heightMm + margins.bottom,
  };
}

/** The sketch at a scale, its top left corner at `corner`. No words in it touch others. */
export function drawSketch(sketch: Sketch, scaled: Scaled, corner: PagePoint): Drawn {
  const { margins } = surround(sketch, scaled, corner);
  const around = surround(sketch, scaled, point(corner.x + margins.left, corner.y + margins.top));
  const names: Piece = { layer: "notes", items: [], wishes: nameWishes(sketch.edges, around.view), rank: 0 };
  const drawn = drawPieces([names, ...sketch.inside(around.view)], {
    taken: textBoxes(around.items),
    bounds: wholeBox(around),
  });
  const items = [
    outline(sketch.outline.map(around.view.place), { stroke: PEN.outline }),
    layer("dimensions", around.items),
    ...drawn.items,
  ];
  return { items, leftOut: drawn.leftOut, dropped: around.dropped };
}

const textBoxes = (items: readonly Item[]): Window[] =>
  items.filter((item): item is Text => item.kind === "text").map(textBox);
