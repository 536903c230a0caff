import type { Item, PagePoint } from "../../drawing/drawing.js";
import type { Side } from "../../drawing/running-chain.js";
import type { Polygon } from "../../geometry/shape.js";
import { captionIn } from "./caption.js";
import { type ChainOf, chainIn, extensions } from "./chains.js";
import { drawNames, type NamedEdge, nameStrips, namesOn } from "./edge-names.js";
import { type Margins, type Scaled, type View, viewOf } from "./view.js";

/** An outline and what stands around it, in mm of the surface or plan, before it has a scale. */
export interface Surround {
  /** On the faces that the tape touches. */
  readonly outline: Polygon;
  /** Points that the drawing shows too, where they may lie outside the outline. */
  readonly beyond?: Polygon;
  readonly edges: readonly NamedEdge[];
  readonly chains: readonly ChainOf[];
  /** What the figures of the members' chain are; null without such a chain. */
  readonly caption: string | null;
}

/** What stands around an outline: names of its edges, running dimensions, and the room that they take. */
export interface Surroundings {
  readonly view: View;
  readonly margins: Margins;
  readonly draw: () => readonly Item[];
  /** Figures that the chains had no room for. */
  readonly dropped: number;
}

const BETWEEN_MM = 1.5;
const SIDES: readonly Side[] = ["left", "right", "top", "bottom"];

/** The surroundings of an outline whose box has its top left corner at `corner`. */
export function surround(sketch: Surround, { ratio, heights }: Scaled, corner: PagePoint): Surroundings {
  const view = viewOf([...sketch.outline, ...(sketch.beyond ?? [])], { ratio, heights, corner });
  const names = namesOn(sketch.edges, view);
  const strips = nameStrips(names);
  const overhangMm = Math.min(...SIDES.map((side) => strips[side]));
  const chains = sketch.chains.map((of) => ({ of, chain: chainIn(of, view, overhangMm) }));
  const depthOf = (side: Side): number => {
    const depths = chains.filter(({ of }) => of.side === side).map(({ chain }) => chain.depthMm);
    return strips[side] + (depths.length === 0 ? 0 : BETWEEN_MM + Math.max(...depths));
  };
  const margins = perSide(depthOf);
  const caption = captionIn(sketch, view, { margins, overhangMm });
  const lineMm = linesOf(view, strips);
  return {
    view,
    margins: caption.margins,
    dropped: chains.reduce((sum, { chain }) => sum + chain.dropped, 0),
    draw: () => [
      ...chains.flatMap(({ of }) => extensions(of, view, lineMm[of.side])),
      ...chains.flatMap(({ chain, of }) => chain.draw(lineMm[of.side])),
      ...drawNames(names, view, strips),
      ...caption.items,
    ],
  };
}

const perSide = (measure: (side: Side) => number): Margins => ({
  left: measure("left"),
  right: measure("right"),
  top: measure("top"),
  bottom: measure("bottom"),
});

/** Where the chain of each side has its line: beyond the names. */
function linesOf({ box }: View, strips: Margins): Margins {
  return {
    left: box.x - strips.left - BETWEEN_MM,
    right: box.x + box.widthMm + strips.right + BETWEEN_MM,
    top: box.y - strips.top - BETWEEN_MM,
    bottom: box.y + box.heightMm + strips.bottom + BETWEEN_MM,
  };
}
