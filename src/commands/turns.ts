import type { Content } from "../output/pdf.js";
import { lotsOf } from "../sheets/packet.js";
import type { Body, Order, Sheet } from "../sheets/sheet.js";
import { type Ahead, drawnAhead, type Forms } from "./made.js";

/** How many lots of sheets have been taken, in memory that all who make sheets share: whoever is free takes the next. */
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
    const made = (all[number]?.() ?? []).map((sheet) => laidOut(sheet, forms));
    for (const sheet of made)
      for (const [body, content] of drawnAhead(sheet, forms)) ahead.set(body, content);
    sheets.set(number, made);
  }
  return { lots: all.length, sheets, ahead };
}

/** The sheet with its drawing laid out where that is wanted, so that it only remains to be framed and written. */
function laidOut(sheet: Sheet, { svg }: Forms): Sheet {
  if (!svg || sheet.whole === null) return sheet;
  const whole = sheet.whole();
  return { ...sheet, whole: () => whole };
}
