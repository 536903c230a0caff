import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Item, Window } from "../../src/drawing/drawing.js";
import { blockedSpots, groundOf, isFree } from "../../src/drawing/free-place.js";
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
  it("are free where each by itself is, whatever was tried before, and none is where they are passed over", () => {
    const grounds = fc.tuple(fc.array(ink, { maxLength: 4 }), fc.array(box, { maxLength: 5 }));
    let [free, taken, passedOver] = [0, 0, 0];
    fc.assert(
      fc.property(grounds, long, long, fc.array(spot, { minLength: 1 }), (on, widthMm, heightMm, spots) => {
        const ground = groundOf(on[0], WITHIN, on[1]);
        const blockedTo = blockedSpots({ widthMm, heightMm }, ground);
        for (const at of spots) {
          const toMm = blockedTo(at);
          expect(toMm === null).toBe(isFree({ ...at, widthMm, heightMm }, ground));
          if (toMm === null) {
            free += 1;
            continue;
          }
          taken += 1;
          if (toMm > at.x) passedOver += 1;
          for (const share of [0.25, 0.5, 0.75, 1]) {
            const x = Math.min(toMm, at.x + share * (toMm - at.x));
            expect(isFree({ x, y: at.y, widthMm, heightMm }, ground)).toBe(false);
          }
        }
      }),
    );
    expect(free).toBeGreaterThan(0);
    expect(taken).toBeGreaterThan(0);
    expect(passedOver).toBeGreaterThan(0);
  });
});
