import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { convexHull, convexSum, mirrored, rectangle } from "../../src/geometry/convex.js";
import {
  distanceToConvexMm,
  distanceToSegmentMm,
  isInside,
  nearestOnSegment,
  offLineMm,
  sidesOf,
} from "../../src/geometry/distance.js";
import { twiceAreaMm2 } from "../../src/geometry/ring.js";
import type { Polygon } from "../../src/geometry/shape.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";

/* Distances to members, edges and outlines, worked by hand with sides of 3, 4 and 5. */

const at = (u: number, v: number): SurfacePoint => ({ u, v });
const SQUARE = [at(0, 0), at(100, 0), at(100, 100), at(0, 100)];

describe("to a member's centre line", () => {
  const line = { from: at(100, 100), to: at(400, 500) };

  test.each([
    // Square to it: 300 along and 400 up, so 4 and 3 aside.
    ["beside its middle", at(250 - 80, 300 + 60), at(250, 300), 100],
    ["on it", at(160, 180), at(160, 180), 0],
    ["before its one end", at(70, 60), at(100, 100), 50],
    ["past its other end", at(430, 540), at(400, 500), 50],
    ["beside its end", at(400 - 40, 500 + 30), at(400, 500), 50],
  ])("%s", (_, point, nearest, mm) => {
    expect(nearestOnSegment(point, line)).toEqual({
      u: expect.closeTo(nearest.u, 9),
      v: expect.closeTo(nearest.v, 9),
    });
    expect(distanceToSegmentMm(point, line)).toBeCloseTo(mm, 9);
    expect(distanceToSegmentMm(point, { from: line.to, to: line.from })).toBeCloseTo(mm, 9);
  });

  test("that has no length is the distance to its point", () => {
    expect(nearestOnSegment(at(3, 4), { from: at(0, 0), to: at(0, 0) })).toEqual(at(0, 0));
    expect(distanceToSegmentMm(at(3, 4), { from: at(0, 0), to: at(0, 0) })).toBe(5);
  });

  test("to the right of it is more than 0, to its left less", () => {
    expect(offLineMm(at(250 + 80, 300 - 60), line)).toBeCloseTo(100, 9);
    expect(offLineMm(at(250 - 80, 300 + 60), line)).toBeCloseTo(-100, 9);
    // The line goes on past its ends.
    expect(offLineMm(at(700 + 80, 900 - 60), line)).toBeCloseTo(100, 9);
  });
});

describe("to a convex outline", () => {
  test.each([
    ["inside, nearest to its left side", at(10, 50), -10],
    ["inside, nearest to its right side", at(95, 50), -5],
    ["inside, nearest to its lower side", at(50, 20), -20],
    ["inside, nearest to its upper side", at(50, 70), -30],
    ["on its border", at(100, 40), 0],
    ["on a corner", at(100, 100), 0],
    ["beside it", at(130, 50), 30],
    ["off a corner", at(130, 140), 50],
    ["off the corner across", at(-30, -40), 50],
  ])("%s", (_, point, mm) => expect(distanceToConvexMm(point, SQUARE)).toBeCloseTo(mm, 9));

  test("that is only a point or a line is never negative", () => {
    expect(distanceToConvexMm(at(3, 4), [at(0, 0)])).toBe(5);
    const line = [at(0, 0), at(100, 0)];
    expect(distanceToConvexMm(at(50, 7), line)).toBe(7);
    expect(distanceToConvexMm(at(50, -7), line)).toBe(7);
    expect(distanceToConvexMm(at(50, 0), line)).toBe(0);
    expect(distanceToConvexMm(at(103, 4), line)).toBe(5);
  });

  test("has a side for each corner; a point has none, a line both ways along it", () => {
    expect(sidesOf([at(1, 2)])).toEqual([]);
    expect(sidesOf([])).toEqual([]);
    expect(sidesOf([at(0, 0), at(5, 0)])).toEqual([
      { from: at(0, 0), to: at(5, 0) },
      { from: at(5, 0), to: at(0, 0) },
    ]);
    expect(sidesOf(SQUARE)[3]).toEqual({ from: at(0, 100), to: at(0, 0) });
  });
});

describe("inside an outline of any form", () => {
  /** Two arms, 1 m wide, upward from a base: the notch between them from u = 1000 to 3000, down to v = 1000. */
  const U_SHAPE = [
    ...[at(0, 0), at(4000, 0), at(4000, 4000), at(3000, 4000)],
    ...[at(3000, 1000), at(1000, 1000), at(1000, 4000), at(0, 4000)],
  ];

  test.each([
    [at(500, 3000), true],
    [at(3500, 3000), true],
    [at(2000, 500), true],
    [at(2000, 3000), false],
    [at(-1, 3000), false],
    [at(4001, 3000), false],
    [at(2000, -1), false],
    [at(500, 4001), false],
    // On its border, and level with its corners.
    [at(1000, 3000), true],
    [at(2000, 1000), true],
    [at(4000, 4000), true],
    [at(500, 1000), true],
    [at(-500, 1000), false],
    [at(4500, 1000), false],
    [at(-500, 4000), false],
    [at(2000, 4000), false],
    [at(-500, 0), false],
    // In line with its upright sides, past their ends.
    [at(1000, 4500), false],
    [at(3000, -500), false],
    [at(4000, 4500), false],
    [at(0, -500), false],
    // On an upright side, by its ends and in its middle.
    [at(3000, 1000), true],
    [at(3000, 2500), true],
    [at(0, 2000), true],
    [at(4000, 2000), true],
    [at(2000, 0), true],
  ])("%j: %s, whichever way round it is typed", (point, inside) => {
    expect(isInside(point, U_SHAPE)).toBe(inside);
    expect(isInside(point, [...U_SHAPE].reverse())).toBe(inside);
  });

  test("in a gable end, whose corners are odd in number, and at its ridge", () => {
    const gable = [at(0, 0), at(4000, 0), at(4000, 2000), at(2000, 4000), at(0, 2000)];
    const asked = [
      at(2000, 3999),
      at(500, 2400),
      at(2000, 1000),
      at(2000, 4000),
      at(2000, 4001),
      at(300, 2400),
    ];
    const answers = [true, true, true, true, false, false];
    expect(asked.map((point) => isInside(point, gable))).toEqual(answers);
    expect([at(-1, 1000), at(4001, 1000), at(5000, 5000)].some((point) => isInside(point, gable))).toBe(
      false,
    );
  });

  test("under a slope: just where it lies below the line", () => {
    const gable = [at(0, 0), at(4000, 0), at(4000, 1000), at(0, 3000)];
    expect([isInside(at(1000, 2499), gable), isInside(at(1000, 2501), gable)]).toEqual([true, false]);
    expect([isInside(at(3000, 1499), gable), isInside(at(3000, 1501), gable)]).toEqual([true, false]);
    // On the line itself, and on the same line past its ends.
    expect([at(2000, 2000), at(-1000, 3500), at(5000, 500)].map((point) => isInside(point, gable))).toEqual([
      true,
      false,
      false,
    ]);
  });
});

describe("the tightest string round points", () => {
  const grid = fc.record({ u: fc.integer({ min: -6, max: 6 }), v: fc.integer({ min: -6, max: 6 }) });

  test("leaves out what lies inside, between corners, or twice in one place", () => {
    const more = [at(50, 50), at(50, 0), at(100, 50), at(0, 0), at(100, 100)];
    expect(convexHull([...more, ...SQUARE])).toEqual(SQUARE);
    expect(convexHull([at(5, 5), at(5, 5)])).toEqual([at(5, 5)]);
    expect(convexHull([at(0, 0), at(2, 2), at(1, 1), at(0, 0)])).toEqual([at(0, 0), at(2, 2)]);
    expect(convexHull([at(3, 9), at(3, 1), at(3, 4)])).toEqual([at(3, 1), at(3, 9)]);
    expect(convexHull([])).toEqual([]);
  });

  test("goes round against the clock, turns at every corner, and has every point on its left", () => {
    fc.assert(
      fc.property(fc.array(grid, { minLength: 3, maxLength: 14 }), (points) => {
        const hull = convexHull(points);
        for (const corner of hull) expect(points).toContainEqual(corner);
        if (hull.length < 3) return;
        for (const side of sidesOf(hull)) {
          const ends = [side.from, side.to];
          for (const point of points) expect(twiceAreaMm2([...ends, point])).toBeGreaterThanOrEqual(0);
          const others = hull.filter((corner) => !ends.includes(corner));
          for (const corner of others) expect(twiceAreaMm2([...ends, corner])).toBeGreaterThan(0);
        }
      }),
    );
  });
});

describe("one outline moved along another", () => {
  test("a rectangle along a rectangle is as wide and as high as both together", () => {
    expect(convexSum(SQUARE, rectangle(at(-5, -10), at(5, 10)))).toEqual([
      ...[at(-5, -10), at(105, -10)],
      ...[at(105, 110), at(-5, 110)],
    ]);
    expect(convexSum(SQUARE, [at(7, -3)])).toEqual(SQUARE.map(({ u, v }) => at(u + 7, v - 3)));
    expect(convexSum([at(7, -3)], SQUARE)).toEqual(SQUARE.map(({ u, v }) => at(u + 7, v - 3)));
  });

  test("reaches in every direction as far as the two together", () => {
    const corner = fc.record({ u: fc.integer({ min: -50, max: 50 }), v: fc.integer({ min: -50, max: 50 }) });
    const outline = fc.array(corner, { minLength: 1, maxLength: 6 }).map(convexHull);
    const reach = (polygon: Polygon, [u, v]: readonly [number, number]): number =>
      Math.max(...polygon.map((each) => each.u * u + each.v * v));
    const ways = fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }));
    fc.assert(
      fc.property(outline, outline, ways, (a, b, way) => {
        expect(reach(convexSum(a, b), way)).toBe(reach(a, way) + reach(b, way));
      }),
    );
  });

  test("half a turn about zero keeps the way round", () => {
    expect(mirrored(SQUARE).map(({ u, v }) => [u + 0, v + 0])).toEqual([
      ...[
        [0, 0],
        [-100, 0],
      ],
      ...[
        [-100, -100],
        [0, -100],
      ],
    ]);
    expect(twiceAreaMm2(mirrored(SQUARE))).toBe(twiceAreaMm2(SQUARE));
  });
});
