import fc from "fast-check";
import { expect, test } from "vitest";
import { type Body, distanceToBodyMm } from "../../src/geometry/body.js";
import { chordOf, chordsOf } from "../../src/geometry/chord.js";
import { convexHull } from "../../src/geometry/convex.js";
import { inner, outer, plus, times } from "../../src/geometry/surface-point.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";

const at = (u: number, v: number): SurfacePoint => ({ u, v });
const ALONG_U = { origin: at(0, 3), direction: at(1, 0) };

test("through a disc: half a chord is the root of r^2 less the distance squared, 4 for 5 and 3", () => {
  expect(chordOf({ core: [at(10, 0)], radiusMm: 5 }, ALONG_U)).toEqual([6, 14]);
  expect(chordOf({ core: [at(10, 0)], radiusMm: 3 }, ALONG_U)).toBeNull();
});

test("through a rectangle, with and without its rounded border, and with its sides moved in", () => {
  const core = [at(10, 0), at(30, 0), at(30, 20), at(10, 20)];
  expect(chordOf({ core, radiusMm: 0 }, ALONG_U)).toEqual([10, 30]);
  expect(chordOf({ core, radiusMm: 4 }, ALONG_U)).toEqual([6, 34]);
  expect(chordOf({ core, radiusMm: -2 }, ALONG_U)).toEqual([12, 28]);
  expect(chordOf({ core, radiusMm: -3 }, ALONG_U)).toBeNull();
  expect(chordOf({ core: core.slice(0, 2), radiusMm: -1 }, ALONG_U)).toBeNull();
});

test("a chord holds just the points of its line that lie within the body", () => {
  const place = fc.record({ u: fc.integer({ min: -50, max: 50 }), v: fc.integer({ min: -50, max: 50 }) });
  const body = fc.record({
    core: fc.array(place, { minLength: 1, maxLength: 6 }).map(convexHull),
    radiusMm: fc.integer({ min: -10, max: 40 }),
  });
  const line = fc.record({ origin: place, turn: fc.integer({ min: 0, max: 359 }) });
  let met = 0;
  fc.assert(
    fc.property(body, line, fc.integer({ min: -150, max: 150 }), (one: Body, { origin, turn }, alongMm) => {
      const radians = (turn * Math.PI) / 180;
      const direction = at(Math.cos(radians), Math.sin(radians));
      const chord = chordOf(one, { origin, direction });
      const same = chordsOf(one, direction)(outer(direction, origin));
      const alongOrigin = inner(direction, origin);
      expect(same === null).toBe(chord === null);
      expect((same?.[0] ?? 0) - alongOrigin).toBeCloseTo(chord?.[0] ?? -alongOrigin, 6);
      expect((same?.[1] ?? 0) - alongOrigin).toBeCloseTo(chord?.[1] ?? -alongOrigin, 6);
      const outMm = distanceToBodyMm(plus(origin, times(direction, alongMm)), one);
      if (Math.abs(outMm) < 1e-6) return;
      if (chord !== null) met += 1;
      expect(chord !== null && alongMm > chord[0] && alongMm < chord[1]).toBe(outMm < 0);
    }),
    { numRuns: 2000, seed: 5 },
  );
  expect(met).toBeGreaterThan(500);
});
