import fc from "fast-check";
import { expect, test } from "vitest";
import { inchesInMm } from "../../src/units/definitions.js";
import { parseLength } from "../../src/units/length.js";

test("inchesInMm gives the same double as the written length, for every 64th of an inch to 100 ft", () => {
  fc.assert(
    fc.property(fc.integer({ min: -76_800, max: 76_800 }), (count) => {
      expect({ ok: true, mm: inchesInMm(count / 64) }).toEqual(parseLength(`${count}/64"`));
    }),
    { numRuns: 1000 },
  );
});
