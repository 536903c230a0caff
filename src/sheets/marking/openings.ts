import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { boxAbout } from "../../drawing/label-places.js";
import { arrow, circle, dashed, line, PEN, point, rectangle } from "../../drawing/pen.js";
import { grown } from "../../drawing/touches.js";
import { radians } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import type { Order } from "../sheet.js";
import type { Flag } from "./flags.js";
import { nameOf } from "./opening-name.js";
import type { Piece } from "./piece.js";
import type { View } from "./view.js";

/** How far a centre's cross and an aim arrow reach beyond the opening's outline, in capitals of the sheet. */
const CROSS_BEYOND = 0.8;
const ARROW_BEYOND = 3;

/** Openings as true outlines: the cut line, the centre, the name; broken, struck out and said so where not to cut. */
export function openingsPiece(
  order: Order,
  openings: readonly Opening[],
  flags: readonly Flag[],
  view: View,
): Piece {
  return {
    layer: "cut",
    rank: 1,
    items: openings.flatMap((opening) => [
      cutLine(opening, view),
      ...(opening.mustNotCut ? struckOut(opening, view) : centreCross(opening, view)),
    ]),
    wishes: openings.map((opening) =>
      nameOf(order, opening, flags, { box: openingBox(opening, view), view }),
    ),
    taken: openings.map((opening) => openingBox(opening, view)),
  };
}

/** The opening's own box on the page. */
export function openingBox({ centre, speaker }: Opening, view: View): Window {
  const { opening } = speaker;
  const [widthMm, heightMm] =
    opening.kind === "round" ? [opening.diameterMm, opening.diameterMm] : [opening.widthMm, opening.heightMm];
  return boxAbout(view.place(centre), { widthMm: view.shrunk(widthMm), heightMm: view.shrunk(heightMm) });
}

function cutLine(opening: Opening, view: View): Item {
  const { speaker, centre, mustNotCut } = opening;
  const stroke = mustNotCut ? dashed(PEN.cut, 1.6, 1.2) : PEN.cut;
  const mark = { role: "cut", speaker: speaker.id } as const;
  return speaker.opening.kind === "round"
    ? circle(view.place(centre), view.shrunk(speaker.opening.diameterMm / 2), stroke, mark)
    : rectangle(openingBox(opening, view), stroke, mark);
}

function centreCross(opening: Opening, view: View): Item[] {
  const { x, y, widthMm, heightMm } = grown(openingBox(opening, view), CROSS_BEYOND * view.heights.smallMm);
  const centre = view.place(opening.centre);
  return [
    line(point(x, centre.y), point(x + widthMm, centre.y), PEN.fine),
    line(point(centre.x, y), point(centre.x, y + heightMm), PEN.fine),
  ];
}

function struckOut(opening: Opening, view: View): Item[] {
  const { x, y, widthMm, heightMm } = grown(openingBox(opening, view), 1);
  return [
    line(point(x, y), point(x + widthMm, y + heightMm), PEN.outline),
    line(point(x, y + heightMm), point(x + widthMm, y), PEN.outline),
  ];
}

/** Aim arrows: each a line from the opening's centre, its tip clear of the outline. */
export function aimPiece(openings: readonly Opening[], view: View): Piece {
  const aimed = openings.flatMap((opening) => {
    const deg = opening.aim?.arrowDeg ?? null;
    return deg === null ? [] : [{ opening, ...arrowOf(opening, deg, view) }];
  });
  return {
    layer: "aim",
    rank: 0,
    items: aimed.flatMap(({ opening, tail, tip }) =>
      arrow(tail, tip, PEN.outline, { role: "aim", speaker: opening.speaker.id }),
    ),
    taken: aimed.flatMap(({ tail, tip }) => alongLine(tail, tip)),
  };
}

/** Anticlockwise from v, which is up the page. */
function arrowOf(
  { centre, speaker }: Opening,
  arrowDeg: number,
  view: View,
): { tail: PagePoint; tip: PagePoint } {
  const { opening } = speaker;
  const reachMm =
    opening.kind === "round" ? opening.diameterMm / 2 : Math.hypot(opening.widthMm, opening.heightMm) / 2;
  const longMm = view.shrunk(reachMm) + ARROW_BEYOND * view.heights.smallMm;
  const tail = view.place(centre);
  const turn = radians(arrowDeg);
  return { tail, tip: point(tail.x - Math.sin(turn) * longMm, tail.y - Math.cos(turn) * longMm) };
}

/** Small boxes along a line, for words to keep off. */
function alongLine(from: PagePoint, to: PagePoint): Window[] {
  return [0.4, 0.6, 0.8, 1].map((part) =>
    boxAbout(point(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part), {
      widthMm: 2.5,
      heightMm: 2.5,
    }),
  );
}
