import fc from "fast-check";
import { expect, test } from "vitest";
import { exactLength } from "../../src/units/exact.js";
import { parseLength } from "../../src/units/length.js";

test.each([
  [1066.8, "imperial", `3' 6"`],
  [1068.3875, "imperial", `3' 6 1/16"`],
  [1067.196875, "imperial", `3' 6 1/64"`],
  [1607.3, "imperial", "1607.3 mm"],
  [0, "imperial", `0"`],
  [1607, "metric", "1607 mm"],
  [1607.5, "metric", "1607.5 mm"],
  [1068.3875, "metric", "1068.3875 mm"],
] as const)("%d mm, %s first: %s", (mm, units, written) => {
  expect(exactLength(mm, units)).toBe(written);
});

test("what is written is read again as the same length, to a tenth of a micron", () => {
  const lengths = fc.double({ min: 0, max: 100_000, noNaN: true });
  fc.assert(
    fc.property(lengths, fc.constantFrom("imperial", "metric"), (mm, units) => {
      const read = parseLength(exactLength(mm, units));
      expect(read.ok && Math.abs(read.mm - mm)).toBeLessThanOrEqual(1e-4);
    }),
  );
});
