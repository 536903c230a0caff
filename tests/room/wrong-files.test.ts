import { join } from "node:path";
import pico from "picocolors";
import { describe, expect, test } from "vitest";
import type { Terminal } from "../../src/commands/terminal.js";
import { complaintLines } from "../../src/commands/told.js";
import { hasGlyph } from "../../src/drawing/coverage.js";
import type { Language } from "../../src/units/language.js";
import { wordsIn } from "../../src/words/words.js";
import { complaintsAbout } from "./complaining.js";
import { UNDERSTOOD_FILES, WRONG_FILES } from "./wrong-files.js";

/*
 * What `check` says of files as people new to them write them. Whoever changes a message reads it here as that
 * person: does it say what is wrong, where, and what to type instead?
 */

const terminal: Terminal = {
  folder: "",
  write: () => undefined,
  tell: () => undefined,
  progress: () => undefined,
  colours: pico.createColors(false),
};

function saidOf(text: string, language: Language): string {
  const words = wordsIn([language]);
  const file = { typed: "room.yaml", source: text };
  return complaintsAbout(text, hasGlyph)
    .map((complaint) => complaintLines(terminal, words, file, complaint))
    .join("");
}

describe.each(["en", "es"] as const)("in %s", (language) => {
  test("every wrong file is told what to type instead", async () => {
    const said = [...WRONG_FILES].map(([name, text]) => `## ${name}\n${saidOf(text, language)}`);
    await expect(said.join("\n")).toMatchFileSnapshot(
      join(import.meta.dirname, `wrong-files.${language}.txt`),
    );
  });

  test("no wrong file passes, and none is scolded at length for one slip", () => {
    for (const [name, text] of WRONG_FILES) {
      const count = complaintsAbout(text, hasGlyph).length;
      expect(count, name).toBeGreaterThan(0);
      expect(count, name).toBeLessThan(13);
    }
  });
});

test.each([...UNDERSTOOD_FILES])("%s: read as it was meant", (_name, text) => {
  expect(complaintsAbout(text, hasGlyph)).toEqual([]);
});
