import { point, rectangle, text } from "../../drawing/pen.js";
import { measureText } from "../../drawing/text.js";
import { LINE_PITCH, textBlock } from "../../drawing/text-block.js";
import type { Opening } from "../../job.js";
import { headed, type Part } from "../flow.js";
import type { Order } from "../sheet.js";
import { type Inline, inlines } from "./inline.js";

const ID_MM = 3.5;
const TICK_MM = 4;

/** How many openings there are, and a box to tick for each that is to be cut. */
export function countPart(order: Order, openings: readonly Opening[]): Part {
  const { job, words } = order;
  const said = words.marking.count(openings.length, job.openings.length);
  return headed(
    ({ x, y, widthMm }) => textBlock(said, { x, y, widthMm, capMm: ID_MM, face: "bold" }),
    inlines(openings.map((opening) => tick(order, opening))),
  );
}

function tick({ words }: Order, { speaker, mustNotCut }: Opening): Inline {
  if (!mustNotCut) return ticked(speaker.id);
  const said = words.marking.notHere(speaker.id);
  const { widthMm } = measureText(said, { capMm: 2.5, face: "regular" });
  return {
    widthMm,
    heightMm: ID_MM * LINE_PITCH,
    draw: ({ x, y }) => [text(point(x, y + TICK_MM), said, { capMm: 2.5 })],
  };
}

/** A box to tick and what it stands for. */
export function ticked(words: string): Inline {
  const { widthMm } = measureText(words, { capMm: ID_MM, face: "bold" });
  return {
    widthMm: TICK_MM + 1.5 + widthMm,
    heightMm: ID_MM * LINE_PITCH,
    draw: ({ x, y }) => [
      rectangle({ x, y: y + 0.2, widthMm: TICK_MM, heightMm: TICK_MM }),
      text(point(x + TICK_MM + 1.5, y + TICK_MM), words, { capMm: ID_MM, face: "bold" }),
    ],
  };
}
