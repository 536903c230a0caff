import { rmSync } from "node:fs";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { ownFolder } from "./command.js";
import { bytesOf, otherRooms, rawBytes, slippedRooms, spoiltRooms } from "./fuzz/arbitrary.js";
import { asked, inTimeNoted, noMoreQuestions, roomIn } from "./fuzz/asked.js";
import { GOOD } from "./fuzz/good.js";
import { holdsOfJson, holdsOfPacket, holdsOfPlaces, holdsOfWords } from "./fuzz/holds.js";
import { LONG, runs, SEED } from "./fuzz/runs.js";
import type { Answer } from "./fuzz/target.js";

/*
 * Whatever is in a room file: no crash, no hang, no words of a machine, a place for every message, and files that
 * carry nothing but sheets. The same inputs each time; `npm run fuzz` tries others for as long as it is told to.
 */

const tried = { files: 0, resolved: 0, packets: 0, filesInPackets: 0, slowestMs: 0 };
afterAll(() => {
  noMoreQuestions();
  console.log(`seed ${SEED}: ${JSON.stringify(tried)}`);
});

const timed = inTimeNoted(tried);

/** What holds of every file; `printed` for the few of those that are rooms whose sheets are looked at too. */
async function holds(bytes: Uint8Array, { printed }: { printed: boolean }): Promise<void> {
  const folder = ownFolder();
  try {
    roomIn(folder, bytes);
    const source = Buffer.from(bytes).toString();
    const checked = await timed(folder, "check", "room.yaml");
    tried.files += 1;
    holdsOfWords(checked, source);
    holdsOfPlaces(checked, source);
    if (checked.code === 2) return;
    tried.resolved += 1;
    await holdsOfRoom(folder, source, checked);
    if (printed) await holdsOfSheets(folder, source);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function holdsOfRoom(folder: string, source: string, checked: Answer): Promise<void> {
  const json = await timed(folder, "check", "room.yaml", "--json");
  expect(json.code).toBe(checked.code);
  holdsOfJson(json);
  for (const command of ["place", "report"]) {
    const told = await timed(folder, command, "room.yaml", "--language", "es");
    holdsOfWords(told, source);
  }
}

async function holdsOfSheets(folder: string, source: string): Promise<void> {
  const answer = await asked(folder, "print", "room.yaml", "-o", "packet");
  holdsOfWords(answer, source);
  tried.packets += 1;
  tried.filesInPackets += holdsOfPacket(folder, "packet");
}

const property = (rooms: fc.Arbitrary<Uint8Array>) =>
  fc.asyncProperty(rooms, fc.integer({ min: 0, max: 9 }), (bytes, chance) =>
    holds(bytes, { printed: chance === 0 }),
  );

const kept = ([bytes]: [Uint8Array, number]) => ({ "room.yaml": bytes });

describe("whatever is in a room file", LONG, () => {
  test("rooms with values changed, moved, repeated and taken out", async () => {
    await fc.assert(property(spoiltRooms(GOOD).map(bytesOf)), runs(0.3, kept));
  });

  test("rooms with other figures", async () => {
    await fc.assert(property(otherRooms(GOOD).map(bytesOf)), runs(0.3, kept));
  });

  test("slips in the text", async () => {
    await fc.assert(property(slippedRooms(GOOD).map(bytesOf)), runs(0.3, kept));
  });

  test("bytes of any kind", async () => {
    await fc.assert(property(rawBytes(GOOD)), runs(0.1, kept));
  });
});
