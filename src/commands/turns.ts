import { type Content, contentOf } from "../output/pdf.js";
import { lotsOf } from "../sheets/packet.js";
import type { Body, Order, Sheet } from "../sheets/sheet.js";
import type { Ahead, Forms } from "./made.js";

/**
 * How often a lot of sheets was asked for, in memory that all who make sheets share: whoever is free takes the next. From
 * the number of lots on there is none left.
 */
export type Turns = Int32Array;

export const noTurnsTaken = (): Turns => new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));

/** What was made here, as far as that is possible before the numbers of its pages are known. */
export interface Taken {
  /** How many lots there are in all. */
  readonly lots: number;
  /** By the number of their lot. */
  readonly sheets: ReadonlyMap<number, readonly Sheet[]>;
  readonly ahead: Ahead;
}

/** Takes lots of sheets and makes them until all are taken. */
export function takeTurns(order: Order, forms: Forms, turns: Turns): Taken {
  const { all, longestFirst } = lotsOf(order);
  const sheets = new Map<number, readonly Sheet[]>();
  const ahead = new Map<Body, Content>();
  const next = (): number | undefined => longestFirst[Atomics.add(turns, 0, 1)];
  for (let number = next(); number !== undefined; number = next()) {
    const made = all[number]?.() ?? [];
    sheets.set(
      number,
      made.map((sheet) => laidOut(sheet, forms, ahead)),
    );
  }
  return { lots: all.length, sheets, ahead };
}

/**
 * The sheet with its pages and its drawing made as far as they are wanted, so that they only remain to be framed and
 * written. What is drawn ahead is let go: kept, it would be moved about by every collection of garbage until the end.
 */
function laidOut(sheet: Sheet, forms: Forms, ahead: Map<Body, Content>): Sheet {
  const whole = forms.svg ? (sheet.whole?.() ?? null) : null;
  const pages = sheet.pages.map((body) => {
    if (!forms.pdf) return body;
    const empty = { ...body, items: [] };
    ahead.set(empty, contentOf(body.items));
    return empty;
  });
  return { ...sheet, pages, whole: whole === null ? sheet.whole : () => whole };
}
