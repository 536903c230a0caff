import type { Item } from "../drawing/drawing.js";
import type { LabelStock } from "../room/room.js";
import { labelTestPage } from "./label-test-page.js";
import { labellingOf } from "./labelling.js";
import type { Body, Order, Sheet } from "./sheet.js";

/**
 * Two labels for every run, from ids, channels and cable alone, whatever findings stand; and a test page on plain
 * paper beside them. Stock that cannot hold them is refused in words on the test page, and then there are no labels.
 */
export function cableLabels(order: Order): Sheet[] {
  if (order.job.room.speakers.length === 0) return [];
  const labelling = labellingOf(order);
  const test = sheet("cable-labels-test", ["installer"], order.words.labels.test.title, [
    labelTestPage(order, labelling),
  ]);
  if (labelling.kind === "refused") return [test];
  const { title } = order.words.labels;
  const pages = labelling.pages.map((items) => stockPage(labelling.stock, title, items));
  return [test, sheet("cable-labels", ["labels"], title, pages)];
}

const sheet = (name: string, trades: Sheet["trades"], title: string, pages: readonly Body[]): Sheet => ({
  name,
  trades,
  title,
  pages,
  whole: null,
});

const stockPage = (stock: LabelStock, title: string, items: readonly Item[]): Body => ({
  widthMm: stock.pageWidthMm,
  heightMm: stock.pageHeightMm,
  title,
  frame: null,
  items,
});
