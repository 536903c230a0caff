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
import { point } from "../../drawing/pen.js";
import { wrapText } from "../../drawing/text.js";
import { grown } from "../../drawing/touches.js";
import type { Opening } from "../../job.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import type { Order } from "../sheet.js";
import { type Flag, flagRow } from "./flags.js";
import { codesAgainst } from "./reasons.js";
import type { View } from "./view.js";

/** Widths that the words under an id are wrapped into: the wider where there is room. */
const WIDE_MM = 42;
const LABEL_MM = 28;

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
  const row = flagRow(flags, smallMm);
  const id = label([{ words: opening.speaker.id, capMm: idMm, face: "bold" }]);
  const below = label(linesBelow(order, opening, { capMm: smallMm, widthMm }));
  const headMm = Math.max(id.heightMm, row.heightMm);
  const size = {
    widthMm: Math.max(id.widthMm + row.widthMm, below.widthMm),
    heightMm: headMm + below.heightMm,
  };
  const draw = (middle: PagePoint): readonly Item[] => {
    const top = middle.y - size.heightMm / 2;
    const left = middle.x - (id.widthMm + row.widthMm) / 2;
    return [
      ...(below.heightMm === 0 ? [] : below.draw(point(middle.x, top + headMm + below.heightMm / 2))),
      ...id.draw(point(left + id.widthMm / 2, top + headMm / 2)),
      ...row.draw(point(left + id.widthMm, top + (headMm - row.heightMm) / 2)),
    ];
  };
  return { ...size, draw };
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
