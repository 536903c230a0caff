import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { ownFolder } from "./command.js";
import { bytesOf, rawBytes, slippedRooms, spoiltRooms } from "./fuzz/arbitrary.js";
import { inTimeNoted, noMoreQuestions, roomIn } from "./fuzz/asked.js";
import { askingRooms } from "./fuzz/asking.js";
import { holdsOfFrozen } from "./fuzz/frozen.js";
import { GOOD } from "./fuzz/good.js";
import { holdsOfPlaces, holdsOfWords } from "./fuzz/holds.js";
import { LONG, runs, SEED } from "./fuzz/runs.js";

/*
 * `place --write` on whatever is in a room file: the file is the old one byte for byte or says what was found and
 * everything else that it said; nothing is left beside it; a second run changes nothing.
 */

const tried = { files: 0, usable: 0, written: 0, places: 0, slowestMs: 0 };
afterAll(() => {
  noMoreQuestions();
  console.log(`seed ${SEED}: ${JSON.stringify(tried)}`);
});

const timed = inTimeNoted(tried);

const held = (folder: string): Buffer => readFileSync(join(folder, "room.yaml"));

interface Told {
  readonly speakers: readonly { readonly id: string; readonly placed: string }[];
  readonly findings: readonly { readonly code: string; readonly level: string; readonly speaker: string }[];
}

async function holds(bytes: Uint8Array, chance: number): Promise<void> {
  const folder = ownFolder();
  try {
    roomIn(folder, bytes);
    const source = Buffer.from(bytes).toString();
    tried.files += 1;
    const checked = await timed(folder, "check", "room.yaml", "--json");
    const told: Told | null = checked.code === 2 ? null : JSON.parse(checked.out);
    const locked = chance === 0 ? told?.speakers.find(({ placed }) => placed === "best") : undefined;
    const words = ["place", "room.yaml", "--write", ...(locked === undefined ? [] : ["--lock", locked.id])];
    const answer = await timed(folder, ...words);
    holdsOfWords(answer, source);
    expect(readdirSync(folder)).toEqual(["room.yaml"]);
    if (told === null) {
      expect(answer.code).toBe(2);
      holdsOfPlaces(answer, source);
      expect(held(folder).equals(bytes)).toBe(true);
      return;
    }
    expect(answer.code).not.toBe(2);
    tried.usable += 1;
    await holdsOfTwice(folder, bytes, { told, words });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function holdsOfTwice(
  folder: string,
  before: Uint8Array,
  { told, words }: { told: Told; words: readonly string[] },
): Promise<void> {
  const after = held(folder);
  if (!after.equals(before)) {
    tried.written += 1;
    tried.places += holdsOfFrozen(before, after);
    const again = await timed(folder, "check", "room.yaml", "--json");
    expect(again.code, again.err).not.toBe(2);
    expect(newErrors(told, JSON.parse(again.out))).toEqual([]);
  }
  const second = await timed(folder, ...words);
  holdsOfWords(second, after.toString());
  expect(held(folder).equals(after), held(folder).toString()).toBe(true);
  expect(readdirSync(folder)).toEqual(["room.yaml"]);
}

/** Errors that the file had not before. */
function newErrors(before: Told, after: Told): readonly string[] {
  const errors = ({ findings }: Told): readonly string[] =>
    findings.filter(({ level }) => level === "error").map(({ code, speaker }) => `${speaker} ${code}`);
  const old = new Set(errors(before));
  return errors(after).filter((error) => !old.has(error));
}

const property = (rooms: fc.Arbitrary<Uint8Array>) => fc.asyncProperty(rooms, fc.nat({ max: 4 }), holds);

const kept = ([bytes]: [Uint8Array, number]) => ({ "room.yaml": bytes });

describe("places written into whatever is in a room file", LONG, () => {
  test("rooms that ask, in any hand", async () => {
    await fc.assert(property(askingRooms(GOOD).map(bytesOf)), runs(0.5, kept, 2));
  });

  test("the same with slips, and spoilt rooms", async () => {
    const rooms = fc.oneof(
      askingRooms(GOOD).chain((text) => slippedRooms([text])),
      spoiltRooms(GOOD),
    );
    await fc.assert(property(rooms.map(bytesOf)), runs(0.4, kept, 2));
  });

  test("bytes of any kind", async () => {
    await fc.assert(property(rawBytes(GOOD)), runs(0.1, kept, 2));
  });
});
