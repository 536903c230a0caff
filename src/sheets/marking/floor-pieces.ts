import { head } from "../../drawing/dimension.js";
import type { Item, Window } from "../../drawing/drawing.js";
import { label } from "../../drawing/label.js";
import { boxAbout } from "../../drawing/label-places.js";
import { circle, dashed, dot, line, PEN, point } from "../../drawing/pen.js";
import type { Opening } from "../../job.js";
import type { Seat } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { beside } from "./beside.js";
import { below, type FloorPlan } from "./floor-plan.js";
import { nameOf } from "./opening-name.js";
import type { Piece, WordsWish } from "./piece.js";
import type { View } from "./view.js";

/** Size of a mark on the page; it has none on the floor. */
const MARK_RADIUS_MM = 2;
const SEAT_RADIUS_MM = 1.3;

/** A cross and a ring at the point of the floor below each overhead opening. */
export function marksPiece(order: Order, { openings }: FloorPlan, view: View): Piece {
  return {
    layer: "cut",
    rank: 0,
    items: openings.flatMap((opening) => markItems(opening, view)),
    wishes: openings.map((opening) => nameOf(order, opening, [], { box: markBox(opening, view), view })),
    taken: openings.map((opening) => markBox(opening, view)),
  };
}

const markBox = ({ position }: Opening, view: View) =>
  boxAbout(view.place(below(position)), { widthMm: 2 * MARK_RADIUS_MM, heightMm: 2 * MARK_RADIUS_MM });

function markItems({ position, speaker, mustNotCut }: Opening, view: View): Item[] {
  const { x, y } = view.place(below(position));
  const ring = circle(point(x, y), MARK_RADIUS_MM, mustNotCut ? dashed(PEN.outline, 1.2, 0.9) : PEN.outline, {
    role: "mark",
    speaker: speaker.id,
  });
  const arm = MARK_RADIUS_MM * 1.6;
  if (mustNotCut)
    return [
      ring,
      line(point(x - arm, y - arm), point(x + arm, y + arm), PEN.thin),
      line(point(x - arm, y + arm), point(x + arm, y - arm), PEN.thin),
    ];
  return [
    ring,
    line(point(x - arm, y), point(x + arm, y), PEN.fine),
    line(point(x, y - arm), point(x, y + arm), PEN.fine),
  ];
}

export function seatsPiece({ job }: Order, view: View): Piece {
  const { seats } = job.room;
  const box = ({ ear }: Seat) =>
    boxAbout(view.place(below(ear)), { widthMm: 2 * SEAT_RADIUS_MM, heightMm: 2 * SEAT_RADIUS_MM });
  return {
    layer: "notes",
    rank: 1,
    items: seats.map(({ ear }) => dot(view.place(below(ear)), SEAT_RADIUS_MM)),
    wishes: seats.map((seat) => seatName(seat, box(seat), view)),
    taken: seats.map(box),
  };
}

function seatName({ name }: Seat, box: Window, view: View): WordsWish {
  const words = label([{ words: name, capMm: view.heights.smallMm, face: "regular" }]);
  return beside({ box, reachMm: [0.5, 2, 4, 8], next: "further" }, [words, words], view);
}

/**
 * Under a flat ceiling an aim arrow is parallel to the line on the floor from the mark to the point below its target:
 * a broken line with a head at the target. An opening without an arrow has none.
 */
export function aimLinesPiece({ openings }: FloorPlan, view: View): Piece {
  const items = openings.flatMap(({ speaker, position, aim, surface }): Item[] => {
    const { target } = speaker;
    const isFlat = Math.hypot(surface.frame.n.x, surface.frame.n.y) < 1e-9;
    if (!isFlat || target.kind === "none" || (aim?.arrowDeg ?? null) === null) return [];
    const [from, to] = [view.place(below(position)), view.place(below(target.at))];
    return [line(from, to, dashed(PEN.fine, 3, 1.5)), head(from, to)];
  });
  return { layer: "aim", rank: 9, items };
}
