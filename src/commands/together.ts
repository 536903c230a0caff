import { InternalError } from "../findings/internal-error.js";
import { countedSheet, coverOf, numbersOf, packetFrom, printedSheet } from "../sheets/packet.js";
import { pageCountOf } from "../sheets/page-count.js";
import type { Order } from "../sheets/sheet.js";
import type { Asked } from "./asked.js";
import { type Made, madeFrom, madeOf } from "./made.js";
import type { Mate, MateCounts, MateNumbers, MateSheets } from "./mate.js";
import { type Taken, takeTurns } from "./turns.js";

/** A whole packet, of which a mate makes what is not made here; null where the mate is of no use. */
export async function madeTogether(
  order: Order,
  asked: Asked,
  {
    mate,
    done = () => undefined,
  }: { readonly mate: Mate; readonly done?: (count: number, of: number) => void },
): Promise<Made | null> {
  const taken = takeTurns(order, asked, mate.turns);
  const counts = taken.sheets.size === taken.lots ? NOTHING_MADE : await mate.counts();
  if (counts === null) return null;
  const numbers = numbersFor(order, taken, counts);
  const others = counts === NOTHING_MADE ? new Map() : mate.sheets(numbers);
  let count = 0;
  const told = (): void => done(Math.min(++count, numbers.of), numbers.of);
  const own = sheetsTaken(order, asked, { taken, numbers, told });
  const cover = madeOf(printedSheet(order, numbers.cover, { number: 1, of: numbers.of }), asked);
  const theirs: MateSheets | null = await others;
  if (theirs === null) return null;
  const rest = numbersOfLots(taken).flatMap((lot) => own.get(lot) ?? theirs.get(lot) ?? missing(lot));
  return madeFrom([cover, ...rest]);
}

const NOTHING_MADE: MateCounts = new Map();

const numbersOfLots = ({ lots }: Taken): readonly number[] => Array.from({ length: lots }, (_, lot) => lot);

/** A packet without some of its pages must not come to be. */
function missing(lot: number): never {
  throw new InternalError(`nobody made the sheets of lot ${lot}`);
}

interface Numbered {
  readonly taken: Taken;
  readonly numbers: MateNumbers;
  /** Called at each page and drawing that is done. */
  readonly told: () => void;
}

/** The sheets that were taken as they are printed, by their lot. */
export function sheetsTaken(order: Order, asked: Asked, { taken, numbers, told }: Numbered): MateSheets {
  const { firsts, of } = numbers;
  const printed = [...taken.sheets].map(([lot, sheets]): [number, Made] => {
    const own = firsts.get(lot) ?? missing(lot);
    const packets = sheets.map((sheet, index) =>
      printedSheet(order, sheet, { number: own[index] ?? missing(lot), of }),
    );
    return [lot, madeOf(packetFrom(packets), asked, { ahead: taken.ahead, done: told })];
  });
  return new Map(printed);
}

/** The cover, and the numbers of all other sheets, whoever made them. */
function numbersFor(order: Order, taken: Taken, counts: MateCounts) {
  const byLot = numbersOfLots(taken).map(
    (lot) => taken.sheets.get(lot)?.map(countedSheet) ?? counts.get(lot) ?? missing(lot),
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
