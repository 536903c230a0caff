import fc from "fast-check";
import { expect, it } from "vitest";
import { figure } from "../../src/output/figure.js";

/** As JavaScript writes the rounded number; adding 0 takes the minus from before nothing. */
const plainly = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0);

it("a figure is the number to a ten-thousandth, as JavaScript writes it", () => {
  const near = fc.double({ min: -400, max: 400, noNaN: true });
  const far = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const small = fc.double({ min: -2e-3, max: 2e-3, noNaN: true });
  const parts = fc.integer({ min: -1e7, max: 1e7 }).map((count) => count / 2e4);
  fc.assert(
    fc.property(fc.oneof(near, far, small, parts), (value) => {
      expect(figure(value)).toBe(plainly(value));
    }),
    { numRuns: 5000 },
  );
  for (const value of [0, -0, 1e6, -1e6, 0.1 + 0.2, 1.00005, -1.00005, 0.00005, -0.00005]) {
    expect(figure(value)).toBe(plainly(value));
  }
});
