import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { hashesBelow, ownFolder } from "./command.js";
import { asked, noMoreQuestions, roomIn } from "./fuzz/asked.js";
import { GOOD } from "./fuzz/good.js";
import { holdsOfWords } from "./fuzz/holds.js";
import { LONG, runs, SEED } from "./fuzz/runs.js";
import { commandLines } from "./fuzz/typed.js";

/*
 * Whatever is typed behind a command: an answer in words, an exit code that the README knows, and where it is 2 a
 * folder as it was.
 */

const tried = { lines: 0, answered: 0 };
afterAll(() => {
  noMoreQuestions();
  console.log(`seed ${SEED}: ${JSON.stringify(tried)}`);
});

let folder = "";
beforeAll(() => {
  folder = ownFolder();
});

/** A room, and a folder that is no room file. */
function begin(): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(join(folder, "folder.yaml"), { recursive: true });
  roomIn(folder, GOOD[0] ?? "");
}

async function holds(words: readonly string[]): Promise<void> {
  begin();
  const before = hashesBelow(folder);
  const answer = await asked(folder, ...words);
  tried.lines += 1;
  holdsOfWords(answer, words.join("\n"));
  if (answer.code !== 2) tried.answered += 1;
  if (answer.code === 2) {
    expect(answer.err + answer.out).toMatch(/^(?:baymark: \S|Usage: |Uso: |\{)/mu);
    // Of several rooms those that can be printed are.
    const isPrinted = [...hashesBelow(folder).keys()].some((path) => path.endsWith("packet.json"));
    if (!isPrinted) expect(hashesBelow(folder)).toEqual(before);
  }
  // The room file is whoever wrote it's own, but for the places in it.
  if (!words.includes("--write")) expect(readFileSync(room(), "utf8")).toBe(GOOD[0]);
  const pdfs = words[0] === "ruler" ? filesBelow().filter((path) => path !== room()) : [];
  for (const path of pdfs) expect(readFileSync(path, "latin1")).toMatch(/^%PDF-.*%%EOF\s*$/su);
}

const room = (): string => join(folder, "room.yaml");
const filesBelow = (): readonly string[] => [...hashesBelow(folder).keys()].map((path) => join(folder, path));

const kept = ([words]: [readonly string[]]) => ({ "typed.json": JSON.stringify(words) });

describe("whatever is typed", LONG, () => {
  test("behind every command", async () => {
    await fc.assert(fc.asyncProperty(commandLines, holds), runs(1, kept, 2));
  });
});
