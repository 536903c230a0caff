import type { Item } from "../drawing/drawing.js";
import type { DrawnLater } from "../drawing/drawn-later.js";
import type { Box } from "../drawing/pen.js";
import { type Table, tableLater } from "../drawing/table.js";
import type { Block } from "../drawing/text-block.js";

/** What a part has laid into the box that it was given, drawn only where its page is, and what is left for the next page. */
export interface Laid extends DrawnLater {
  readonly rest: Part | null;
}

/**
 * Something that runs down a page. It gets the box that is still free, and answers null where nothing of it fits;
 * at the top of a page (`fresh`) it must draw something, so that a flow ends.
 */
export type Part = (free: Box, fresh: boolean) => Laid | null;

/** How far an accent rises over a capital of 5 mm, the largest that a page of text begins with. */
const ACCENT_MM = 1.3;

/** Parts one under the other, over as many pages as they need; the items of each page. Never an empty list. */
export const flow = (parts: readonly Part[], box: Box, gapMm: number): Item[][] =>
  flowed(parts, box, gapMm).draw();

/** Pages that are counted; their items are made when they are drawn. */
export interface Flowed {
  readonly pageCount: number;
  readonly draw: () => Item[][];
  /** Pages that no narrower gap between parts can do without. */
  readonly leastPages: number;
}

/** The same, and on how few pages it might stand if its parts stood closer. */
export function flowed(parts: readonly Part[], box: Box, gapMm: number): Flowed {
  const area = { ...box, y: box.y + ACCENT_MM, heightMm: box.heightMm - ACCENT_MM };
  const pages: Laid[][] = [[]];
  const waiting = [...parts];
  let y = area.y;
  let contentMm = 0;
  let goesOn = false;
  for (let part = waiting.shift(); part !== undefined; part = waiting.shift()) {
    const fresh = y === area.y;
    const laid = part({ ...area, y, heightMm: area.y + area.heightMm - y }, fresh);
    if (laid !== null) pages.at(-1)?.push(laid);
    y += laid === null ? 0 : laid.heightMm + gapMm;
    // What goes on from another page may begin with a heading that it would not repeat elsewhere.
    if (!goesOn) contentMm += Math.min(laid?.heightMm ?? 0, area.heightMm);
    const rest = laid === null ? part : laid.rest;
    goesOn = laid !== null && rest !== null;
    if (rest === null) continue;
    waiting.unshift(rest);
    pages.push([]);
    y = area.y;
  }
  return {
    pageCount: pages.length,
    draw: () => pages.map((page) => page.flatMap(({ draw }) => draw())),
    leastPages: Math.max(1, Math.ceil(contentMm / (area.heightMm + OVER_MM))),
  };
}

/** The gap under a part's last line may hang over the end of a page. */
const OVER_MM = 3;

/** A block that stays in one piece. */
export const whole =
  (make: (place: Box) => Block): Part =>
  (free, fresh) => {
    const { heightMm, items } = make(free);
    return heightMm > free.heightMm && !fresh ? null : { heightMm, draw: () => items, rest: null };
  };

/** Blocks close under each other, parted between any two where the page ends. */
export const run =
  (makers: readonly ((place: Box) => Block)[], gapMm: number): Part =>
  (free, fresh) => {
    const blocks: Block[] = [];
    let heightMm = 0;
    for (const make of makers) {
      const block = make({ ...free, y: free.y + heightMm });
      const forced = blocks.length === 0 && fresh;
      if (heightMm + block.heightMm > free.heightMm && !forced) break;
      blocks.push(block);
      heightMm += block.heightMm + gapMm;
    }
    const taken = blocks.length;
    if (taken === 0 && makers.length > 0) return null;
    return {
      heightMm,
      draw: () => blocks.flatMap(({ items }) => items),
      rest: taken < makers.length ? run(makers.slice(taken), gapMm) : null,
    };
  };

/** A table from a row on, its heading repeated on every page. */
export const rowsOf =
  (table: Table, first = 0): Part =>
  (free, fresh) => {
    if (first >= table.rows.length) return { heightMm: 0, draw: () => [], rest: null };
    const page = tableLater(table, { ...free, first });
    if (page.heightMm > free.heightMm && !fresh) return null;
    const next = first + page.rowCount;
    return { ...page, rest: next < table.rows.length ? rowsOf(table, next) : null };
  };

/** A heading over a part, never parted from how the part begins. */
export const headed =
  (heading: (place: Box) => Block, part: Part): Part =>
  (free, fresh) => {
    const head = heading(free);
    const below = {
      ...free,
      y: free.y + head.heightMm,
      heightMm: free.heightMm - head.heightMm,
    };
    if (below.heightMm < 0 && !fresh) return null;
    const laid = part(below, fresh);
    if (laid === null) return null;
    return {
      heightMm: head.heightMm + laid.heightMm,
      draw: () => [...head.items, ...laid.draw()],
      rest: laid.rest,
    };
  };
