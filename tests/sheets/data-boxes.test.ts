import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxesLater, type Datum, dataBoxes, leastBoxMm } from "../../src/sheets/template/data-boxes.js";

const words = fc.stringMatching(/^[A-Z0-9]{1,9}( [A-Z0-9/]{1,9}){0,4}$/);
const datum: fc.Arbitrary<Datum> = fc.record({
  label: words,
  main: words,
  others: fc.option(words),
  leastMm: fc.constantFrom(3.5, 5),
});
const data = fc.array(datum, { minLength: 1, maxLength: 7 });

describe("boxes of figures", () => {
  it("are drawn as high as they were measured, and never lower than the least box in as few rows as go", () => {
    fc.assert(
      fc.property(data, fc.double({ min: 1, max: 8, noNaN: true }), (those, times) => {
        const least = leastBoxMm(those);
        const place = { x: 3, y: 7, widthMm: least.widthMm * times };
        const { heightMm, draw } = boxesLater(those, place);
        expect(dataBoxes(those, place)).toEqual({ heightMm, items: draw() });
        const columns = Math.floor(place.widthMm / (least.widthMm - 0.1));
        expect(heightMm).toBeGreaterThanOrEqual(Math.ceil(those.length / columns) * least.heightMm);
        const frames = draw().flatMap((item) => (item.kind === "rectangle" ? [item] : []));
        expect(frames).toHaveLength(those.length);
        const foot = Math.max(...frames.map(({ corner, heightMm: high }) => corner.y + high));
        expect(foot - place.y).toBeCloseTo(heightMm, 9);
      }),
    );
  });
});
