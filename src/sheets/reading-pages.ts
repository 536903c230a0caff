import type { CellLine } from "../drawing/table.js";
import { textBlock } from "../drawing/text-block.js";
import { flowed, type Part, whole } from "./flow.js";
import { frameArea } from "./frame.js";
import { drawnWhenAsked } from "./page-count.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";

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

/** What a sheet is called, and what it is for. */
export interface Read extends Pick<Sheet, "name"> {
  readonly title: string;
  readonly use: string | null;
}

/**
 * A sheet of the installer's whose parts run over as many pages as they need, of the paper that is read rather than held
 * to the board: laid out at once, drawn when it is asked for.
 */
export function readingSheet(order: Order, { name, title, use }: Read, parts: readonly Part[]): Sheet {
  const facts: FrameFacts = {
    title,
    view: null,
    hold: use,
    front: null,
    scale: order.words.frame.notToScale,
    faces: null,
  };
  const { pageCount, draw } = readingPages(order, facts, parts);
  return drawnWhenAsked({ name, trades: ["installer"], title, pageCount, whole: null }, draw);
}

/** The pages of such a sheet, or of one list on it. */
export function readingPages(
  order: Order,
  facts: FrameFacts,
  parts: readonly Part[],
): { readonly pageCount: number; readonly draw: () => Body[] } {
  const { widthMm, heightMm } = order.reading;
  const { title } = facts;
  const { pageCount, draw } = flowed(parts, frameArea(order, facts, order.reading), GAP_MM);
  return {
    pageCount,
    draw: () => draw().map((items) => ({ widthMm, heightMm, title, frame: facts, items })),
  };
}
