import { type DrawnLater, stackLater, textLater } from "../../drawing/drawn-later.js";
import { PEN, rectangle } from "../../drawing/pen.js";
import { fitText, measureText } from "../../drawing/text.js";
import { type Block, LINE_PITCH } from "../../drawing/text-block.js";

/** One figure as it is read from a ladder: what it is, large, and in the other notations. */
export interface Datum {
  readonly label: string;
  readonly main: string;
  /** Null where there are none. */
  readonly others: string | null;
  /** Least cap height of the main figure where it is no length; 5 mm unless said. */
  readonly leastMm?: number;
}

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
}

/** Cap heights in mm. */
const MAIN_MM = { least: 5, most: 6 };
const SMALL_MM = 2.5;
const PAD_MM = 1.2;
/** From the foot of one line of a box to the head of the next. */
const CLOSE_MM = 1.5;
const LEAST_BOX_MM = 44;

/** Boxes of figures side by side, as many columns as their main figures allow, rows as high as they need. */
export function dataBoxes(data: readonly Datum[], place: Place): Block {
  const { heightMm, draw } = boxesLater(data, place);
  return { items: draw(), heightMm };
}

/** The same, only measured as yet. */
export function boxesLater(data: readonly Datum[], place: Place): DrawnLater {
  const columns = columnsFor(data, place.widthMm);
  const widthMm = place.widthMm / columns;
  const rows = Array.from({ length: Math.ceil(data.length / columns) }, (_, row) =>
    data.slice(row * columns, (row + 1) * columns),
  );
  return stackLater(
    place.y,
    rows.map((row) => (y: number) => boxRow(row, { ...place, y, widthMm })),
  );
}

/** Not more than the widest figure allows, and no more than share the boxes evenly among the rows. */
function columnsFor(data: readonly Datum[], widthMm: number): number {
  const widest = Math.max(...data.map((datum) => widthAtLeastMm(datum.main, datum)));
  const most = Math.max(1, Math.floor(widthMm / (widest + 2 * PAD_MM)));
  return Math.ceil(data.length / Math.ceil(data.length / most));
}

const widthAtLeastMm = (words: string, { leastMm = MAIN_MM.least }: Pick<Datum, "leastMm">): number =>
  measureText(words, { capMm: leastMm, face: "bold" }).widthMm;

/** Width of one column of boxes in which every figure keeps together; a pair of figures may stand on two lines. */
export function narrowestBoxMm(data: readonly Datum[]): number {
  const pieces = data.flatMap((datum) => datum.main.split(" ").map((piece) => widthAtLeastMm(piece, datum)));
  return Math.max(LEAST_BOX_MM, ...pieces) + 2 * PAD_MM + 0.1;
}

/** No box is narrower than its figure on one line, nor lower than its label and that figure. */
export const leastBoxMm = (data: readonly Datum[]): { widthMm: number; heightMm: number } => ({
  widthMm: Math.max(...data.map((datum) => widthAtLeastMm(datum.main, datum))) + 2 * PAD_MM + 0.1,
  heightMm: SMALL_MM + MAIN_MM.least + 2 * PAD_MM,
});

function boxRow(row: readonly Datum[], place: Place): DrawnLater {
  const lefts = row.map((_, index) => place.x + index * place.widthMm);
  const cells = row.map((datum, index) => dataCell(datum, { ...place, x: lefts[index] ?? place.x }));
  const heightMm = Math.max(...cells.map((cell) => cell.heightMm));
  return {
    heightMm,
    draw: () => [
      ...cells.flatMap(({ draw }) => draw()),
      ...lefts.map((x) => rectangle({ ...place, x, heightMm }, PEN.fine)),
    ],
  };
}

function dataCell(datum: Datum, box: Place): DrawnLater {
  const { label, main, others, leastMm = MAIN_MM.least } = datum;
  const place = { x: box.x + PAD_MM, widthMm: box.widthMm - 2 * PAD_MM };
  const head = closeBlock(label, { ...place, y: box.y + PAD_MM, capMm: SMALL_MM });
  const besideMm = others === null ? 0 : measureText(others, { capMm: SMALL_MM, face: "regular" }).widthMm;
  const isBeside = widthAtLeastMm(main, datum) + besideMm + 2 * PAD_MM <= place.widthMm;
  const mainMm = isBeside ? place.widthMm - besideMm - 2 * PAD_MM : place.widthMm;
  const capMm = fitText(main, {
    face: "bold",
    widthMm: mainMm,
    leastMm,
    mostMm: MAIN_MM.most,
  });
  const y = box.y + PAD_MM + head.heightMm;
  const figure = closeBlock(main, { ...place, widthMm: mainMm, y, capMm, face: "bold" });
  const small = smallFigures(others, {
    place,
    y: isBeside ? y + capMm - SMALL_MM : y + figure.heightMm,
    anchor: isBeside ? "end" : "start",
  });
  const heightMm = head.heightMm + figure.heightMm + (isBeside ? 0 : small.heightMm) + PAD_MM;
  return { heightMm, draw: () => [head, figure, small].flatMap(({ draw }) => draw()) };
}

function smallFigures(
  others: string | null,
  { place, y, anchor }: { place: { x: number; widthMm: number }; y: number; anchor: "start" | "end" },
): DrawnLater {
  if (others === null) return { heightMm: 0, draw: () => [] };
  return closeBlock(others, { ...place, y, capMm: SMALL_MM, anchor });
}

/** A text block without the air under its last line that blocks of several lines need. */
function closeBlock(words: string, place: Parameters<typeof textLater>[1]): DrawnLater {
  const { heightMm, draw } = textLater(words, place);
  return { heightMm: heightMm - place.capMm * (LINE_PITCH - 1) + CLOSE_MM, draw };
}
