import { dimension } from "../../drawing/dimension.js";
import type { PagePoint } from "../../drawing/drawing.js";
import { middlesAlong } from "../../drawing/label-places.js";
import { line } from "../../drawing/pen.js";
import { touches } from "../../drawing/touches.js";
import type { Opening } from "../../job.js";
import type { Tape } from "../../room/room.js";
import { figuresOf } from "../figures.js";
import type { Order } from "../sheet.js";
import { tapesOf } from "../tapes.js";
import { openingBox } from "./openings.js";
import type { Piece, WordsWish } from "./piece.js";
import type { SurfaceStage } from "./surface-stage.js";
import type { View } from "./view.js";

/** A governing tape as it is held over the page, from the face that it hooks on to the centre. */
interface Held {
  readonly opening: Opening;
  readonly tape: Tape;
  readonly from: PagePoint;
  readonly to: PagePoint;
}

/**
 * The governing tapes of each opening that is to be cut. First those that no running chain shows, because they hook on
 * the opposite wall; of the others only those that pass no other opening, where nobody can take one figure for another.
 */
export function directPiece(order: Order, at: SurfaceStage, view: View): Piece {
  const held = at.openings
    .filter(({ mustNotCut }) => !mustNotCut)
    .flatMap((opening) => heldOver(order, at, opening, view));
  const inChain = ({ tape }: Held): boolean =>
    [at.zero.u, at.zero.v].some((edge) => edge?.along === tape.from);
  const passesNone = ({ opening, from, to }: Held): boolean =>
    at.openings.every((other) => other === opening || !touches(line(from, to), openingBox(other, view)));
  const ranked = [
    ...held.filter((each) => !inChain(each)),
    ...held.filter((each) => inChain(each) && passesNone(each)),
  ];
  return { layer: "dimensions", rank: 3, items: [], wishes: ranked.map((each) => wishOf(order, each, view)) };
}

function heldOver(order: Order, { stage }: SurfaceStage, opening: Opening, view: View): Held[] {
  return tapesOf(order.job.room, opening, stage).governing.map((tape) => ({
    opening,
    tape,
    from: view.place(tape.foot),
    to: view.place(opening.centre),
  }));
}

function wishOf({ job }: Order, { tape, from, to }: Held, { heights }: View): WordsWish {
  const words = figuresOf(tape.mm, job.room.units).main;
  const { items, figure } = dimension(from, to, { words, capMm: heights.smallMm, face: "bold" });
  const draw: WordsWish["draw"] = (middle) => [...items, ...figure.draw(middle)];
  return { ...figure, draw, middles: middlesAlong(from, to), optional: true };
}
