import { describe, expect, test } from "vitest";
import { bilingual } from "../../src/words/bilingual.js";
import { english } from "../../src/words/english/index.js";
import { spanish } from "../../src/words/spanish/index.js";

/** Every phrase of a catalogue by its path; functions count as phrases. */
function phrases(catalogue: object, path = ""): [string, unknown][] {
  return Object.entries(catalogue).flatMap(([key, value]): [string, unknown][] => {
    const at = path === "" ? key : `${path}.${key}`;
    return typeof value === "object" && value !== null ? phrases(value, at) : [[at, value]];
  });
}

describe("the catalogue", () => {
  const first = phrases(english);
  const second = new Map(phrases(spanish));

  test("says everything in both languages", () => {
    expect(first.length).toBeGreaterThan(100);
    expect([...second.keys()].sort()).toEqual(first.map(([path]) => path).sort());
    for (const [path, phrase] of first) expect(typeof second.get(path), path).toBe(typeof phrase);
  });

  test("has no empty phrase", () => {
    for (const [path, phrase] of [...first, ...second]) {
      if (typeof phrase === "string") expect(phrase.trim(), path).not.toBe("");
    }
  });

  test("says a phrase once where both languages have the same words, else both", () => {
    const both = bilingual(
      { a: "cable", b: "ceiling", c: (n: number) => `${n} holes` },
      { a: "cable", b: "techo", c: (n: number) => `${n} hoyos` },
    );
    expect(both.a).toBe("cable");
    expect(both.b).toBe("ceiling / techo");
    expect(both.c(3)).toBe("3 holes / 3 hoyos");
  });
});
