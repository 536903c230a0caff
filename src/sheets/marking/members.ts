import { PEN, point, rectangle, text } from "../../drawing/pen.js";
import { measureText } from "../../drawing/text.js";
import { textBlock } from "../../drawing/text-block.js";
import { headed, type Part, whole } from "../flow.js";
import type { Order } from "../sheet.js";
import { type Inline, inlines } from "./inline.js";
import { axisOf, isAlongAxis, type Row, rowsOf } from "./rows.js";
import { memberMarks, membersCaption, rowCaption, WRITE_MM } from "./surface-chains.js";
import type { SurfaceStage } from "./surface-stage.js";

const CAP_MM = 2.5;
const HEIGHT_MM = 6;
const LETTERS = { capMm: CAP_MM, face: "regular" } as const;

/** What the figures of the members' chain are, where the drawing itself has no room for it. */
export function captionParts(order: Order, at: SurfaceStage): Part[] {
  const caption = membersCaption(order, at);
  if (caption === null) return [];
  return [whole(({ x, y, widthMm }) => textBlock(caption, { x, y, widthMm, capMm: CAP_MM }))];
}

/** Every joist, stud or strap with its figures, and a box to write the found one in where it is only assumed. */
export const memberParts = (order: Order, at: SurfaceStage): Part[] =>
  rowsOf(at.surface).flatMap((row) => rowParts(order, at, row));

/** The rows that have no chain beside the drawing: one that runs at an angle, or as another does. */
export const chainlessParts = (order: Order, at: SurfaceStage): Part[] =>
  rowsOf(at.surface)
    .filter(
      (row, index, rows) =>
        !isAlongAxis(row) || rows.findIndex((other) => axisOf(other) === axisOf(row)) < index,
    )
    .flatMap((row) => rowParts(order, at, row));

function rowParts(order: Order, at: SurfaceStage, row: Row): Part[] {
  const caption = rowCaption(order, at, row);
  if (caption === null) return [];
  const writeMm = row.layout.basis === "assumed" ? WRITE_MM : 0;
  const said = memberMarks(order, at, row, "top").map(({ lines }) => lines.join(" "));
  const widest = Math.max(0, ...said.map((words) => measureText(words, LETTERS).widthMm));
  const all = said.map((words) => figure(words, { wordsMm: widest + 1.5, writeMm }));
  return [
    headed(
      ({ x, y, widthMm }) => textBlock(caption, { x, y, widthMm, capMm: CAP_MM, face: "bold" }),
      inlines(all),
    ),
  ];
}

/** All of one width, so that boxes stand in columns. */
function figure(words: string, { wordsMm, writeMm }: { wordsMm: number; writeMm: number }): Inline {
  return {
    widthMm: wordsMm + writeMm,
    heightMm: HEIGHT_MM,
    draw: ({ x, y }) => [
      text(point(x, y + (HEIGHT_MM + CAP_MM) / 2), words, { capMm: CAP_MM }),
      ...(writeMm === 0
        ? []
        : [rectangle({ x: x + wordsMm, y, widthMm: writeMm, heightMm: HEIGHT_MM }, PEN.fine)]),
    ],
  };
}
