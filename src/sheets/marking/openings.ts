import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { type Label, type LabelLine, label } from "../../drawing/label.js";
import {
  boxAbout,
  insideFirst,
  type LabelWish,
  leader,
  middleOf,
  middlesAround,
  middlesOver,
} from "../../drawing/label-places.js";
import { arrow, circle, dashed, line, PEN, point, rectangle } from "../../drawing/pen.js";
import { wrapText } from "../../drawing/text.js";
import { grown } from "../../drawing/touches.js";
import { radians } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import type { Order } from "../sheet.js";
import { type Flag, flagAt, flagSize } from "./flags.js";
import type { Piece } from "./piece.js";
import { codesAgainst } from "./reasons.js";
import type { View } from "./view.js";

const WIDE_MM = 42;
const LABEL_MM = 28;
/** How far a centre's cross and an aim arrow reach beyond the opening's outline, in capitals of the sheet. */
const CROSS_BEYOND = 0.8;
const ARROW_BEYOND = 3;

/** Openings as true outlines: the cut line, the centre, the id, its flags; broken, struck out and said so where not to cut. */
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

interface Named {
  /** What the name stands beside, on the page. */
  readonly box: Window;
  readonly view: View;
}

/**
 * Id with the numbers of its findings; under it what forbids to cut, or that the place is not frozen. Wide beside the
 * opening, else narrow beside it, else anywhere with a line to it.
 */
export function nameOf(order: Order, opening: Opening, flags: readonly Flag[], named: Named): LabelWish {
  const own = flags.filter(({ finding }) => finding.speaker === opening.speaker.id);
  const form = (widthMm: number): Label =>
    nameLabel(order, opening, { flags: own, widthMm, view: named.view });
  const { box, view } = named;
  const near = (words: Label): LabelWish => ({
    ...words,
    draw: (middle) => [...leader(box, boxAbout(middle, words)), ...words.draw(middle)],
    middles: insideFirst(middlesAround(grown(box, 0.5), words, [1, 3, 6, 10]), words, view.box),
  });
  const narrow = near(form(LABEL_MM));
  const centre = middleOf(box);
  const anywhere = { ...narrow, middles: middlesOver(view.box, centre, 4) };
  return { ...near(form(WIDE_MM)), otherwise: { ...narrow, otherwise: anywhere } };
}

function nameLabel(
  order: Order,
  opening: Opening,
  { flags, widthMm, view }: { flags: readonly Flag[]; widthMm: number; view: View },
): Label {
  const { idMm, smallMm } = view.heights;
  const flagsMm = flags.reduce((sum, flag) => sum + flagSize(flag, smallMm).widthMm + 0.6, 0);
  const id = label([{ words: opening.speaker.id, capMm: idMm, face: "bold" }]);
  const below = label(linesBelow(order, opening, { capMm: smallMm, widthMm }));
  const headMm = Math.max(id.heightMm, flags.length === 0 ? 0 : smallMm * 2);
  const size = {
    widthMm: Math.max(id.widthMm + flagsMm, below.widthMm),
    heightMm: headMm + below.heightMm,
  };
  const draw = (middle: PagePoint): readonly Item[] => {
    const top = middle.y - size.heightMm / 2;
    const left = middle.x - (id.widthMm + flagsMm) / 2;
    return [
      ...(below.heightMm === 0 ? [] : below.draw(point(middle.x, top + headMm + below.heightMm / 2))),
      ...id.draw(point(left + id.widthMm / 2, top + headMm / 2)),
      ...flagRow(flags, point(left + id.widthMm + 0.6, top + headMm / 2), smallMm),
    ];
  };
  return { ...size, draw };
}

function flagRow(flags: readonly Flag[], start: PagePoint, capMm: number): Item[] {
  let x = start.x;
  return flags.flatMap((flag) => {
    const size = flagSize(flag, capMm);
    const items = flagAt(flag, point(x, start.y - size.heightMm / 2), capMm);
    x += size.widthMm + 0.6;
    return items;
  });
}

function linesBelow(
  order: Order,
  opening: Opening,
  { capMm, widthMm }: { capMm: number; widthMm: number },
): LabelLine[] {
  const { words } = order;
  const bold = (phrase: string): LabelLine[] =>
    phrase.split(BETWEEN_LANGUAGES).map((each) => ({ words: each, capMm, face: "bold" }));
  const regular = (phrase: string): LabelLine[] =>
    wrapText(phrase, { capMm, face: "regular", widthMm }).map((each) => ({
      words: each,
      capMm,
      face: "regular",
    }));
  return [
    ...(opening.mustNotCut ? bold(words.frame.doNotCut) : []),
    ...(opening.mustNotCut
      ? codesAgainst(order, opening).flatMap((code) => regular(words.marking.reason[code]))
      : []),
    ...(opening.placed === "best" ? regular(words.frame.computedNotFrozen) : []),
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
