import fc from "fast-check";
import { expect, it } from "vitest";
import type { Side } from "../../src/drawing/running-chain.js";
import { LINE_PITCH } from "../../src/drawing/text-block.js";
import { surround } from "../../src/sheets/marking/surround.js";

const HEIGHTS = { smallMm: 2.5, wallMm: 3.5, idMm: 3.5 };
const SIDES: readonly Side[] = ["left", "right", "top", "bottom"];

/** A square with a chain of figures on one side, and the names of two edges there. */
function square(side: Side, longMm: number, count: number) {
  const corner = { u: 0, v: 0 };
  const [right, up] = [
    { u: longMm, v: 0 },
    { u: 0, v: longMm },
  ];
  const marks = Array.from({ length: count }, (_, index) => {
    const mm = (longMm * index) / count;
    return { at: { u: mm, v: mm }, lines: ["a long figure"], face: "regular", kind: "mark" } as const;
  });
  return {
    outline: [corner, right, { u: longMm, v: longMm }, up],
    edges: [
      { name: "LEFT wall of some length", from: corner, to: up },
      { name: "BACK wall of some length", from: corner, to: right },
    ],
    chains: [{ side, marks, extended: [], writeMm: 15 }],
    caption: null,
  };
}

it("as many figures find room wherever on the page a drawing lies, also where they only just do", () => {
  const place = fc.double({ min: 0, max: 400, noNaN: true });
  let all = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...SIDES),
      fc.integer({ min: 2, max: 40 }),
      fc.constantFrom(1, 12, 48),
      fc.tuple(place, place),
      (side, count, ratio, [x, y]) => {
        // What that many need at 2.5 mm, 0.5 mm apart, where they may run over by 2 mm at both ends.
        const longMm = count * 2.5 * LINE_PITCH + 0.5 * (count - 1) - 4;
        const sketch = square(side, longMm * ratio, count);
        const dropped = (at: { x: number; y: number }) =>
          surround(sketch, { ratio, heights: HEIGHTS }, at).dropped;
        const atZero = dropped({ x: 0, y: 0 });
        if (atZero === 0) all += 1;
        expect(dropped({ x, y })).toBe(atZero);
      },
    ),
    { numRuns: 300 },
  );
  expect(all).toBeGreaterThan(30);
});
