import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { wordsIn } from "../../src/words/words.js";
import { ownFolder } from "./command.js";
import { drawnInTime, inTime, noMoreQuestions } from "./fuzz/asked.js";
import { GOOD } from "./fuzz/good.js";
import { holdsOfJson, holdsOfPlaces, holdsOfWords } from "./fuzz/holds.js";
import { type Pair, revisions, strangers } from "./fuzz/pairs.js";
import { LONG, runs, SEED } from "./fuzz/runs.js";
import type { Answer } from "./fuzz/target.js";

/*
 * `compare` of any two files: both ways round what came one way is gone the other way; a room and itself are the same,
 * in whatever hand they are written.
 */

const tried = { pairs: 0, usable: 0, same: 0, slowestMs: 0 };
afterAll(() => {
  noMoreQuestions();
  console.log(`seed ${SEED}: ${JSON.stringify(tried)}`);
});

/** A folder with the two files, and how many loudspeakers they have. */
interface Both {
  readonly folder: string;
  readonly loudspeakers: number;
}

async function compare({ folder, loudspeakers }: Both, ...words: readonly string[]): Promise<Answer> {
  const answer = await drawnInTime(loudspeakers, folder, "compare", ...words);
  tried.slowestMs = Math.max(tried.slowestMs, Math.round(answer.processorMs));
  return answer;
}

interface Finding {
  readonly code: string;
  readonly speaker: string | null;
  readonly surface: string | null;
}

interface Change {
  readonly id?: string;
  readonly surface?: string;
  readonly what: string;
}

interface Compared {
  readonly openings: readonly Change[];
  readonly surfaces: readonly Change[];
  readonly findings: {
    readonly new: readonly Finding[];
    readonly gone: readonly Finding[];
    readonly changed: readonly object[];
  };
  readonly sheets: readonly { readonly name: string; readonly what: string; readonly by_name: boolean }[];
}

async function holds(pair: Pair): Promise<void> {
  const folder = ownFolder();
  try {
    const files = { "old.yaml": pair.old, "new.yaml": pair.new };
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes);
    tried.pairs += 1;
    const counts = [];
    for (const name of Object.keys(files)) counts.push(await loudspeakersIn(folder, name));
    const [old = null, now = null] = counts;
    const both = { folder, loudspeakers: (old ?? 0) + (now ?? 0) };
    await holdsOfPair(both, pair, old === null || now === null);
    if (now !== null) await holdsOfItself({ folder, loudspeakers: 2 * now }, pair);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Null where the file cannot be used. */
async function loudspeakersIn(folder: string, name: string): Promise<number | null> {
  const { code, out } = await inTime(folder, "check", name, "--json");
  return code === 2 ? null : JSON.parse(out).speakers.length;
}

async function holdsOfPair(both: Both, pair: Pair, isUnusable: boolean): Promise<void> {
  const sources = { "old.yaml": textOf(pair.old), "new.yaml": textOf(pair.new) };
  const all = Object.values(sources).join("\n");
  const told = await compare(both, "old.yaml", "new.yaml", "--language", pair.language);
  holdsOfWords(told, all);
  expect(told.code).toBe(isUnusable ? 2 : 0);
  if (isUnusable) holdsOfPlaces(told, sources);
  if (isUnusable) return;
  tried.usable += 1;
  const there = await compared(both, "old.yaml", "new.yaml");
  const andBack = await compared(both, "new.yaml", "old.yaml");
  expect(came(there)).toEqual(went(andBack));
  expect(went(there)).toEqual(came(andBack));
  expect(drawnOtherwise(there)).toEqual(drawnOtherwise(andBack));
  if (pair.isSame) holdsOfNothing(told, pair.language);
}

const textOf = (bytes: Uint8Array): string => Buffer.from(bytes).toString();

async function compared(both: Both, old: string, now: string): Promise<Compared> {
  const answer = await compare(both, old, now, "--json");
  holdsOfJson(answer);
  return JSON.parse(answer.out);
}

/** Openings, surfaces, findings and sheets that only the new room has. */
const came = ({ openings, surfaces, findings, sheets }: Compared) => [
  openings
    .filter(({ what }) => what === "added")
    .map(({ id }) => id)
    .sort(),
  surfaces
    .filter(({ what }) => what === "added")
    .map(({ surface }) => surface)
    .sort(),
  findings.new.map(subject).sort(),
  sheets
    .filter(({ what }) => what === "new")
    .map(({ name }) => name)
    .sort(),
];

/** Those that only the old one has. */
const went = ({ openings, surfaces, findings, sheets }: Compared) => [
  openings
    .filter(({ what }) => what === "gone")
    .map(({ id }) => id)
    .sort(),
  surfaces
    .filter(({ what }) => what === "gone")
    .map(({ surface }) => surface)
    .sort(),
  findings.gone.map(subject).sort(),
  sheets
    .filter(({ what }) => what === "gone")
    .map(({ name }) => name)
    .sort(),
];

const subject = ({ code, speaker, surface }: Finding): string => `${code} ${speaker} ${surface}`;

const drawnOtherwise = ({ sheets, findings }: Compared) => [
  sheets
    .filter(({ what }) => what === "changed")
    .map(({ name }) => name)
    .sort(),
  findings.changed.length,
];

/** A room and a copy of its file. */
async function holdsOfItself(both: Both, pair: Pair): Promise<void> {
  writeFileSync(join(both.folder, "copy.yaml"), pair.new);
  const told = await compare(both, "new.yaml", "copy.yaml", "--language", pair.language);
  holdsOfWords(told, textOf(pair.new));
  holdsOfNothing(told, pair.language);
  tried.same += 1;
}

/** Under a title that nothing is, and that no sheet is to be printed. */
function holdsOfNothing({ out }: Answer, language: Pair["language"]): void {
  const { nothing, sheets } = wordsIn([language]).compare;
  expect(out.trimEnd().split("\n").slice(1)).toEqual([nothing, "", expect.any(String), `  ${sheets.none}`]);
}

const property = (pairs: fc.Arbitrary<Pair>) => fc.asyncProperty(pairs, holds);

const kept = ([pair]: [Pair]) => ({ "old.yaml": pair.old, "new.yaml": pair.new });

describe("what is otherwise between any two files", LONG, () => {
  test("revisions of a room", async () => {
    await fc.assert(property(revisions(GOOD)), runs(0.65, kept, 24));
  });

  test("a room and another one, with slips or without, or bytes", async () => {
    await fc.assert(property(strangers(GOOD)), runs(0.35, kept, 24));
  });
});
