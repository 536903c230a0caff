import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { startFile } from "../../src/room/start.js";
import { FULL_ROOM } from "../room/full-room.js";
import { exampleRooms, ownFolder } from "./command.js";
import { bytesOf, otherRooms, rawBytes, slippedRooms, spoiltRooms } from "./fuzz/arbitrary.js";
import { asked, inTime, noMoreQuestions, roomIn } from "./fuzz/asked.js";
import { holdsOfJson, holdsOfPacket, holdsOfPlaces, holdsOfWords } from "./fuzz/holds.js";
import type { Answer } from "./fuzz/target.js";

/*
 * Whatever is in a room file: no crash, no hang, no words of a machine, a place for every message, and files that
 * carry nothing but sheets. The same inputs each time; `npm run fuzz` tries others for as long as it is told to.
 */

/** `npm run fuzz`: how many files of each kind, for how long at most, from which seed. */
const { BAYMARK_FUZZ_INPUTS, BAYMARK_FUZZ_SECONDS, BAYMARK_FUZZ_SEED } = process.env;
const INPUTS = Number(BAYMARK_FUZZ_INPUTS ?? 240);
const SECONDS = Number(BAYMARK_FUZZ_SECONDS ?? 0);
const SEED = Number(BAYMARK_FUZZ_SEED ?? 20261125);

const GOOD = [
  ...exampleRooms().map((path) => readFileSync(path, "utf8")),
  FULL_ROOM,
  startFile({ language: "en", units: "imperial" }),
  startFile({ language: "es", units: "metric" }),
];

const tried = { files: 0, resolved: 0, packets: 0, filesInPackets: 0, slowestMs: 0 };
afterAll(() => {
  noMoreQuestions();
  console.log(`seed ${SEED}: ${JSON.stringify(tried)}`);
});

async function timed(folder: string, ...words: readonly string[]): Promise<Answer> {
  const answer = await inTime(folder, ...words);
  tried.slowestMs = Math.max(tried.slowestMs, Math.round(answer.processorMs));
  return answer;
}

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

const runs = (share: number): fc.Parameters<[Uint8Array, number]> => ({
  numRuns: SECONDS > 0 ? 1e9 : Math.ceil(INPUTS * share),
  seed: SEED,
  ...(SECONDS > 0 ? { interruptAfterTimeLimit: SECONDS * 1000 * share } : {}),
  endOnFailure: true,
  asyncReporter: tell,
});

/** What failed, with the file that did it: its bytes would fill the screen. */
async function tell({ failed, errorInstance, counterexample, numRuns }: fc.RunDetails<[Uint8Array, number]>) {
  if (!failed) return;
  const file = join(tmpdir(), `baymark-fuzz-${numRuns}.yaml`);
  writeFileSync(file, counterexample?.[0] ?? "");
  throw new Error(`seed ${SEED}, input ${numRuns}, kept as ${file}`, { cause: errorInstance });
}

const LONG = { timeout: 300_000 + 2000 * SECONDS };

describe("whatever is in a room file", LONG, () => {
  test("rooms with values changed, moved, repeated and taken out", async () => {
    await fc.assert(property(spoiltRooms(GOOD).map(bytesOf)), runs(0.3));
  });

  test("rooms with other figures", async () => {
    await fc.assert(property(otherRooms(GOOD).map(bytesOf)), runs(0.3));
  });

  test("slips in the text", async () => {
    await fc.assert(property(slippedRooms(GOOD).map(bytesOf)), runs(0.3));
  });

  test("bytes of any kind", async () => {
    await fc.assert(property(rawBytes(GOOD)), runs(0.1));
  });
});
