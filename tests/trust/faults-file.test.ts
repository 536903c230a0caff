import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { describe, expect, test } from "vitest";
import { type FileResult, replaceFile } from "../../src/output/file.js";
import { ownFolder, typed } from "./command.js";
import { type Fault, type Run, runWith } from "./faults/dying.js";

/*
 * `place --write` dead or refused at every single change on the disk: the room file is the old one or the new one,
 * whole; one that was refused leaves nothing beside it, and what a dead one leaves goes with the next.
 */

const [OLD, NEW, OTHER] = ["old\n".repeat(50), "new\n".repeat(90), "other\n".repeat(70)];
const bytes = (text: string): Uint8Array => Buffer.from(text);

const replaced = (file: string, before: string, after: string): FileResult =>
  replaceFile(file, { before: bytes(before), after: bytes(after) });

/** A room file and a run over it with the fault. */
function struck(fault: Fault | null): Run<FileResult> & { readonly file: string } {
  const file = join(ownFolder(), "room.yaml");
  writeFileSync(file, OLD);
  return { file, ...runWith(fault, () => replaced(file, OLD, NEW)) };
}

/** Letters of which the file consists that each of them writes. */
const WRITERS = ["a", "b", "c", "d"];
const LONG = 300_000;

const held = (file: string): string => readFileSync(file, "utf8");
const beside = (file: string): readonly string[] => readdirSync(join(file, ".."));

const calls = Array.from({ length: struck(null).calls }, (_, index) => index + 1);

test("the changes on the disk are counted", () => {
  // Opened, written, brought to the disk, given its permissions, renamed.
  expect(calls.length).toBeGreaterThanOrEqual(5);
});

test.each([false, true])("killed at any of them (half done: %s)", (half) => {
  for (const at of calls) {
    const { file } = struck({ kind: "death", at, half });
    expect([OLD, NEW]).toContain(held(file));
    expect(replaced(file, held(file), OTHER)).toEqual({ kind: "written" });
    expect(held(file)).toBe(OTHER);
    expect(beside(file)).toEqual(["room.yaml"]);
  }
});

describe.each(["ENOSPC", "EACCES", "EROFS", "EIO", "EDQUOT"])("refused with %s", (code) => {
  test("at any one of them", () => {
    for (const at of calls) {
      const { file, returned } = struck({ kind: "refusal", at, code, lasting: false });
      expect(returned).toEqual({ kind: "unwritable", code });
      expect(held(file)).toBe(OLD);
      expect(beside(file)).toEqual(["room.yaml"]);
    }
  });

  test("at any of them and at all later writing: told as it is", () => {
    const kinds = calls.map((at) => {
      const { file, returned } = struck({ kind: "refusal", at, code, lasting: true });
      expect(held(file)).toBe(returned?.kind === "written" ? NEW : OLD);
      expect(beside(file)).toEqual(["room.yaml"]);
      return returned?.kind;
    });
    expect(kinds[0]).toBe("unwritable");
  });
});

test("four that write again and again: whoever reads it meanwhile finds a whole one", async () => {
  const file = join(ownFolder(), "room.yaml");
  writeFileSync(file, "0".repeat(LONG));
  const running = { count: WRITERS.length };
  const ended = WRITERS.map(async (letter) => {
    const words = [file, letter, String(LONG), "150"];
    const writer = join(import.meta.dirname, "faults", "file-writer.ts");
    const told = await typed(words, { folder: import.meta.dirname, program: ["--import", "tsx", writer] });
    running.count -= 1;
    return told.out + told.err;
  });
  while (running.count > 0) {
    expect(held(file)).toMatch(/^(.)\1*$/u);
    expect(held(file)).toHaveLength(LONG);
    await setTimeout(1);
  }
  // Written, or changed by another one meanwhile: never refused.
  expect(await Promise.all(ended)).toEqual(WRITERS.map(() => "[]"));
  expect(beside(file)).toEqual(["room.yaml"]);
});
