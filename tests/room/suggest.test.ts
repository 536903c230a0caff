import { describe, expect, test } from "vitest";
import { suggest } from "../../src/room/suggest.js";

const WALLS = ["left", "front", "right", "back"];

describe("what was meant", () => {
  test("letters left out, added, changed or swapped", () => {
    for (const typed of ["frnt", "fronnt", "frunt", "fornt", "Front", "FRONT"]) {
      expect(suggest(typed, WALLS), typed).toBe("front");
    }
  });

  test("letters out of order before letters that are others", () => {
    expect(suggest("lenght", ["length", "height"])).toBe("length");
    expect(suggest("2x01", ["2x10", "2x4"])).toBe("2x10");
  });

  test("longer words may have more slips", () => {
    expect(suggest("mesurd_to", ["width", "measured_to"])).toBe("measured_to");
    expect(suggest("xyz", ["abc", "width"])).toBe(null);
    expect(suggest("yes", ["key", "true"])).toBe(null);
    expect(suggest("west", WALLS)).toBe(null);
  });

  test("no guess between two that are as near, nor where nothing of the word is left", () => {
    expect(suggest("FX", ["FL", "FR"])).toBe(null);
    expect(suggest("a", ["b"])).toBe(null);
    expect(suggest("", WALLS)).toBe(null);
    expect(suggest("left", [])).toBe(null);
  });
});
