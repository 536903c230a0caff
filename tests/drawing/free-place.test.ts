import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Item, Window } from "../../src/drawing/drawing.js";
import { freeSpots, groundOf, isFree } from "../../src/drawing/free-place.js";
import { circle, line, point } from "../../src/drawing/pen.js";

const WITHIN = { x: 0, y: 0, widthMm: 180, heightMm: 240 };
const along = fc.double({ min: -20, max: 260, noNaN: true });
const long = fc.double({ min: 1, max: 120, noNaN: true });
const spot = fc.record({ x: along, y: along });
const box: fc.Arbitrary<Window> = fc.record({ x: along, y: along, widthMm: long, heightMm: long });
const ink: fc.Arbitrary<Item> = fc.oneof(
  fc.tuple(spot, spot).map(([from, to]) => line(from, to)),
  fc.tuple(spot, long).map(([centre, mm]) => circle(point(centre.x, centre.y), mm / 2)),
);

describe("spots of one size tried one after the other", () => {
  it("are free where each by itself is, whatever was tried before", () => {
    const grounds = fc.tuple(fc.array(ink, { maxLength: 4 }), fc.array(box, { maxLength: 5 }));
    let [free, taken] = [0, 0];
    fc.assert(
      fc.property(grounds, long, long, fc.array(spot, { minLength: 1 }), (on, widthMm, heightMm, spots) => {
        const ground = groundOf(on[0], WITHIN, on[1]);
        const isFreeAt = freeSpots({ widthMm, heightMm }, ground);
        for (const at of spots) {
          const alone = isFree({ ...at, widthMm, heightMm }, ground);
          expect(isFreeAt(at)).toBe(alone);
          if (alone) free += 1;
          else taken += 1;
        }
      }),
    );
    expect(free).toBeGreaterThan(0);
    expect(taken).toBeGreaterThan(0);
  });
});
