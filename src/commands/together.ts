import { countedSheet, coverOf, KIND_COUNT, numbersOf, packetFrom, printedSheet } from "../sheets/packet.js";
import { pageCountOf } from "../sheets/page-count.js";
import type { Order } from "../sheets/sheet.js";
import type { Asked } from "./asked.js";
import { type Made, madeFrom, madeOf } from "./made.js";
import type { Mate, MateCounts, MateNumbers, MateSheets } from "./mate.js";
import { type Taken, takeTurns } from "./turns.js";

/**
 * A whole packet, of which a mate makes what is not made here; null where the mate is of no use.
 */
export async function madeTogether(order: Order, asked: Asked, mate: Mate): Promise<Made | null> {
  const taken = takeTurns(order, asked, mate.turns);
  const counts = taken.sheets.size === KIND_COUNT ? NOTHING_MADE : await mate.counts();
  if (counts === null) return null;
  const numbers = numbersFor(order, taken, counts);
  const others = counts === NOTHING_MADE ? new Map() : mate.sheets(numbers);
  const own = sheetsTaken(order, asked, taken, numbers);
  const theirs: MateSheets | null = await others;
  if (theirs === null) return null;
  const cover = madeOf(printedSheet(order, numbers.cover, { number: 1, of: numbers.of }), asked);
  const rest = kinds().flatMap((kind) => own.get(kind) ?? theirs.get(kind) ?? []);
  return madeFrom([cover, ...rest]);
}

const NOTHING_MADE: MateCounts = new Map();

const kinds = (): readonly number[] => Array.from({ length: KIND_COUNT }, (_, kind) => kind);

/** The sheets that were taken as they are printed, by their kind. */
export function sheetsTaken(
  order: Order,
  asked: Asked,
  { sheets: taken, ahead }: Taken,
  { firsts, of }: MateNumbers,
): MateSheets {
  const printed = [...taken].map(([kind, sheets]): [number, Made] => {
    const numbers = firsts.get(kind) ?? [];
    const packets = sheets.map((sheet, index) =>
      printedSheet(order, sheet, { number: numbers[index] ?? 0, of }),
    );
    return [kind, madeOf(packetFrom(packets), asked, { ahead })];
  });
  return new Map(printed);
}

/** The cover, and the numbers of all other sheets, whoever made them. */
function numbersFor(order: Order, taken: Taken, counts: MateCounts) {
  const byKind = kinds().map((kind) => taken.sheets.get(kind)?.map(countedSheet) ?? counts.get(kind) ?? []);
  const cover = coverOf(order, byKind.flat());
  const { firsts, of } = numbersOf([pageCountOf(cover), ...byKind.flat().map(({ pageCount }) => pageCount)]);
  let next = 1;
  const byNumber = byKind.map((sheets, kind): [number, number[]] => {
    const own = firsts.slice(next, next + sheets.length);
    next += sheets.length;
    return [kind, own];
  });
  return { cover, firsts: new Map(byNumber), of };
}

/** What others need to know of the sheets that were taken. */
export const countsOf = ({ sheets: taken }: Taken): MateCounts =>
  new Map([...taken].map(([kind, sheets]) => [kind, sheets.map(countedSheet)]));
