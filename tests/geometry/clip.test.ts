import { Clipper, EndType, FillRule, JoinType } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaMm2, difference, grow, growMitred, intersection, type Region } from "../../src/geometry/clip.js";
import { rectangle } from "../../src/geometry/convex.js";
import { distanceToConvexMm, isInside } from "../../src/geometry/distance.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { contains, union } from "../rooms/clipped.js";

const at = (u: number, v: number): SurfacePoint => ({ u, v });
const SQUARE = rectangle(at(0, 0), at(100, 100));

describe("areas in square millimetres", () => {
  test("two squares that overlap by a quarter", () => {
    const other = rectangle(at(50, 50), at(150, 150));
    expect(areaMm2(union([SQUARE, other]))).toBeCloseTo(17_500, 6);
    expect(areaMm2(intersection([SQUARE], [other]))).toBeCloseTo(2_500, 6);
    expect(areaMm2(difference([SQUARE], [other]))).toBeCloseTo(7_500, 6);
  });

  test("a hole is taken off, and is no part of the region", () => {
    const ring = difference([SQUARE], [rectangle(at(40, 40), at(60, 60))]);
    expect(areaMm2(ring)).toBeCloseTo(9_600, 6);
    expect(contains(ring, at(50, 50))).toBe(false);
    expect(contains(ring, at(40, 50))).toBe(true);
    expect(contains(ring, at(30, 50))).toBe(true);
    expect(contains(ring, at(130, 50))).toBe(false);
  });

  test("steps of 1e-4 mm survive at the far end of a room of 100 m", () => {
    const far = rectangle(at(99_000, 99_000), at(99_000.0123, 99_001));
    expect(
      union([far])[0]
        ?.map(({ u }) => u)
        .sort((a, b) => a - b)[3],
    ).toBeCloseTo(99_000.0123, 6);
  });
});

describe("growing", () => {
  const ARC_MM = 0.005;

  test("a rectangle a x b by r covers ab + 2(a + b)r + pi r^2, less what the chords lose", () => {
    const area = areaMm2(grow(rectangle(at(0, 0), at(300, 40)), 150, ARC_MM));
    const exact = 300 * 40 + 2 * 340 * 150 + Math.PI * 150 ** 2;
    expect(area).toBeLessThan(exact);
    // A ring as thick as the chords' largest sag: 2 pi r x 0.005.
    expect(area).toBeGreaterThan(exact - 2 * Math.PI * 150 * ARC_MM);
  });

  test("a point becomes a disc and a segment a slot", () => {
    const disc = areaMm2(grow([at(10, 10)], 100, ARC_MM));
    const slot = areaMm2(grow([at(0, 0), at(500, 0)], 100, ARC_MM));
    expect(Math.abs(disc - Math.PI * 1e4)).toBeLessThan(2 * Math.PI * 100 * ARC_MM);
    expect(Math.abs(slot - Math.PI * 1e4 - 500 * 200)).toBeLessThan(2 * Math.PI * 100 * ARC_MM);
  });

  test("no corner of it is further away than asked, and no point of its border nearer than the sag", () => {
    const core = [at(0, 0), at(200, 30), at(80, 160)];
    const [outline = []] = grow(core, 90, ARC_MM);
    expect(outline.length).toBeGreaterThan(50);
    outline.forEach((corner, index) => {
      const next = outline[(index + 1) % outline.length] ?? corner;
      const middle = at((corner.u + next.u) / 2, (corner.v + next.v) / 2);
      expect(distanceToConvexMm(corner, core)).toBeLessThanOrEqual(90 + 2e-4);
      expect(distanceToConvexMm(middle, core)).toBeGreaterThanOrEqual(90 - ARC_MM - 2e-4);
    });
  });
});

test("inside and outside as the clipping library judges them, over any star-shaped outline", () => {
  const outline = fc.array(fc.integer({ min: 20, max: 400 }), { minLength: 3, maxLength: 12 }).map((radii) =>
    radii.map((radius, index) => {
      const turn = (2 * Math.PI * index) / radii.length;
      return at(Math.round(radius * Math.cos(turn)), Math.round(radius * Math.sin(turn)));
    }),
  );
  const point = fc.record({ u: fc.integer({ min: -420, max: 420 }), v: fc.integer({ min: -420, max: 420 }) });
  fc.assert(
    fc.property(outline, point, (polygon, where) => {
      expect(isInside(where, polygon)).toBe(contains([polygon], where));
    }),
    { numRuns: 500 },
  );
});

describe("what is grown by hand takes the same away as what the library grows", () => {
  const STEPS = 10_000;
  const pathOf = (polygon: readonly SurfacePoint[]) =>
    polygon.map(({ u, v }) => ({ x: Math.round(u * STEPS), y: Math.round(v * STEPS) }));
  const without = (region: Region, taken: ReturnType<typeof pathOf>[]): Region =>
    Clipper.difference(region.map(pathOf), taken, FillRule.NonZero).map((path) =>
      path.map(({ x, y }) => at(x / STEPS, y / STEPS)),
    );
  const bay = fc
    .tuple(fc.integer({ min: 100, max: 6000 }), fc.integer({ min: 20, max: 900 }))
    .map(([long, deep]): Region => [rectangle(at(0, 0), at(long, deep))]);
  const place = fc.tuple(
    fc.double({ min: -300, max: 4000, noNaN: true }),
    fc.double({ min: -300, max: 900, noNaN: true }),
  );
  const by = fc.double({ min: 20, max: 400, noNaN: true });

  test("a point", () => {
    fc.assert(
      fc.property(bay, place, by, (area, [u, v], byMm) => {
        const grown = Clipper.inflatePaths(
          [pathOf([at(u, v)])],
          byMm * STEPS,
          JoinType.Round,
          EndType.Round,
          2,
          0.1 * STEPS,
        );
        expect(difference(area, grow([at(u, v)], byMm, 0.1))).toEqual(without(area, grown));
      }),
      { numRuns: 300 },
    );
  });

  test("an upright rectangle with sharp corners, from whichever corner it begins", () => {
    const size = fc.tuple(
      fc.double({ min: 1, max: 5000, noNaN: true }),
      fc.double({ min: 1, max: 90, noNaN: true }),
    );
    fc.assert(
      fc.property(bay, place, size, by, fc.nat(3), (area, [u, v], [wide, high], byMm, first) => {
        const corners = rectangle(at(u, v), at(u + wide, v + high));
        const polygon = [...corners.slice(first), ...corners.slice(0, first)];
        const grown = Clipper.inflatePaths(
          [pathOf(polygon)],
          byMm * STEPS,
          JoinType.Miter,
          EndType.Polygon,
          2,
        );
        expect(difference(area, growMitred(polygon, byMm))).toEqual(without(area, grown));
      }),
      { numRuns: 300 },
    );
  });
});
