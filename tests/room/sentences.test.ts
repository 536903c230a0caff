import { describe, expect, test } from "vitest";
import type { Complaint } from "../../src/findings/complaint.js";
import { complaintText } from "../../src/words/complaint-text.js";
import { english } from "../../src/words/english/index.js";
import { wordsIn } from "../../src/words/words.js";
import { complaintsAbout } from "./complaining.js";
import { changed, FULL_ROOM } from "./full-room.js";
import { SLIPS, slipped } from "./slips.js";

/** Files that are wrong as a whole, or in a text; the other codes come from the slips. */
const FILES: readonly (string | Uint8Array)[] = [
  "x".repeat(1_000_001),
  Uint8Array.from([0xff]),
  "",
  "job: [",
  "%YAML 1.1\n---\na: 1",
  "a: 1\n---\nb: 2\n",
  "[".repeat(100),
  "- 1\n".repeat(40_000),
  "a: *b",
  "a: !b c",
  "[a]: b",
  "- a",
  Array.from({ length: 200 }, (_, index) => `key-${index}: 1`).join("\n"),
  changed("name: Willow Bend snug", 'name: "a\\tb"'),
  changed(
    "  measured_to: framing",
    `  measured_to: framing\n  ceilings:\n    - { name: all, corners: [[0, 0], [13' 4", 0], [13' 4", 18' 8"], [0, 18' 8"]], height: 7' }`,
  ),
];

const complaints: readonly Complaint[] = [
  ...FILES.flatMap((file) => complaintsAbout(file)),
  ...Object.entries(SLIPS).flatMap(([name, slip]) => complaintsAbout(slipped(name, slip).text)),
];

const sentence = (language: "en" | "es", text: string): string | undefined => {
  const [complaint] = complaintsAbout(text);
  return complaint === undefined ? undefined : complaintText(wordsIn([language]), complaint);
};

test("every complaint that there is comes up here", () => {
  const codes = new Set(complaints.map(({ code }) => code));
  expect(
    Object.keys(english.complaints.phrase).filter((code) => !codes.has(code as Complaint["code"])),
  ).toEqual([]);
});

describe("sentences", () => {
  test("say something of their own in each language, with what was typed and what to type", () => {
    for (const complaint of complaints) {
      const [en, es] = (["en", "es"] as const).map((language) =>
        complaintText(wordsIn([language]), complaint),
      );
      if (en === undefined || es === undefined) throw new Error("two languages wanted");
      expect(en).not.toBe(es);
      for (const said of [en, es]) {
        expect(said).not.toMatch(/undefined|null\b|NaN|\[object|function/u);
        expect(said.length).toBeLessThan(300);
        expect(said).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
        const { figures } = complaint;
        const quoted = [
          "typed" in figures ? figures.typed : null,
          "key" in figures ? figures.key : null,
          "suggestion" in figures ? figures.suggestion : null,
          "instead" in figures ? figures.instead : null,
          ...("ways" in figures ? figures.ways : []),
        ];
        const wanted = quoted.filter((text) => text !== null && text !== "");
        // What is measured is said by what to write where the text itself says nothing.
        for (const text of complaint.code === "reference-seats" ? [] : wanted) expect(said).toContain(text);
      }
    }
  });

  test("a bare number shows the ways to write it", () => {
    const text = changed(`width: 13' 4"`, "width: 9");
    expect(sentence("en", text)).toBe('`9` has no unit; write `9"`, `9 mm`, `9 cm` or `9 ft`');
    expect(sentence("es", text)).toBe('`9` no tiene unidad; escriba `9"`, `9 mm`, `9 cm` o `9 ft`');
  });

  test("a slip of typing shows what was meant", () => {
    expect(sentence("en", changed("on: front, at: { left: 3'", "on: front, at: { lft: 3'"))).toBe(
      "there is no wall `lft`; did you mean `left`?",
    );
    expect(sentence("en", changed("clamp_reach: 1/2", "clamp_reech: 1/2"))).toContain("`clamp_reach`");
  });

  test("what cannot be shown is written out", () => {
    expect(sentence("en", changed("name: Willow Bend snug", "name: a\u202eb"))).toBe(
      "this text holds U+202E RIGHT-TO-LEFT OVERRIDE, which turns the direction of writing; type the text again without it",
    );
    const key = changed("units: imperial", '"a\\u202e\\x1b[31m": 1\nunits: imperial');
    expect(sentence("en", key)).toContain("`aU+202EU+001B[31m` is no key here");
    const long = changed("units: imperial", `units: ${"x".repeat(500)}`);
    expect(sentence("en", long)).toMatch(/^`x{48}…` cannot stand here/u);
  });

  test("and so is any key that somebody spoilt", () => {
    const keys = [...FULL_ROOM.matchAll(/(?<=[{,] |^ *)[a-z_]+(?=: )/gmu)];
    expect(keys.length).toBeGreaterThan(100);
    for (const { 0: key, index } of keys) {
      const after = FULL_ROOM.slice(index + key.length);
      const text = `${FULL_ROOM.slice(0, index)}"${key.slice(0, 1)}\\u0017${key.slice(1)}"${after}`;
      const told = complaintsAbout(text);
      expect(told.length, key).toBeGreaterThan(0);
      for (const complaint of told)
        expect(complaintText(wordsIn(["en"]), complaint), key).not.toMatch(/[\p{Cc}\p{Cf}]/u);
    }
  });

  test("a possible range is told with the value", () => {
    expect(sentence("en", changed(`width: 13' 4"`, "width: 134 m"))).toBe(
      "`134 m` is not possible here: it must be from 0.5 m to 100 m; check the figure and its unit",
    );
  });
});

test("the room itself is fine", () => {
  expect(complaintsAbout(FULL_ROOM)).toEqual([]);
});
