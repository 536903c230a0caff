import type { Item } from "../drawing/drawing.js";
import type { Box } from "../drawing/pen.js";
import { type Table, tablePage } from "../drawing/table.js";
import type { Block } from "../drawing/text-block.js";

/** What a part drew into the box that it was given, and what is left of it for the next page. */
export interface Laid extends Block {
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
  flowed(parts, box, gapMm).pages;

export interface Flowed {
  readonly pages: Item[][];
  /** Pages that no narrower gap between parts can do without. */
  readonly leastPages: number;
}

/** The same, and on how few pages it might stand if its parts stood closer. */
export function flowed(parts: readonly Part[], box: Box, gapMm: number): Flowed {
  const area = { ...box, y: box.y + ACCENT_MM, heightMm: box.heightMm - ACCENT_MM };
  const pages: Item[][] = [[]];
  const waiting = [...parts];
  let y = area.y;
  let contentMm = 0;
  let goesOn = false;
  for (let part = waiting.shift(); part !== undefined; part = waiting.shift()) {
    const fresh = y === area.y;
    const laid = part({ ...area, y, heightMm: area.y + area.heightMm - y }, fresh);
    pages.at(-1)?.push(...(laid?.items ?? []));
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
  return { pages, leastPages: Math.max(1, Math.ceil(contentMm / (area.heightMm + OVER_MM))) };
}

/** The gap under a part's last line may hang over the end of a page. */
const OVER_MM = 3;

/** A block that stays in one piece. */
export const whole =
  (make: (place: Box) => Block): Part =>
  (free, fresh) => {
    const block = make(free);
    return block.heightMm > free.heightMm && !fresh ? null : { ...block, rest: null };
  };

/** Blocks close under each other, parted between any two where the page ends. */
export const run =
  (makers: readonly ((place: Box) => Block)[], gapMm: number): Part =>
  (free, fresh) => {
    const items: Item[] = [];
    let heightMm = 0;
    let taken = 0;
    for (const make of makers) {
      const block = make({ ...free, y: free.y + heightMm });
      const forced = taken === 0 && fresh;
      if (heightMm + block.heightMm > free.heightMm && !forced) break;
      items.push(...block.items);
      heightMm += block.heightMm + gapMm;
      taken += 1;
    }
    if (taken === 0 && makers.length > 0) return null;
    return { items, heightMm, rest: taken < makers.length ? run(makers.slice(taken), gapMm) : null };
  };

/** A table from a row on, its heading repeated on every page. */
export const rowsOf =
  (table: Table, first = 0): Part =>
  (free, fresh) => {
    if (first >= table.rows.length) return { items: [], heightMm: 0, rest: null };
    const page = tablePage(table, { ...free, first });
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
      items: [...head.items, ...laid.items],
      heightMm: head.heightMm + laid.heightMm,
      rest: laid.rest,
    };
  };
