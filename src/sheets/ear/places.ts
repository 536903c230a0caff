import type { PagePoint, Window } from "../../drawing/drawing.js";
import { type LabelLine, label } from "../../drawing/label.js";
import { boxAbout, middlesAround } from "../../drawing/label-places.js";
import { circle, dot, filled, PEN } from "../../drawing/pen.js";
import { add, type SurfacePoint, scale, type Vector } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import type { Room, Seat } from "../../room/room.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import { figuresOf } from "../figures.js";
import { beside } from "../marking/beside.js";
import type { Piece, WordsWish } from "../marking/piece.js";
import type { View } from "../marking/view.js";
import type { Order } from "../sheet.js";

/** How points of the room come to lie on the drawing: from above, or from the side. */
export type Projected = (at: Vector) => SurfacePoint;

const MARK_MM = 1.5;
const WALL_MM = 1;
const SEAT_MM = 1.3;
const REACH_MM = [0.5, 2, 4, 8, 12];

const square = (at: PagePoint, halfMm: number): Window =>
  boxAbout(at, { widthMm: 2 * halfMm, heightMm: 2 * halfMm });

export interface Shown {
  readonly openings: readonly Opening[];
  readonly projected: Projected;
  /** What stands under an opening's id. */
  readonly under: (opening: Opening) => readonly string[];
}

/** A ring at each loudspeaker overhead and a square at each in a wall, with its id and what else is said of it. */
export function loudspeakersPiece({ openings, projected, under }: Shown, view: View): Piece {
  const places = openings.map((opening) => ({ opening, at: view.place(projected(markedAt(opening, view))) }));
  return {
    layer: "notes",
    rank: 0,
    items: places.map(({ opening, at }) =>
      opening.surface.kind === "ceiling"
        ? circle(at, MARK_MM, PEN.outline)
        : filled(square(at, WALL_MM), PEN.outline.ink),
    ),
    wishes: places.map(({ opening, at }) => {
      const small = under(opening).flatMap((words) => linesOf(words, view, "regular"));
      const named = (capMm: number) => label([{ words: opening.speaker.id, capMm, face: "bold" }, ...small]);
      const spot = { box: square(at, MARK_MM), reachMm: REACH_MM, next: "further" } as const;
      if (isCrowded(openings)) return closeBy(opening, spot.box, view);
      return beside(spot, [named(view.heights.idMm), named(view.heights.smallMm)], view);
    }),
    taken: places.map(({ at }) => square(at, MARK_MM)),
  };
}

/** More than this are no layout round one seat but many that share an area. Our own choice. */
const MOST = 32;

/** Whether lines to all and words at all would only hide each other. */
export const isCrowded = (openings: readonly Opening[]): boolean => openings.length > MOST;

/** The id alone, and only where nobody can take it for a neighbour's. */
function closeBy({ speaker }: Opening, box: Window, { heights }: View): WordsWish {
  const id = label([{ words: speaker.id, capMm: heights.smallMm, face: "bold" }]);
  return { ...id, middles: middlesAround(box, id, [0.3, 1.2]) };
}

/** One in a wall stands before it, so that the square does not reach into the wall's name. */
const markedAt = ({ position, surface }: Opening, { ratio }: View): Vector =>
  surface.kind === "ceiling" ? position : add(position, scale(surface.frame.n, WALL_MM * ratio));

/** Each language on a line of its own. */
const linesOf = (words: string, { heights }: View, face: LabelLine["face"]): LabelLine[] =>
  words.split(BETWEEN_LANGUAGES).map((each) => ({ words: each, capMm: heights.smallMm, face }));

const isAsHigh = (seat: Seat, reference: Seat): boolean => Math.abs(seat.ear.z - reference.ear.z) < 1;

/** True where more seats than the reference seat have their ear as high as it. */
export const sharesEar = ({ seats, reference }: Room): boolean =>
  seats.some((seat) => !seat.reference && isAsHigh(seat, reference));

/** Every seat with the height of its ear, unless that is the reference seat's, which stands in a ring and in bold. */
export function seatsPiece(order: Order, seats: readonly Seat[], projected: Projected, view: View): Piece {
  const { words, job } = order;
  const at = ({ ear }: Seat): PagePoint => view.place(projected(ear));
  return {
    layer: "notes",
    rank: 1,
    items: seats.flatMap((seat) => [
      dot(at(seat), SEAT_MM),
      ...(seat.reference ? [circle(at(seat), SEAT_MM + 0.9, PEN.thin)] : []),
    ]),
    wishes: seats.map((seat) => {
      const isSaid = seat.reference || !isAsHigh(seat, job.room.reference);
      const ear = isSaid ? [words.earPlane.ear(figuresOf(seat.ear.z, job.room.units).main)] : [];
      const face = seat.reference ? "bold" : "regular";
      const said = label([
        ...linesOf(seat.name, view, face),
        ...ear.flatMap((each) => linesOf(each, view, "regular")),
      ]);
      return beside(
        { box: square(at(seat), SEAT_MM + 1), reachMm: REACH_MM, next: "further" },
        [said, said],
        view,
      );
    }),
    taken: seats.map((seat) => square(at(seat), SEAT_MM + 1)),
  };
}
