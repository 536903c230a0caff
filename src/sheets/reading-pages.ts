import type { CellLine } from "../drawing/table.js";
import { textBlock } from "../drawing/text-block.js";
import { flow, type Part, whole } from "./flow.js";
import { frameArea } from "./frame.js";
import type { Body, FrameFacts, Order } from "./sheet.js";

/** Heights of capitals in tables that are read at arm's length, in mm. */
export const MAIN_MM = 5;
export const MIDDLE_MM = 3.5;
export const SMALL_MM = 2.5;

export const main = (words: string): CellLine => ({ words, capMm: MAIN_MM, face: "bold" });
export const middle = (words: string): CellLine => ({ words, capMm: MIDDLE_MM, face: "bold" });
export const small = (words: string): CellLine => ({ words, capMm: SMALL_MM, face: "regular" });

/** Words across the page. */
export const saying = (words: string, face: "regular" | "bold" = "regular"): Part =>
  whole(({ x, y, widthMm }) => textBlock(words, { x, y, widthMm, capMm: SMALL_MM, face }));

const GAP_MM = 2;

/** Parts over as many pages as they need, of the paper that is read rather than held to the board. */
export function readingPages(
  order: Order,
  { title, use }: { readonly title: string; readonly use: string | null },
  parts: readonly Part[],
): Body[] {
  const facts: FrameFacts = {
    title,
    view: null,
    hold: use,
    front: null,
    scale: order.words.frame.notToScale,
    faces: null,
  };
  const { widthMm, heightMm } = order.reading;
  return flow(parts, frameArea(order, facts, order.reading), GAP_MM).map((items) => ({
    widthMm,
    heightMm,
    title,
    frame: facts,
    items,
  }));
}
