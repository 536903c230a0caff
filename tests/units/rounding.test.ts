import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { roundInto } from "../../src/units/rounding.js";

const SIXTEENTH = 25.4 / 16;

describe("roundInto", () => {
  test.each([
    [100.4, { lowMm: 0, highMm: 200, stepMm: 1 }, 100],
    [100.6, { lowMm: 0, highMm: 100.7, stepMm: 1 }, 100],
    [100.2, { lowMm: 100.1, highMm: 105, stepMm: 1 }, 101],
    [50, { lowMm: 100.1, highMm: 105, stepMm: 1 }, 101],
    [500, { lowMm: 100.1, highMm: 105.9, stepMm: 1 }, 105],
    [100.5, { lowMm: 0, highMm: 200, stepMm: 1 }, 101],
    [-100.5, { lowMm: -200, highMm: 0, stepMm: 1 }, -101],
    [100.6, { lowMm: Number.NEGATIVE_INFINITY, highMm: Number.POSITIVE_INFINITY, stepMm: 1 }, 101],
    // An end that is itself on a step belongs to the range, whatever the last digit of its double.
    [30, { lowMm: 3 * SIXTEENTH + 1e-9, highMm: 3 * SIXTEENTH + 1, stepMm: SIXTEENTH }, 3 * SIXTEENTH],
    [3, { lowMm: 0, highMm: 3 * SIXTEENTH - 1e-9, stepMm: 3 * SIXTEENTH }, 3 * SIXTEENTH],
    [0, { lowMm: 1.2340005, highMm: 2, stepMm: 0.001 }, 1.234],
    [2, { lowMm: 0, highMm: 1.2339995, stepMm: 0.001 }, 1.234],
    [0.1, { lowMm: 0.3, highMm: 0.9, stepMm: 0.3 }, 0.3],
    [50, { lowMm: 100.1, highMm: 100.9, stepMm: 1 }, null],
    [50, { lowMm: 101, highMm: 100, stepMm: 1 }, null],
  ])("%f into %j is %s", (mm, range, rounded) => {
    const result = roundInto(mm, range);
    if (rounded === null) expect(result).toBeNull();
    else expect(result).toBeCloseTo(rounded, 9);
  });

  test("is the nearest of all steps inside, found by trying each", () => {
    // Thousandths of a mm: each lies on a step or well off it, so that the tolerance is never what decides.
    const mm = fc.integer({ min: -300_000, max: 300_000 }).map((thousandths) => thousandths / 1000);
    fc.assert(
      fc.property(mm, mm, mm, fc.constantFrom(1, 0.5, SIXTEENTH, SIXTEENTH / 2), (wanted, a, b, stepMm) => {
        const range = { lowMm: Math.min(a, b), highMm: Math.max(a, b), stepMm };
        const inside = Array.from({ length: 1201 }, (_, index) => (index - 600) * stepMm).filter(
          (step) => step >= range.lowMm - 1e-6 && step <= range.highMm + 1e-6,
        );
        const result = roundInto(wanted, range);
        if (inside.length === 0) {
          expect(result).toBeNull();
          return;
        }
        const least = Math.min(...inside.map((step) => Math.abs(step - wanted)));
        expect(result).not.toBeNull();
        expect(inside.some((step) => Math.abs(step - (result ?? Number.NaN)) < 1e-9)).toBe(true);
        expect(Math.abs((result ?? Number.NaN) - wanted)).toBeCloseTo(least, 5);
      }),
    );
  });

  test("nothing is plain zero, never a negative one", () => {
    for (const mm of [-0.2, 0.2, -5]) expect(roundInto(mm, { lowMm: -0.5, highMm: 5, stepMm: 1 })).toBe(0);
  });

  test("NaN is refused", () => {
    expect(() => roundInto(Number.NaN, { lowMm: 0, highMm: 1, stepMm: 1 })).toThrow(RangeError);
  });
});
