import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { layer, outline, PEN, point } from "../../drawing/pen.js";
import { textBoxes } from "../../drawing/shown.js";
import { nameWishes } from "./edge-names.js";
import { drawPieces, type Piece } from "./piece.js";
import { type Surround, type Surroundings, surround } from "./surround.js";
import { extentOf, type Scaled, type View } from "./view.js";

/** A drawing to mark by, before it has a scale. */
export interface Sketch extends Surround {
  /** What lies inside the outline; the earlier lies under the later. */
  readonly inside: (view: View) => readonly Piece[];
}

interface Drawn {
  readonly items: readonly Item[];
  /** Words that found no place: what they say stands in the table. */
  readonly leftOut: number;
}

/** What its outline alone takes at a ratio, one to so many. */
export function outlineSize(
  { outline, beyond = [] }: Sketch,
  ratio: number,
): { widthMm: number; heightMm: number } {
  const { widthMm, heightMm } = extentOf([...outline, ...beyond]);
  return { widthMm: widthMm / ratio, heightMm: heightMm / ratio };
}

/** What a sketch takes on the page with its chains and names, and how many figures its chains have no room for. */
export interface SketchSize {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dropped: number;
}

/** Known without drawing anything. */
export function sketchSize(sketch: Sketch, scaled: Scaled): SketchSize {
  const around = surround(sketch, scaled, point(0, 0));
  const { widthMm, heightMm } = wholeBox(around);
  return { widthMm, heightMm, dropped: around.dropped };
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
  const chains = around.draw();
  const names: Piece = { layer: "notes", items: [], wishes: nameWishes(sketch.edges, around.view), rank: 0 };
  const drawn = drawPieces([names, ...sketch.inside(around.view)], {
    taken: textBoxes(chains),
    bounds: wholeBox(around),
  });
  const items = [
    outline(sketch.outline.map(around.view.place), { stroke: PEN.outline }),
    layer("dimensions", chains),
    ...drawn.items,
  ];
  return { items, leftOut: drawn.leftOut };
}
