import type { Item } from "../../drawing/drawing.js";
import { type DrawnLater, stackLater } from "../../drawing/drawn-later.js";
import { PEN, rectangle } from "../../drawing/pen.js";
import { type Column, fitText, measureText, wrapText } from "../../drawing/text.js";
import { type Block, LINE_PITCH, textBlock } from "../../drawing/text-block.js";

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
  const columns = columnsFor(data.length, place.widthMm / widestMm(data));
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
function columnsFor(count: number, boxesAcross: number): number {
  const most = Math.max(1, Math.floor(boxesAcross));
  return Math.ceil(count / Math.ceil(count / most));
}

/** What the widest figure takes on one line, and the air in its box. */
const widestMm = (data: readonly Datum[]): number =>
  Math.max(...data.map((datum) => widthAtLeastMm(datum.main, datum))) + 2 * PAD_MM;

const widthAtLeastMm = (words: string, { leastMm = MAIN_MM.least }: Pick<Datum, "leastMm">): number =>
  measureText(words, { capMm: leastMm, face: "bold" }).widthMm;

/** Width of one column of boxes in which every figure keeps together; a pair of figures may stand on two lines. */
export function narrowestBoxMm(data: readonly Datum[]): number {
  const pieces = data.flatMap((datum) => datum.main.split(" ").map((piece) => widthAtLeastMm(piece, datum)));
  return Math.max(LEAST_BOX_MM, ...pieces) + 2 * PAD_MM + 0.1;
}

/** What boxes take at least, known without measuring their labels and other notations. */
export interface LeastBoxes {
  /** One column of them; wider by 0.1 mm than the figures need, so that nothing hangs on how the last digit is rounded. */
  readonly columnMm: number;
  /** All of them in a width: as many rows as there will be, of a line of a label and one of a figure, less 0.1 mm each. */
  readonly heightMm: (widthMm: number) => number;
}

export function leastBoxes(data: readonly Datum[]): LeastBoxes {
  const columnMm = widestMm(data);
  const figureMm = Math.min(...data.map(({ leastMm = MAIN_MM.least }) => leastMm));
  const rowMm = figureMm + SMALL_MM + 2 * CLOSE_MM + PAD_MM - 0.1;
  return {
    columnMm: columnMm + 0.1,
    heightMm: (widthMm) => Math.ceil(data.length / columnsFor(data.length, widthMm / columnMm)) * rowMm,
  };
}

function boxRow(row: readonly Datum[], place: Place): DrawnLater {
  const cells = row.map((datum) => cellOf(datum, place.widthMm));
  const heightMm = Math.max(...cells.map((cell) => cell.heightMm));
  const left = (index: number): number => place.x + index * place.widthMm;
  return {
    heightMm,
    draw: () => [
      ...cells.flatMap((cell, index) => drawCell(cell, { ...place, x: left(index) })),
      ...cells.map((_, index) => rectangle({ ...place, x: left(index), heightMm }, PEN.fine)),
    ],
  };
}

/** A datum in a box of a width, wherever that stands. */
interface Cell {
  readonly datum: Datum;
  /** The other notations stand on the main figure's line, at its end. */
  readonly isBeside: boolean;
  readonly mainMm: number;
  readonly capMm: number;
  readonly headMm: number;
  readonly figureMm: number;
  readonly heightMm: number;
}

function cellOf(datum: Datum, boxMm: number): Cell {
  const { label, main, others, leastMm = MAIN_MM.least } = datum;
  const widthMm = boxMm - 2 * PAD_MM;
  const besideMm = others === null ? 0 : measureText(others, { capMm: SMALL_MM, face: "regular" }).widthMm;
  const isBeside = widthAtLeastMm(main, datum) + besideMm + 2 * PAD_MM <= widthMm;
  const mainMm = isBeside ? widthMm - besideMm - 2 * PAD_MM : widthMm;
  const capMm = fitText(main, { face: "bold", widthMm: mainMm, leastMm, mostMm: MAIN_MM.most });
  const headMm = closeMm(label, { widthMm, capMm: SMALL_MM, face: "regular" });
  const figureMm = closeMm(main, { widthMm: mainMm, capMm, face: "bold" });
  const smallMm =
    isBeside || others === null ? 0 : closeMm(others, { widthMm, capMm: SMALL_MM, face: "regular" });
  return {
    ...{ datum, isBeside, mainMm, capMm, headMm, figureMm },
    heightMm: headMm + figureMm + smallMm + PAD_MM,
  };
}

/** Height of a text block without the air under its last line that blocks of several lines need. */
const closeMm = (words: string, column: Column): number =>
  wrapText(words, column).length * column.capMm * LINE_PITCH - column.capMm * (LINE_PITCH - 1) + CLOSE_MM;

function drawCell({ datum, isBeside, mainMm, capMm, headMm, figureMm }: Cell, box: Place): readonly Item[] {
  const { label, main, others } = datum;
  const place = { x: box.x + PAD_MM, widthMm: box.widthMm - 2 * PAD_MM };
  const y = box.y + PAD_MM + headMm;
  const below = {
    ...place,
    y: isBeside ? y + capMm - SMALL_MM : y + figureMm,
    capMm: SMALL_MM,
    anchor: isBeside ? ("end" as const) : ("start" as const),
  };
  return [
    ...textBlock(label, { ...place, y: box.y + PAD_MM, capMm: SMALL_MM }).items,
    ...textBlock(main, { ...place, widthMm: mainMm, y, capMm, face: "bold" }).items,
    ...(others === null ? [] : textBlock(others, below).items),
  ];
}
