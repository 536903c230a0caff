import { countedSheet, coverOf, numbersOf, packetFrom, printedSheet } from "../sheets/packet.js";
import { pageCountOf } from "../sheets/page-count.js";
import type { Order } from "../sheets/sheet.js";
import type { Asked } from "./asked.js";
import { type Made, madeFrom, madeOf } from "./made.js";
import type { Mate, MateCounts, MateNumbers, MateSheets } from "./mate.js";
import { type Taken, takeTurns } from "./turns.js";

/** A whole packet, of which a mate makes what is not made here; null where the mate is of no use. */
export async function madeTogether(order: Order, asked: Asked, mate: Mate): Promise<Made | null> {
  const taken = takeTurns(order, asked, mate.turns);
  const counts = taken.sheets.size === taken.lots ? NOTHING_MADE : await mate.counts();
  if (counts === null) return null;
  const numbers = numbersFor(order, taken, counts);
  const others = counts === NOTHING_MADE ? new Map() : mate.sheets(numbers);
  const own = sheetsTaken(order, asked, taken, numbers);
  const cover = madeOf(printedSheet(order, numbers.cover, { number: 1, of: numbers.of }), asked);
  const theirs: MateSheets | null = await others;
  if (theirs === null) return null;
  const rest = numbersOfLots(taken).flatMap((lot) => own.get(lot) ?? theirs.get(lot) ?? []);
  return madeFrom([cover, ...rest]);
}

const NOTHING_MADE: MateCounts = new Map();

const numbersOfLots = ({ lots }: Taken): readonly number[] => Array.from({ length: lots }, (_, lot) => lot);

/** The sheets that were taken as they are printed, by their lot. */
export function sheetsTaken(
  order: Order,
  asked: Asked,
  { sheets: taken, ahead }: Taken,
  { firsts, of }: MateNumbers,
): MateSheets {
  const printed = [...taken].map(([lot, sheets]): [number, Made] => {
    const numbers = firsts.get(lot) ?? [];
    const packets = sheets.map((sheet, index) =>
      printedSheet(order, sheet, { number: numbers[index] ?? 0, of }),
    );
    return [lot, madeOf(packetFrom(packets), asked, { ahead })];
  });
  return new Map(printed);
}

/** The cover, and the numbers of all other sheets, whoever made them. */
function numbersFor(order: Order, taken: Taken, counts: MateCounts) {
  const byLot = numbersOfLots(taken).map(
    (lot) => taken.sheets.get(lot)?.map(countedSheet) ?? counts.get(lot) ?? [],
  );
  const cover = coverOf(order, byLot.flat());
  const { firsts, of } = numbersOf([pageCountOf(cover), ...byLot.flat().map(({ pageCount }) => pageCount)]);
  let next = 1;
  const byNumber = byLot.map((sheets, lot): [number, number[]] => {
    const own = firsts.slice(next, next + sheets.length);
    next += sheets.length;
    return [lot, own];
  });
  return { cover, firsts: new Map(byNumber), of };
}

/** What others need to know of the sheets that were taken. */
export const countsOf = ({ sheets: taken }: Taken): MateCounts =>
  new Map([...taken].map(([lot, sheets]) => [lot, sheets.map(countedSheet)]));
