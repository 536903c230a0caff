import fc from "fast-check";
import { expect, test } from "vitest";
import { type Body, distanceToBodyMm } from "../../src/geometry/body.js";
import { convexHull } from "../../src/geometry/convex.js";
import { distanceFrom } from "../../src/geometry/distance-from.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";

const at = (u: number, v: number): SurfacePoint => ({ u, v });
const coordinate = fc.integer({ min: -50, max: 50 });
const point = fc.record({ u: coordinate, v: coordinate });

test("is the distance to the body, whatever its form", () => {
  const bodies = fc.record({
    points: fc.array(point, { minLength: 1, maxLength: 7 }),
    radiusMm: fc.nat({ max: 20 }),
  });
  const forms = new Set<number>();
  fc.assert(
    fc.property(bodies, fc.array(point, { minLength: 10, maxLength: 10 }), ({ points, radiusMm }, asked) => {
      const body: Body = { core: convexHull(points), radiusMm };
      forms.add(Math.min(3, body.core.length));
      const distance = distanceFrom(body);
      for (const each of asked) expect(distance(each.u, each.v)).toBeCloseTo(distanceToBodyMm(each, body), 9);
    }),
    { numRuns: 500 },
  );
  // Points, segments and polygons have all come up.
  expect([...forms].sort()).toEqual([1, 2, 3]);
});

test("in line with an edge and past its ends, and to one that has no length", () => {
  const edge = distanceFrom({ core: [at(0, 0), at(300, 400)], radiusMm: 10 });
  // 30 and 40 further on is 50; so is as much before its beginning.
  expect([edge(330, 440), edge(-30, -40), edge(150, 200)].map((mm) => Math.round(mm * 1e9) / 1e9)).toEqual([
    40, 40, -10,
  ]);
  expect(distanceFrom({ core: [at(0, 0), at(0, 0)], radiusMm: 1 })(3, 4)).toBe(4);
});

test("is no less than what is enough where the distance is, and never more than it", () => {
  const bodies = fc.record({
    points: fc.array(point, { minLength: 1, maxLength: 7 }),
    radiusMm: fc.nat({ max: 20 }),
  });
  let isSooner = false;
  fc.assert(
    fc.property(bodies, point, fc.nat({ max: 60 }), ({ points, radiusMm }, { u, v }, enoughMm) => {
      const distance = distanceFrom({ core: convexHull(points), radiusMm });
      const [exact, told] = [distance(u, v), distance(u, v, enoughMm)];
      isSooner ||= told < exact;
      expect(told).toBeLessThanOrEqual(exact + 1e-9);
      if (told < exact) expect(told).toBeGreaterThanOrEqual(enoughMm);
    }),
    { numRuns: 500 },
  );
  expect(isSooner).toBe(true);
});
