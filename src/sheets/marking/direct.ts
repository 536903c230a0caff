import { dimension } from "../../drawing/dimension.js";
import { middlesAlong } from "../../drawing/label-places.js";
import { inner, minus, plus, times } from "../../geometry/surface-point.js";
import type { Opening } from "../../job.js";
import { inward } from "../../place/run.js";
import type { Edge, Tape } from "../../room/room.js";
import { figuresOf } from "../figures.js";
import type { Order } from "../sheet.js";
import { tapesOf } from "../tapes.js";
import type { Piece, WordsWish } from "./sketch.js";
import type { SurfaceStage } from "./surface-stage.js";
import type { View } from "./view.js";

/**
 * The governing tapes of each opening as they are held: from the face that the tape hooks on to the centre. First those
 * that no running chain shows, because they hook on the opposite wall.
 */
export function directPiece(order: Order, stage: SurfaceStage, view: View): Piece {
  const tapes = stage.openings
    .filter(({ mustNotCut }) => !mustNotCut)
    .flatMap((opening) =>
      tapesOf(order.job.room, opening, stage.stage).governing.map((tape) => ({ opening, tape })),
    );
  const inChain = ({ tape }: { tape: Tape }): boolean =>
    [stage.zero.u, stage.zero.v].some((edge) => edge?.along === tape.from);
  const ranked = [...tapes.filter((each) => !inChain(each)), ...tapes.filter(inChain)];
  return {
    layer: "dimensions",
    rank: 3,
    items: [],
    wishes: ranked.flatMap(({ opening, tape }) => tapeWish(order, stage, { opening, tape }, view)),
  };
}

function tapeWish(
  order: Order,
  { edges }: SurfaceStage,
  { opening, tape }: { opening: Opening; tape: Tape },
  view: View,
): WordsWish[] {
  const edge = edges.find(({ along }) => along === tape.from);
  if (edge === undefined) return [];
  const [from, to] = [view.place(footOn(edge, opening)), view.place(opening.centre)];
  const { items, figure } = dimension(from, to, {
    words: figuresOf(tape.mm, order.job.room.units).main,
    capMm: view.heights.smallMm,
    face: "bold",
  });
  const draw: WordsWish["draw"] = (middle) => [...items, ...figure.draw(middle)];
  return [{ ...figure, draw, middles: middlesAlong(from, to), optional: true }];
}

/** Where a tape from the edge to the opening's centre touches it. */
function footOn(edge: Edge, { centre }: Opening) {
  const into = inward(edge);
  return plus(centre, times(into, -inner(into, minus(centre, edge.from))));
}
