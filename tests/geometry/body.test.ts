import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Body,
  bandOf,
  bodyOfArea,
  bodyOfBand,
  bodyOfSegment,
  bodyOfShape,
  distanceToBodyMm,
  isHeldBy,
  separationMm,
  supportMm,
  unheld,
} from "../../src/geometry/body.js";
import { distanceMm, plus, times } from "../../src/geometry/surface-point.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";

const at = (u: number, v: number): SurfacePoint => ({ u, v });
const round = (diameterMm: number, centre: SurfacePoint): Body =>
  bodyOfShape({ kind: "round", diameterMm }, centre);
const rectangle = (widthMm: number, heightMm: number, centre: SurfacePoint): Body =>
  bodyOfShape({ kind: "rectangle", widthMm, heightMm }, centre);
/** A joist of 38 mm along u at v = 0, from u = 0 to 4000. */
const JOIST = bodyOfBand({ from: at(0, 0), to: at(4000, 0), widthMm: 38 });

describe("known distances, edge to edge", () => {
  test("a disc beside a joist: 200 - 19 - 100 = 81", () => {
    expect(separationMm(JOIST, round(200, at(2000, 200)))).toBeCloseTo(81, 9);
    expect(separationMm(JOIST, round(200, at(2000, -200)))).toBeCloseTo(81, 9);
  });

  test("a disc 12 into a joist: its centre at 19 + 100 - 12 = 107", () => {
    expect(separationMm(JOIST, round(200, at(2000, 107)))).toBeCloseTo(-12, 9);
  });

  test("a disc right on a joist must move half the joist and its own radius: -(19 + 100)", () => {
    expect(separationMm(JOIST, round(200, at(2000, 0)))).toBeCloseTo(-119, 9);
  });

  test("a disc off a joist's end by 30 and 40 is hypot(30, 40) - 25 = 25 away", () => {
    expect(separationMm(JOIST, round(50, at(4030, 59)))).toBeCloseTo(25, 9);
  });

  test("a rectangle 200 x 320: 300 - 160 - 19 = 121 up, and corner to corner hypot(30, 40) = 50", () => {
    expect(separationMm(JOIST, rectangle(200, 320, at(2000, 300)))).toBeCloseTo(121, 9);
    expect(separationMm(JOIST, rectangle(200, 320, at(4130, 219)))).toBeCloseTo(50, 9);
  });

  test("two discs: 500 - 100 - 60 = 340; a disc and a rectangle: 500 - 100 - 80 = 320", () => {
    expect(separationMm(round(200, at(0, 0)), round(120, at(300, 400)))).toBeCloseTo(340, 9);
    expect(separationMm(round(200, at(0, 0)), rectangle(160, 10, at(500, 0)))).toBeCloseTo(320, 9);
  });

  test("two rectangles that overlap by 30 in u and 10 in v come free by 10", () => {
    const a = bodyOfArea({ kind: "rectangle", min: at(0, 0), max: at(100, 100) });
    expect(separationMm(a, rectangle(60, 60, at(100, 120)))).toBeCloseTo(-10, 9);
  });

  test("touching is 0", () => {
    expect(separationMm(JOIST, round(200, at(2000, 119)))).toBeCloseTo(0, 9);
    expect(separationMm(JOIST, rectangle(10, 10, at(-5, 0)))).toBeCloseTo(0, 9);
  });

  test("a segment is met from either side", () => {
    const edge = bodyOfSegment({ from: at(0, 0), to: at(1000, 0) });
    expect(separationMm(edge, round(100, at(500, 80)))).toBeCloseTo(30, 9);
    expect(separationMm(edge, round(100, at(500, -30)))).toBeCloseTo(-20, 9);
    expect(separationMm(edge, rectangle(100, 100, at(500, 20)))).toBeCloseTo(-30, 9);
  });

  test("a band at 45 degrees is half its width to either side of its centre line", () => {
    const slanting = bodyOfBand({ from: at(0, 0), to: at(1000, 1000), widthMm: 40 });
    // (300, 100) is 200/sqrt(2) off the line v = u.
    expect(distanceToBodyMm(at(300, 100), slanting)).toBeCloseTo(200 / Math.SQRT2 - 20, 9);
  });

  test("a band's corners, anticlockwise", () => {
    expect(bandOf({ from: at(0, 10), to: at(100, 10), widthMm: 4 })).toEqual([
      at(0, 8),
      at(100, 8),
      at(100, 12),
      at(0, 12),
    ]);
  });

  test("an opening of 180 in its flange of 210, both round one middle, lies 15 deep in it all round", () => {
    const [opening, flange] = [round(180, at(10, 20)), round(210, at(10, 20))];
    expect(isHeldBy(opening, flange, 15)).toBe(true);
    expect(isHeldBy(opening, flange, 15.1)).toBe(false);
    expect(isHeldBy(flange, opening, 15)).toBe(false);
  });

  test("of what lies in one another only the outermost is left, in the order that it came in", () => {
    const [opening, flange] = [round(180, at(0, 0)), round(210, at(0, 0))];
    const aside = rectangle(180, 180, at(1000, 0));
    expect(unheld([opening, aside, flange], 10)).toEqual([aside, flange]);
    // Not so deep as is asked for: each may take what the other leaves.
    expect(unheld([opening, flange], 15.1)).toEqual([opening, flange]);
    // Two that are alike hold each other nowhere deep.
    expect(unheld([flange, flange], 0.01)).toEqual([flange, flange]);
    expect(unheld([], 1)).toEqual([]);
  });

  test("reach in a direction", () => {
    expect(supportMm(round(200, at(0, 0)), at(0, 1))).toBe(100);
    expect(supportMm(rectangle(200, 320, at(0, 0)), at(-1, 0))).toBe(100);
  });
});

const millimetres = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);
const place = fc.record({ u: millimetres(-600, 600), v: millimetres(-600, 600) });
const body: fc.Arbitrary<Body> = fc.oneof(
  fc.tuple(millimetres(10, 400), place).map(([diameter, centre]) => round(diameter, centre)),
  fc
    .tuple(millimetres(10, 400), millimetres(10, 400), place)
    .map(([width, height, centre]) => rectangle(width, height, centre)),
  fc
    .tuple(place, place, millimetres(10, 90))
    .filter(([from, to]) => distanceMm(from, to) > 1)
    .map(([from, to, widthMm]) => bodyOfBand({ from, to, widthMm })),
);

/** Points along a body's border, about `stepMm` apart: brute force, with none of the arithmetic under test. */
function border({ core, radiusMm }: Body, stepMm: number): SurfacePoint[] {
  if (core.length === 1) {
    const [centre = at(0, 0)] = core;
    const count = Math.ceil((2 * Math.PI * radiusMm) / stepMm);
    return Array.from({ length: count }, (_, index) => {
      const turn = (2 * Math.PI * index) / count;
      return at(centre.u + radiusMm * Math.cos(turn), centre.v + radiusMm * Math.sin(turn));
    });
  }
  return core.flatMap((from, index) => {
    const to = core[(index + 1) % core.length] ?? from;
    const count = Math.max(1, Math.ceil(distanceMm(from, to) / stepMm));
    return Array.from({ length: count }, (_, step) =>
      at(from.u + ((to.u - from.u) * step) / count, from.v + ((to.v - from.v) * step) / count),
    );
  });
}

const STEP_MM = 6;

function leastBetween(some: readonly SurfacePoint[], others: readonly SurfacePoint[]): number {
  return some.reduce(
    (least, p) => others.reduce((nearest, q) => Math.min(nearest, distanceMm(p, q)), least),
    Number.POSITIVE_INFINITY,
  );
}

describe("for any two bodies", () => {
  test("apart, the distance is the least between points sampled along both borders", () => {
    fc.assert(
      fc.property(body, body, (a, b) => {
        const exact = separationMm(a, b);
        fc.pre(exact > 0);
        const sampled = leastBetween(border(a, STEP_MM), border(b, STEP_MM));
        expect(sampled).toBeGreaterThanOrEqual(exact - 1e-6);
        // A sample lies within half a step of each of the two nearest points.
        expect(sampled).toBeLessThanOrEqual(exact + STEP_MM);
      }),
      { numRuns: 60 },
    );
  });

  test("it is the same from either side", () => {
    fc.assert(
      fc.property(body, body, (a, b) => {
        expect(separationMm(a, b)).toBeCloseTo(separationMm(b, a), 6);
      }),
    );
  });

  test("overlapping, they come free by that much in some direction and by less in none", () => {
    fc.assert(
      fc.property(body, body, (a, b) => {
        const overlapMm = -separationMm(a, b);
        fc.pre(overlapMm > 0.1);
        const moved = (turn: number, byMm: number): Body => ({
          ...b,
          core: b.core.map((corner) => plus(corner, times(at(Math.cos(turn), Math.sin(turn)), byMm))),
        });
        const turns = Array.from({ length: 720 }, (_, index) => (index * Math.PI) / 360);
        for (const turn of turns) expect(separationMm(a, moved(turn, overlapMm * 0.99))).toBeLessThan(0);
        const freest = Math.max(...turns.map((turn) => separationMm(a, moved(turn, overlapMm))));
        // The right direction lies within a quarter degree of one tried: 1 - cos(0.25) of the way is lost at most.
        expect(freest).toBeGreaterThanOrEqual(-overlapMm * 1e-4 - 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  test("one is held with so much to spare where all of its border lies so deep in the other", () => {
    const small = fc.oneof(
      millimetres(10, 200).map((diameter) => round(diameter, at(10, 20))),
      fc.tuple(millimetres(10, 200), millimetres(10, 200)).map(([w, h]) => rectangle(w, h, at(-5, 10))),
    );
    const large = fc.oneof(
      millimetres(100, 400).map((diameter) => round(diameter, at(0, 0))),
      fc.tuple(millimetres(100, 400), millimetres(100, 400)).map(([w, h]) => rectangle(w, h, at(0, 0))),
    );
    let held = 0;
    fc.assert(
      fc.property(small, large, millimetres(0, 20), (one, holder, spareMm) => {
        const shallowest = Math.max(...border(one, 1).map((point) => distanceToBodyMm(point, holder)));
        if (isHeldBy(one, holder, spareMm)) {
          held += 1;
          expect(shallowest).toBeLessThanOrEqual(-spareMm + 1e-6);
        } else expect(shallowest).toBeGreaterThan(-spareMm - 0.1);
      }),
    );
    expect(held).toBeGreaterThan(10);
  });
});
