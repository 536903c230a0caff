import { isDeepStrictEqual } from "node:util";
import { describe, expect, it } from "vitest";
import { askedBy } from "../../src/commands/asked.js";
import { madeOf } from "../../src/commands/made.js";
import type { Mate } from "../../src/commands/mate.js";
import { countsOf, madeTogether, sheetsTaken } from "../../src/commands/together.js";
import { noTurnsTaken } from "../../src/commands/turns.js";
import { lotsOf, packet } from "../../src/sheets/packet.js";
import type { Order } from "../../src/sheets/sheet.js";
import { wordsIn } from "../../src/words/words.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { orderFor } from "../sheets/orders.js";

const ASKED = askedBy({ pdf: true }, wordsIn(["en"]));
const ROOM: Parts = {
  speakers: [
    { id: "TL", model: "tilted", at: { left: "1 m", front: "2.6 m" } },
    { id: "TR", model: "tilted", at: { left: "2.2 m", front: "2.6 m" } },
  ],
};
const order = (): Order => orderFor(job(ROOM));

/** A mate that took the first so many lots before anybody else took any, of its own order. */
function mateWith(count: number, theirs: Order): Mate {
  const turns = noTurnsTaken();
  turns[0] = count;
  const { all, longestFirst } = lotsOf(theirs);
  const taken = {
    lots: all.length,
    sheets: new Map(longestFirst.slice(0, count).map((lot) => [lot, all[lot]?.() ?? []])),
    ahead: new Map(),
  };
  return {
    turns,
    counts: async () => structuredClone(countsOf(taken)),
    // As it comes from another thread.
    sheets: async (numbers) =>
      structuredClone(
        sheetsTaken(theirs, ASKED, { taken, numbers: structuredClone(numbers), told: () => undefined }),
      ),
    dismiss: () => undefined,
  };
}

const LOTS = lotsOf(order()).all.length;

describe("sheets of one room made by two", () => {
  it.each([2, LOTS - 1, LOTS])(
    "are the packet that one makes, where the other took %i lots",
    async (count) => {
      const mine = order();
      const made = await madeTogether(mine, ASKED, { mate: mateWith(count, order()) });
      expect(isDeepStrictEqual(made, madeOf(packet(mine), ASKED))).toBe(true);
    },
  );

  it("are none where the other failed, before or after it said what it took", async () => {
    const mate = mateWith(3, order());
    const silent = { ...mate, counts: async () => null };
    expect((await madeTogether(order(), ASKED, { mate: silent })) === null).toBe(true);
    const failing = { ...mateWith(3, order()), sheets: async () => null };
    expect((await madeTogether(order(), ASKED, { mate: failing })) === null).toBe(true);
  });

  it("are shared out once each, those that take long first", () => {
    const { all, longestFirst } = lotsOf(order());
    const numbers = all.map((_, number) => number);
    expect([...longestFirst].sort((one, other) => one - other)).toEqual(numbers);
    expect(longestFirst).not.toEqual(numbers);
  });
});
