import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  crossingSides,
  cutOff,
  movedIn,
  shortestSideMm,
  spansInside,
  spansOf,
  twiceAreaMm2,
} from "../../src/geometry/ring.js";
import type { Polygon } from "../../src/geometry/shape.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";

/* Outlines of rooms and surfaces, anticlockwise, in mm. */

const at = (u: number, v: number): SurfacePoint => ({ u, v });
const BOX = [at(0, 0), at(4000, 0), at(4000, 6000), at(0, 6000)];
/** Wide in front, narrow behind: the step's two corners at (2000, 3000) and (4000, 3000). */
const L = [at(0, 0), at(2000, 0), at(2000, 3000), at(4000, 3000), at(4000, 6000), at(0, 6000)];

const close = (points: Polygon) =>
  points.map(({ u, v }) => ({ u: expect.closeTo(u, 6), v: expect.closeTo(v, 6) }));

const boarded = (ring: Polygon, boardsMm: readonly number[]) =>
  movedIn(
    ring.map((from, index) => ({
      from,
      to: ring[(index + 1) % ring.length] ?? from,
      inMm: boardsMm[index] ?? 0,
    })),
  );

describe("an outline with board on its sides", () => {
  test("loses each side's own board", () => {
    expect(boarded(BOX, [10, 20, 30, 40])).toEqual(
      close([at(40, 10), at(3980, 10), at(3980, 5970), at(40, 5970)]),
    );
  });

  test("grows where a side is moved out", () => {
    expect(boarded(BOX, [-10, 0, 0, 0])[0]).toEqual(at(0, -10));
  });

  test("gains at a corner that juts in: the step's corner moves out of the L", () => {
    expect(boarded(L, [10, 10, 10, 10, 10, 10])).toEqual(
      close([at(10, 10), at(1990, 10), at(1990, 3010), at(3990, 3010), at(3990, 5990), at(10, 5990)]),
    );
  });

  test("shrinks to the centre of its inscribed circle: sides of 3, 4 and 5 m have one of 1 m", () => {
    const triangle = [at(0, 0), at(4000, 0), at(0, 3000)];
    expect(boarded(triangle, [1000, 1000, 1000])).toEqual(
      close([at(1000, 1000), at(1000, 1000), at(1000, 1000)]),
    );
  });

  test("at walls that are no right angle keeps the distance to each, whatever the angle", () => {
    const board = fc.integer({ min: -30, max: 60 });
    const slant = fc.integer({ min: -900, max: 900 });
    fc.assert(
      fc.property(board, board, board, board, slant, slant, (a, b, c, d, out, over) => {
        const ring = [at(0, 0), at(4000 + out, over), at(4000, 6000 - out), at(over, 6000)];
        const corners = boarded(ring, [a, b, c, d]);
        // The distance from a line by the area of the triangle on it, twice over its base.
        const offMm = (point: SurfacePoint, side: number): number => {
          const [from, to] = [ring[side] ?? at(0, 0), ring[(side + 1) % 4] ?? at(0, 0)];
          return twiceAreaMm2([from, to, point]) / Math.hypot(to.u - from.u, to.v - from.v);
        };
        for (const [index, corner] of corners.entries()) {
          expect(offMm(corner, index)).toBeCloseTo([a, b, c, d][index] ?? 0, 6);
          expect(offMm(corner, (index + 3) % 4)).toBeCloseTo([d, a, b, c][index] ?? 0, 6);
        }
      }),
    );
  });

  test("where two walls are one line takes the thicker board at their joint", () => {
    const inTwo = [at(0, 0), at(1500, 0), ...BOX.slice(1)];
    expect(boarded(inTwo, [12, 25, 0, 0, 0])[1]).toEqual(at(1500, 25));
    expect(boarded(inTwo, [25, 12, 0, 0, 0])[1]).toEqual(at(1500, 25));
    expect(boarded(inTwo, [12, 12, 0, 0, 0])).toHaveLength(5);
  });
});

test("twice the area of a ring is above 0 anticlockwise, below 0 clockwise", () => {
  expect(twiceAreaMm2(BOX)).toBe(2 * 4000 * 6000);
  expect(twiceAreaMm2([...BOX].reverse())).toBe(-2 * 4000 * 6000);
  // 2 x 6 m and 2 x 3 m beside it.
  expect(twiceAreaMm2(L)).toBe(2 * (2000 * 6000 + 2000 * 3000));
  expect(twiceAreaMm2(L.map(({ u, v }) => at(u + 500, v - 700)))).toBe(twiceAreaMm2(L));
});

describe("what of an outline lies past a line", () => {
  test("is all, nothing, or a part with new corners on the line", () => {
    expect(cutOff(BOX, at(1, 0), -1)).toEqual(BOX);
    expect(cutOff(BOX, at(1, 0), 4001)).toEqual([]);
    expect(cutOff(BOX, at(1, 0), 1000)).toEqual([at(1000, 0), at(4000, 0), at(4000, 6000), at(1000, 6000)]);
    expect(cutOff(BOX, at(-1, 0), -1000)).toEqual([at(0, 0), at(1000, 0), at(1000, 6000), at(0, 6000)]);
  });

  test("keeps corners that lie just on the line, once each", () => {
    expect(cutOff(BOX, at(1, 0), 0)).toEqual(BOX);
    expect(cutOff(BOX, at(1, 0), 4000)).toEqual([at(4000, 0), at(4000, 6000)]);
    // Through two corners of the box.
    const along = cutOff(BOX, at(-0.6, 0.4), 0);
    expect(along).toEqual([at(0, 0), at(4000, 6000), at(0, 6000)]);
  });

  test("and what lies before it are the whole, by their areas", () => {
    const turn = fc.integer({ min: 0, max: 359 });
    fc.assert(
      fc.property(turn, fc.integer({ min: -8000, max: 8000 }), (degrees, mm) => {
        const angle = (degrees * Math.PI) / 180;
        const [u, v] = [Math.cos(angle), Math.sin(angle)];
        const parts = [cutOff(L, at(u, v), mm), cutOff(L, at(-u, -v), -mm)];
        expect(parts.reduce((sum, part) => sum + twiceAreaMm2(part), 0)).toBeCloseTo(twiceAreaMm2(L), 3);
        for (const corner of parts[0] ?? []) expect(corner.u * u + corner.v * v).toBeGreaterThan(mm - 1e-6);
      }),
    );
  });
});

describe("stretches of a line inside an outline", () => {
  const across = (v: number, u = 0) => ({ origin: at(u, v), direction: at(1, 0) });

  test("are counted from the line's own zero, whichever way it runs", () => {
    expect(spansInside(BOX, across(1000))).toEqual([[0, 4000]]);
    expect(spansInside(BOX, across(1000, 1500))).toEqual([[-1500, 2500]]);
    expect(spansInside(BOX, { origin: at(1500, 1000), direction: at(-1, 0) })).toEqual([[-2500, 1500]]);
    // Along a line of that direction it is measured from where that passes the zero: 1500 less.
    expect(spansOf(BOX, at(-1, 0))(-1000)).toEqual([[-4000, 0]]);
    expect(spansOf(BOX, at(1, 0))(1000)).toEqual([[0, 4000]]);
    expect(spansOf(BOX, at(1, 0))(-1)).toEqual([]);
    expect(spansInside(BOX, { origin: at(500, 500), direction: at(0, 1) })).toEqual([[-500, 5500]]);
    expect(spansInside(BOX, across(7000))).toEqual([]);
    expect(spansInside(BOX, across(-1))).toEqual([]);
  });

  test("are two where the outline juts in between", () => {
    const channel = [
      ...[at(0, 0), at(1000, 0), at(1000, 2000), at(3000, 2000)],
      ...[at(3000, 0), at(4000, 0), at(4000, 5000), at(0, 5000)],
    ];
    expect(spansInside(channel, across(1000))).toEqual([
      [0, 1000],
      [3000, 4000],
    ]);
    expect(spansInside(channel, across(3000))).toEqual([[0, 4000]]);
  });

  test("through a corner are counted once", () => {
    const diamond = [at(0, -1000), at(1000, 0), at(0, 1000), at(-1000, 0)];
    expect(spansInside(diamond, across(0))).toEqual([[-1000, 1000]]);
    expect(spansInside(diamond, across(500))).toEqual([[-500, 500]]);
    // It only touches its lowest and highest corner.
    expect(spansInside(diamond, across(-1000))).toEqual([]);
    expect(spansInside(diamond, across(1000))).toEqual([]);
  });
});

describe("sides that cross", () => {
  test("are none in an outline that is one", () => {
    for (const ring of [BOX, L, [at(0, 0), at(4000, 0), at(0, 3000)]]) expect(crossingSides(ring)).toBeNull();
  });

  test("are named by their places, the first two of them", () => {
    // A bow tie: the second side crosses the fourth.
    expect(crossingSides([at(0, 0), at(4000, 0), at(0, 3000), at(4000, 3000)])).toEqual([1, 3]);
    expect(crossingSides([at(0, 0), at(4000, 3000), at(4000, 0), at(0, 3000)])).toEqual([0, 2]);
  });

  test("cross where one only touches the other too", () => {
    // The corner (2000, 0) lies on the first side.
    expect(crossingSides([at(0, 0), at(4000, 0), at(4000, 3000), at(2000, 0), at(0, 3000)])).toEqual([0, 2]);
  });

  test("do not where their lines would only meet beyond them", () => {
    // A roof over a box: the lines of the roof's sides run through the walls' lines further down.
    expect(crossingSides([at(0, 0), at(4000, 0), at(4000, 2000), at(2000, 4000), at(0, 2000)])).toBeNull();
  });
});

test("the shortest side", () => {
  expect(shortestSideMm(L)).toBe(2000);
  expect(shortestSideMm([at(0, 0), at(300, 400), at(-4000, 400)])).toBe(500);
});
