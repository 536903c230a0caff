import { KINDS_LONGEST_FIRST, sheetsOfKind } from "../sheets/packet.js";
import type { Order, Sheet } from "../sheets/sheet.js";

/** How many kinds of sheet have been taken, in memory that all who make sheets share: whoever is free takes the next. */
export type Turns = Int32Array;

export const noTurnsTaken = (): Turns => new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));

/** The sheets of the kinds that were taken here, by their kind, their pages drawn. */
export type Taken = ReadonlyMap<number, readonly Sheet[]>;

/** Takes kinds of sheet and makes them until all are taken. */
export function takeTurns(order: Order, turns: Turns): Taken {
  const taken = new Map<number, readonly Sheet[]>();
  const next = (): number | undefined => KINDS_LONGEST_FIRST[Atomics.add(turns, 0, 1)];
  for (let kind = next(); kind !== undefined; kind = next()) {
    taken.set(kind, drawn(sheetsOfKind(order, kind)));
  }
  return taken;
}

/** Pages that wait to be asked for are asked for here: this is the work that is shared out. */
function drawn(sheets: readonly Sheet[]): readonly Sheet[] {
  for (const { pages } of sheets) void pages;
  return sheets;
}
