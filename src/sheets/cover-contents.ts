import { type Box, point, text } from "../drawing/pen.js";
import { measureText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import { type Part, run } from "./flow.js";
import type { Order, Trade } from "./sheet.js";

/** A sheet as the cover lists it. */
export interface Listed {
  readonly title: string;
  readonly trades: readonly Trade[];
  readonly pages: number;
  /** Sheet number of its first page. */
  readonly first: number;
}

type Maker = (place: Box) => Block;

const TRADES: readonly Trade[] = ["drywall", "installer", "labels"];
const MOST_COLUMNS = 3;
/** Share of the titles that a narrow column may break: those are said on two lines. */
const BROKEN = 0.3;
const GAP_MM = 6;
const NUMBER_MM = 11;
const PAGES_MM = 10;
const CAP_MM = 2.5;

/** The sheets of each trade in the packet's order: the number where each begins and how many pages it has. */
export const contentsPart =
  (order: Order, contents: readonly Listed[]): Part =>
  (free, fresh) => {
    const makers = TRADES.flatMap((trade) => {
      const sheets = contents.filter(({ trades, pages }) => trades.includes(trade) && pages > 0);
      return sheets.length === 0 ? [] : tradeRows(order, trade, sheets, columnsFor(contents, free.widthMm));
    });
    return run(makers, 0.5)(free, fresh);
  };

/** The trade and its first row are one block, so that no page ends between them. */
function tradeRows(order: Order, trade: Trade, sheets: readonly Listed[], columns: number): Maker[] {
  const pages = sheets.reduce((sum, sheet) => sum + sheet.pages, 0);
  const heading = order.words.cover.sheets[trade](pages);
  const [first, ...more] = rowsOf(sheets, columns);
  const opening = (place: Box): Block =>
    stack(place.y, [
      (y) => textBlock(heading, { ...place, y: y + 1, capMm: 3, face: "bold" }),
      (y) => ({ items: [], heightMm: y > place.y ? 1 : 0 }),
      (y) => first?.({ ...place, y }) ?? { items: [], heightMm: 0 },
    ]);
  return [opening, ...more];
}

const columnMm = (widthMm: number, columns: number): number => (widthMm - (columns - 1) * GAP_MM) / columns;

/** As many columns as leave most titles on one line. */
function columnsFor(sheets: readonly Listed[], widthMm: number): number {
  const titlesMm = sheets.map(({ title }) => measureText(title, { capMm: CAP_MM, face: "regular" }).widthMm);
  const breaks = (columns: number): number => {
    const roomMm = columnMm(widthMm, columns) - NUMBER_MM - PAGES_MM;
    return titlesMm.filter((titleMm) => titleMm > roomMm).length;
  };
  const choices = Array.from({ length: MOST_COLUMNS }, (_, index) => MOST_COLUMNS - index);
  return choices.find((columns) => breaks(columns) <= BROKEN * sheets.length) ?? 1;
}

/** Sheets side by side, read along the rows: a page may end between any two. */
function rowsOf(sheets: readonly Listed[], columns: number): Maker[] {
  const rows = Math.ceil(sheets.length / columns);
  return Array.from({ length: rows }, (_, row) => (place: Box): Block => {
    const widthMm = columnMm(place.widthMm, columns);
    const blocks = Array.from({ length: columns }, (_none, column) => {
      const sheet = sheets[row * columns + column];
      return sheet === undefined
        ? []
        : [entry(sheet, { ...place, x: place.x + column * (widthMm + GAP_MM), widthMm })];
    }).flat();
    return {
      items: blocks.flatMap(({ items }) => items),
      heightMm: Math.max(...blocks.map(({ heightMm }) => heightMm)),
    };
  });
}

function entry({ title, pages, first }: Listed, { x, y, widthMm }: Box): Block {
  const baseline = y + CAP_MM;
  const titleMm = widthMm - NUMBER_MM - PAGES_MM;
  const block = textBlock(title, { x: x + NUMBER_MM, y, widthMm: titleMm, capMm: CAP_MM });
  return {
    items: [
      text(point(x + NUMBER_MM - 2.5, baseline), String(first), {
        capMm: CAP_MM,
        face: "bold",
        anchor: "end",
      }),
      ...block.items,
      text(point(x + widthMm, baseline), `${pages} p.`, { capMm: CAP_MM, anchor: "end" }),
    ],
    heightMm: block.heightMm,
  };
}
