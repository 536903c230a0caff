import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { type Label, type LabelLine, label } from "../../drawing/label.js";
import { type LabelWish, middleOf } from "../../drawing/label-places.js";
import { point } from "../../drawing/pen.js";
import { wrapText } from "../../drawing/text.js";
import type { Opening } from "../../job.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import type { Order } from "../sheet.js";
import { beside } from "./beside.js";
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

/** Id with the numbers of its findings; under it what forbids to cut. */
export function nameOf(
  order: Order,
  opening: Opening,
  flags: readonly Flag[],
  { box, view }: Named,
): LabelWish {
  const own = flags.filter(({ finding }) => finding.speaker === opening.speaker.id);
  const { idMm, smallMm } = view.heights;
  const form = (widthMm: number, capMm: number): Label =>
    nameLabel(order, opening, { flags: own, widthMm, idMm: capMm, smallMm, box });
  const spot = { box, reachMm: [1.5, 3.5, 6.5, 10.5], next: "outside" } as const;
  return beside(spot, [form(WIDE_MM, idMm), form(LABEL_MM, smallMm)], view);
}

interface Letters {
  readonly flags: readonly Flag[];
  readonly widthMm: number;
  readonly idMm: number;
  readonly smallMm: number;
  readonly box: Window;
}

/** The id stands on the side of its words that is nearest to the opening: another's may lie on the other side of them. */
function nameLabel(order: Order, opening: Opening, letters: Letters): Label {
  const { flags, widthMm, idMm, smallMm, box } = letters;
  const row = flagRow(flags, smallMm);
  const id = label([{ words: opening.speaker.id, capMm: idMm, face: "bold" }]);
  const below = label(linesBelow(order, opening, { capMm: smallMm, widthMm }));
  const headMm = Math.max(id.heightMm, row.heightMm);
  const size = {
    widthMm: Math.max(id.widthMm + row.widthMm, below.widthMm),
    heightMm: headMm + below.heightMm,
  };
  const rowMm = id.widthMm + row.widthMm;
  const draw = (middle: PagePoint): readonly Item[] => {
    const top = middle.y - size.heightMm / 2;
    const isAbove = middle.y + size.heightMm / 2 <= box.y;
    const headTop = isAbove ? top + below.heightMm : top;
    const belowTop = isAbove ? top : top + headMm;
    const asideMm = (size.widthMm - rowMm) / 2;
    const toward = Math.min(Math.max(middleOf(box).x, middle.x - asideMm), middle.x + asideMm);
    // The numbers of its findings stand behind the id, seen from the opening.
    const isLeft = toward > middle.x;
    const idX = toward + (isLeft ? row.widthMm : -row.widthMm) / 2;
    const rowX = toward - (isLeft ? rowMm : rowMm - 2 * id.widthMm) / 2;
    return [
      ...(below.heightMm === 0 ? [] : below.draw(point(middle.x, belowTop + below.heightMm / 2))),
      ...id.draw(point(idX, headTop + headMm / 2)),
      ...row.draw(point(rowX, headTop + (headMm - row.heightMm) / 2)),
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
  ];
}
