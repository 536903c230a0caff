import { rmSync } from "node:fs";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type RoomChoice, roomChoice, textOf } from "./awkward/room.js";
import { WORST } from "./awkward/worst.js";
import { ownFolder } from "./command.js";
import {
  asked,
  awkwardDrawnInTime,
  inTimeNoted,
  inTwoSeconds,
  noMoreQuestions,
  roomIn,
} from "./fuzz/asked.js";
import { LONG, runs, SEED } from "./fuzz/runs.js";
import type { Answer } from "./fuzz/target.js";

/*
 * Rooms as large and as awkward as the file's format allows: whatever they ask for, the answer comes within two seconds
 * of processor time (src/effort.ts ends what would take longer). The same rooms each time; `npm run fuzz` tries others.
 */

const tried = { rooms: 0, usable: 0, printed: 0, slowestMs: 0 };
const timed = inTimeNoted(tried, inTwoSeconds);

// The program's first answer also waits for the program.
beforeAll(() => inFolder("baymark: 1\n", (folder) => asked(folder, "check", "room.yaml")));

afterAll(() => {
  noMoreQuestions();
  console.log(`seed ${SEED}: ${JSON.stringify(tried)}`);
});

/** Where a failure that takes long is made smaller no longer than this. */
const MOST_SHRINKING_MS = 20_000;

async function inFolder<Told>(text: string, ask: (folder: string) => Promise<Told>): Promise<Told> {
  const folder = ownFolder();
  try {
    roomIn(folder, text);
    return await ask(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function holds(text: string): Promise<Answer> {
  const answer = await inFolder(text, (folder) => timed(folder, "check", "room.yaml", "--json"));
  const { code, out } = answer;
  tried.rooms += 1;
  if (code !== 2) tried.usable += 1;
  expect([0, 1, 2]).toContain(code);
  const { findings }: { findings: readonly { line: number; message: string }[] } = JSON.parse(out);
  if (code !== 0) expect(findings).not.toEqual([]);
  const lines = text.split("\n").length;
  const placeless = findings.filter(({ line }) => !(Number.isInteger(line) && line >= 1 && line <= lines));
  expect(placeless).toEqual([]);
  return answer;
}

const MOST_DRAWN = 30;

/** Nobody waits for the packet of a hall without knowing why: it is not that which is awkward. */
const withFew = (choice: RoomChoice): RoomChoice => ({
  ...choice,
  loudspeakers: { ...choice.loudspeakers, count: Math.min(choice.loudspeakers.count, MOST_DRAWN) },
});

/** What `place` says of each area, in the same time. */
async function fillings(text: string): Promise<readonly string[]> {
  const { code, out } = await inFolder(text, (folder) => timed(folder, "place", "room.yaml", "--json"));
  expect([0, 1]).toContain(code);
  const { areas }: { areas: readonly { filling: { kind: string } }[] } = JSON.parse(out);
  return areas.map(({ filling }) => filling.kind);
}

describe("rooms as awkward as may be are answered within two seconds", LONG, () => {
  test("any of them, and most can be used", async () => {
    const property = fc.asyncProperty(roomChoice, async (choice) => {
      const { code } = await holds(textOf(choice));
      if (choice.areas.count > 0 && code !== 2) await fillings(textOf(choice));
    });
    const kept = ([choice]: [RoomChoice]) => ({
      "room.yaml": textOf(choice),
      "choice.json": JSON.stringify(choice, null, 2),
    });
    // Unlike a spoilt file, such a room says little before it is made smaller.
    const limits = { interruptAfterTimeLimit: MOST_SHRINKING_MS, ...runs(1, kept, 10), endOnFailure: false };
    await fc.assert(property, limits);
    expect(tried.usable / tried.rooms).toBeGreaterThan(3 / 4);
  });

  test("a few loudspeakers in any of them are drawn in time in proportion", async () => {
    const property = fc.asyncProperty(roomChoice, async (choice) => {
      const text = textOf(withFew(choice));
      const { code, err } = await inFolder(text, (folder) =>
        awkwardDrawnInTime(MOST_DRAWN, folder, "print", "room.yaml", "--pdf"),
      );
      expect([0, 1, 2]).toContain(code);
      tried.printed += code === 2 ? 0 : 1;
      if (code !== 2) expect(err).toMatch(/^wrote /mu);
    });
    const kept = ([choice]: [RoomChoice]) => ({ "room.yaml": textOf(withFew(choice)) });
    const limits = { interruptAfterTimeLimit: MOST_SHRINKING_MS, ...runs(1, kept, 60), endOnFailure: false };
    await fc.assert(property, limits);
    expect(tried.printed).toBeGreaterThan(0);
  });

  test.each(Object.entries(WORST))("%s", async (_, choice) => {
    expect((await holds(textOf(choice))).code).not.toBe(2);
  });

  test("four areas over each other are filled too", async () => {
    const kinds = await fillings(textOf(WORST["four areas over each other"]));
    expect(kinds).toEqual(Array(4).fill("filled"));
  });
});
