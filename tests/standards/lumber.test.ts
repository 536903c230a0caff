import { describe, expect, test } from "vitest";
import { isLumberName, LUMBER, LUMBER_NAMES, type LumberName } from "../../src/standards/lumber.js";

// The whole millimetres that public tables of PS 20 print beside the inches.
const PUBLISHED_MM: Readonly<Record<LumberName, readonly [number, number]>> = {
  "2x3": [38, 64],
  "2x4": [38, 89],
  "2x6": [38, 140],
  "2x8": [38, 184],
  "2x10": [38, 235],
  "2x12": [38, 286],
};

describe("lumber, PS 20", () => {
  test.each(LUMBER_NAMES)("%s is its published size to the nearest mm", (name) => {
    const { widthMm, depthMm } = LUMBER[name];
    expect([Math.round(widthMm), Math.round(depthMm)]).toEqual(PUBLISHED_MM[name]);
  });

  // IRC R502.8.1 allows a notch of a sixth of the depth; published for a 2x10: 1.54 in.
  test("a sixth of a 2x10 is the published notch", () => {
    expect(LUMBER["2x10"].depthMm / 6 / 25.4).toBeCloseTo(1.54, 2);
  });

  test("names are known, and nothing else is", () => {
    expect(LUMBER_NAMES).toEqual(Object.keys(LUMBER));
    expect(isLumberName("2x10")).toBe(true);
    for (const other of ["2x7", "2X4", "toString", ""]) expect(isLumberName(other), other).toBe(false);
  });
});
