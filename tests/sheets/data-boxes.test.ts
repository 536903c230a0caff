import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxesLater, type Datum, dataBoxes, leastBoxes } from "../../src/sheets/template/data-boxes.js";

const words = fc.stringMatching(/^[A-Z0-9]{1,9}( [A-Z0-9/]{1,9}){0,4}$/);
const datum: fc.Arbitrary<Datum> = fc.record({
  label: words,
  main: words,
  others: fc.option(words),
  leastMm: fc.constantFrom(3.5, 5),
});
const data = fc.array(datum, { minLength: 1, maxLength: 7 });

/** Widths of so many columns to the last digit, as templates try them, and any others. */
const widths = fc.oneof(
  fc
    .integer({ min: 1, max: 7 })
    .chain((columns) => fc.constantFrom(...[1, 1.2, 1.4].map((wider) => columns * wider))),
  fc.double({ min: 1, max: 8, noNaN: true }),
);

describe("boxes of figures", () => {
  it("are drawn as high as they were measured, in as few rows as go, and never lower than was said", () => {
    fc.assert(
      fc.property(data, widths, (those, times) => {
        const least = leastBoxes(those);
        const place = { x: 3, y: 7, widthMm: times * least.columnMm };
        const { heightMm, draw } = boxesLater(those, place);
        expect(dataBoxes(those, place)).toEqual({ heightMm, items: draw() });
        expect(least.heightMm(place.widthMm)).toBeLessThanOrEqual(heightMm);
        const frames = draw().flatMap((item) => (item.kind === "rectangle" ? [item] : []));
        expect(frames).toHaveLength(those.length);
        const rows = new Set(frames.map(({ corner }) => corner.y)).size;
        expect(rows).toBe(Math.ceil(those.length / Math.floor(place.widthMm / (least.columnMm - 0.1))));
        const foot = Math.max(...frames.map(({ corner, heightMm: high }) => corner.y + high));
        expect(foot - place.y).toBeCloseTo(heightMm, 9);
      }),
    );
  });

  it("stand in so many columns in so many times one column, whatever is lost in the last digit", () => {
    fc.assert(
      fc.property(data, fc.integer({ min: 1, max: 7 }), (those, columns) => {
        const least = leastBoxes(those);
        const rowMm = least.heightMm(1) / those.length;
        const rows = least.heightMm(columns * least.columnMm) / rowMm;
        expect(rows).toBeCloseTo(Math.ceil(those.length / columns), 9);
      }),
    );
  });
});
