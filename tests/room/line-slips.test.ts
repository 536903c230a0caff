import { describe, expect, test } from "vitest";
import { hasGlyph } from "../../src/drawing/coverage.js";
import { complaintsAbout } from "./complaining.js";

/*
 * Slips of typing that YAML has no name for: the place is where a person sees what to mend, the only one that is told.
 */

const told = (text: string): readonly (readonly unknown[])[] =>
  complaintsAbout(text, hasGlyph).map(({ line, column, code, figures }) => [
    line,
    column,
    code === "not-yaml" ? Reflect.get(figures, "slip") : code,
  ]);

describe("told once, where it stands", () => {
  test.each([
    ["a mark of two versions", "a: 1\n<<<<<<< HEAD\nb: 1\n=======\nb: 2\n>>>>>>> x\n", 2, 1, "merge-mark"],
    [
      "the same with other line ends",
      "a: 1\r\n<<<<<<< HEAD\r\nb: 1\r\n=======\r\nb: 2\r\n",
      2,
      1,
      "merge-mark",
    ],
    ["only the last mark left", "a: 1\nb: 2\n>>>>>>> x\nc: 3\n", 3, 1, "merge-mark"],
    ["an odd space before a key", "a:\n\u00a0\u00a0b: 1\n  c: 2\n", 2, 1, "odd-space"],
    ["an odd space after plain ones", "a:\n  b: 1\n \u2009c: 2\n  d: 3\n", 3, 2, "odd-space"],
    ["an odd space behind a colon", "a:\n  b:\u00a01\n  c: 2\n", 2, 5, "odd-space"],
    ["one that has no width, comments between", "a:\n  b:\u200b1\n\n  # c\n  c: 2\n", 2, 5, "odd-space"],
    ["a file that begins with an empty line", "\na:\n  b:\u00a01\n  c: 2\n", 3, 5, "odd-space"],
    ["a dash without a space", "a:\n  - b: 1\n  -{ b: 2 }\n", 3, 3, "dash"],
    ["no dash", "a:\n  - { b: 1 }\n    { b: 2 }\n", 3, 5, "dash"],
    ["an entry on its key's line", "a: - { b: 1 }\n", 1, 4, "dash"],
    ["an entry among keys", "a:\n  b: 1\n  - c: 2\n", 3, 3, "dash-among-keys"],
    ["round brackets", "a: { b: ( c: 1, d: 2 ) }\n", 1, 9, "round-bracket"],
    ["a semicolon", "a: { b: 1; c: 2 }\n", 1, 10, "semicolon"],
  ] as const)("%s", (_name, text, line, column, slip) => {
    expect(told(text)).toEqual([[line, column, slip]]);
  });
});

test("what a text may hold is no slip where it stands", () => {
  const slips = (text: string) => told(text).map(([, , code]) => code);
  expect(slips("job: { name: 'a; (b) ======= - c' }\n")).not.toContain("merge-mark");
  expect(slips("call: sala\u00a01\n")).not.toContain("odd-space");
});
