import { describe, expect, test } from "vitest";
import {
  joistHoleMm,
  joistNotchMm,
  needsNailPlate,
  plateNeedsTie,
  studHoleMm,
  studNotchMm,
} from "../../src/standards/boring-limits.js";
import { LUMBER } from "../../src/standards/lumber.js";

const INCH = 25.4;
const inches = (mm: number): number => mm / INCH;

/* IRC R502.8.1 worked for actual sizes; the 2x10 row is also a published worked example (1.54, 2.31, 3.08 in). */
describe("joists", () => {
  test.each([
    ["2x4", 0, 0.583, 0.875],
    ["2x6", 1.5, 0.917, 1.375],
    ["2x8", 2.417, 1.208, 1.812],
    ["2x10", 3.083, 1.542, 2.312],
    ["2x12", 3.75, 1.875, 2.812],
  ] as const)("%s: hole %s in, notch %s in, at the ends %s in", (name, hole, notch, end) => {
    const { depthMm } = LUMBER[name];
    expect(inches(joistHoleMm(depthMm))).toBeCloseTo(hole, 3);
    expect(Math.abs(inches(joistNotchMm(depthMm).outerMm) - notch)).toBeLessThan(6e-4);
    expect(Math.abs(inches(joistNotchMm(depthMm).endMm) - end)).toBeLessThan(6e-4);
  });
});

/* IRC R602.6. */
describe("studs", () => {
  test.each([
    ["2x4", 1.4, 2.1, 0.875, 1.4],
    ["2x6", 2.2, 3.3, 1.375, 2.2],
  ] as const)(
    "%s: bearing %s in, else %s in; notch %s and %s in",
    (name, bearing, other, notch, otherNotch) => {
      const { depthMm } = LUMBER[name];
      expect(inches(studHoleMm(depthMm, true))).toBeCloseTo(bearing, 9);
      expect(inches(studHoleMm(depthMm, false))).toBeCloseTo(other, 9);
      expect(inches(studNotchMm(depthMm, true))).toBeCloseTo(notch, 9);
      expect(inches(studNotchMm(depthMm, false))).toBeCloseTo(otherNotch, 9);
    },
  );

  test("the edge of a hole stays 5/8 in from a thin stud's edge", () => {
    expect(inches(studHoleMm(2 * INCH, false))).toBeCloseTo(0.75, 9);
  });
});

/* NEC 300.4(A)(1): in a 2x4 the largest hole without a plate is 1 in, in a 2x6 3 in. */
test.each([
  ["2x4", 1],
  ["2x6", 3],
] as const)("%s: no nail plate up to %s in", (name, most) => {
  expect(needsNailPlate(LUMBER[name].depthMm, most * INCH)).toBe(false);
  expect(needsNailPlate(LUMBER[name].depthMm, most * INCH + 0.1)).toBe(true);
});

test("IRC R602.6.1: past half a plate's width it is tied", () => {
  expect(plateNeedsTie(89, 44.5)).toBe(false);
  expect(plateNeedsTie(89, 44.6)).toBe(true);
});
