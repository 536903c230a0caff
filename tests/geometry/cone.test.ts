import { acos, cross, divide, dot, norm, subtract } from "mathjs";
import { describe, expect, it } from "vitest";
import { type Cone, pierced, sectionOf } from "../../src/geometry/cone.js";
import type { Frame } from "../../src/geometry/frame.js";
import { isInSight } from "../../src/geometry/sight-line.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { footprintOf, levelAt } from "../../src/listen/coverage.js";

/*
 * Held to three-dimensional vectors of a general mathematics library: a point of the border is one whose ray makes half
 * the coverage angle with the axis.
 */

type Triple = [number, number, number];

const SQUARE = [
  { u: 0, v: 0 },
  { u: 4000, v: 0 },
  { u: 4000, v: 6000 },
  { u: 0, v: 6000 },
];

/** A direction by its angle off straight down and its bearing. */
function tilted(offDeg: number, bearingDeg: number): Triple {
  const [off, bearing] = [(offDeg * Math.PI) / 180, (bearingDeg * Math.PI) / 180];
  return [Math.sin(off) * Math.cos(bearing), Math.sin(off) * Math.sin(bearing), -Math.cos(off)];
}

const coneFrom = (apex: Triple, axis: Triple, halfDeg: number): Cone => {
  const [x = 0, y = 0, z = 0] = divide(axis, norm(axis) as number) as unknown as Triple;
  return { apex: { x: apex[0], y: apex[1], z: apex[2] }, axis: { x, y, z }, halfDeg };
};

/** Degrees between the axis and the ray to a point of a plane, by mathjs. */
function offAxisDeg({ apex, axis }: Cone, plane: Frame, at: SurfacePoint): number {
  const triple = ({ x, y, z }: Cone["apex"]): Triple => [x, y, z];
  const world = [plane.u, plane.v].reduce<number[]>(
    (sum, side, index) =>
      sum.map((value, place) => value + (triple(side)[place] ?? 0) * (index === 0 ? at.u : at.v)),
    triple(plane.origin),
  ) as Triple;
  const ray = subtract(world, triple(apex)) as Triple;
  const cosine = dot(ray, triple(axis)) / ((norm(ray) as number) * (norm(triple(axis)) as number));
  return ((acos(Math.min(1, cosine)) as number) * 180) / Math.PI;
}

const everywhere = { mostMm: 30_000, keeps: () => true };

describe("where a cone meets a level plane", () => {
  const plane = levelAt(1100);
  const overhead = [0, 12.5, 20, 40].flatMap((off) =>
    [0, 37, 180, 301].flatMap((bearing) => [30, 45, 50, 62].map((half) => ({ off, bearing, half }))),
  );

  it.each(overhead)("every point is half the coverage off the axis: %o", ({ off, bearing, half }) => {
    const cone = coneFrom([2000, 3000, 2700], tilted(off, bearing), half);
    const pieces = sectionOf(cone, plane, everywhere);
    expect(pieces).toHaveLength(1);
    for (const at of pieces.flat()) expect(Math.abs(offAxisDeg(cone, plane, at) - half)).toBeLessThan(1e-9);
  });

  it("is closed where all of the border goes down, open where some does not", () => {
    const ends = (off: number, half: number) => {
      const [piece = []] = sectionOf(coneFrom([0, 0, 2700], tilted(off, 20), half), plane, everywhere);
      const [first, last] = [piece[0], piece.at(-1)];
      if (first === undefined || last === undefined) throw new Error("nothing");
      return Math.hypot(first.u - last.u, first.v - last.v);
    };
    expect(ends(20, 50)).toBeLessThan(1e-6);
    expect(ends(40, 55)).toBeGreaterThan(1000);
  });

  it.each([
    [0, 45],
    [20, 50],
    [33, 30],
    [10, 79.9],
  ])("an ellipse is as long and as wide as its points: %f off, half %f", (off, half) => {
    const cone = coneFrom([2000, 3000, 2700], tilted(off, 73), half);
    const footprint = footprintOf(cone, 1100);
    if (footprint.kind !== "closed") throw new Error(footprint.kind);
    const points = sectionOf(cone, plane, { mostMm: 1e9, keeps: () => true }).flat();
    const bearing = (73 * Math.PI) / 180;
    const along = points.map(({ u, v }) => u * Math.cos(bearing) + v * Math.sin(bearing));
    const across = points.map(({ u, v }) => v * Math.cos(bearing) - u * Math.sin(bearing));
    const wide = (values: number[]) => Math.max(...values) - Math.min(...values);
    // The furthest points lie between drawn ones: a chord strays by 1 mm at most.
    expect(Math.abs(wide(along) - footprint.longMm)).toBeLessThan(2.01);
    expect(Math.abs(wide(across) - footprint.shortMm)).toBeLessThan(2.01);
    expect(wide(across)).toBeLessThanOrEqual(footprint.shortMm + 1e-6);
  });

  it("of a loudspeaker in a wall at another height is one branch, on the cone", () => {
    const cone = coneFrom([12, 3000, 1300], [1, 0, 0], 45);
    const [piece = []] = sectionOf(cone, plane, everywhere);
    expect(piece.length).toBeGreaterThan(20);
    for (const at of piece) expect(Math.abs(offAxisDeg(cone, plane, at) - 45)).toBeLessThan(1e-9);
    // (u - 12)² = (v - 3000)² + 200²: nearest at 212.
    expect(Math.min(...piece.map(({ u }) => u))).toBeCloseTo(212, 1);
  });

  it("of a loudspeaker at that very height is two straight lines, on the cone too", () => {
    const cone = coneFrom([12, 3000, 1100], [1, 0.2, 0.1], 45);
    const pieces = sectionOf(cone, plane, everywhere);
    expect(pieces).toHaveLength(2);
    for (const [from, to] of pieces) {
      expect(from).toEqual({ u: 12, v: 3000 });
      if (to === undefined) throw new Error("no end");
      expect(Math.abs(offAxisDeg(cone, plane, to) - 45)).toBeLessThan(1e-9);
    }
  });

  it("is nothing where the cone looks away", () => {
    expect(sectionOf(coneFrom([0, 0, 2700], [0, 0, 1], 60), plane, everywhere)).toEqual([]);
    expect(footprintOf(coneFrom([0, 0, 2700], [0, 0, 1], 60), 1100).kind).toBe("none");
  });

  it("ends on the wall, on the cone there too", () => {
    const cone = coneFrom([2000, 3000, 2700], tilted(20, 0), 60);
    const keeps = (at: SurfacePoint) => isInSight(SQUARE, { u: 2000, v: 3000 }, at);
    const pieces = sectionOf(cone, plane, { mostMm: 20_000, keeps });
    expect(pieces.length).toBeGreaterThan(0);
    const onWall = ({ u, v }: SurfacePoint) =>
      Math.min(Math.abs(u), Math.abs(u - 4000), Math.abs(v), Math.abs(v - 6000));
    const inner = pieces.flatMap((piece) => [piece[0], piece.at(-1)]).filter((at) => at !== undefined);
    expect(inner.filter((at) => onWall(at) < 1e-6).length).toBeGreaterThanOrEqual(2);
    for (const at of pieces.flat()) expect(Math.abs(offAxisDeg(cone, plane, at) - 60)).toBeLessThan(1e-9);
  });
});

it("an upright plane cuts the same cone by the same angle", () => {
  const plane: Frame = {
    origin: { x: 2500, y: 0, z: 0 },
    u: { x: 0, y: 1, z: 0 },
    v: { x: 0, y: 0, z: 1 },
    n: { x: 1, y: 0, z: 0 },
  };
  const cone = coneFrom([900, 3000, 2700], tilted(20, 35), 50);
  const points = sectionOf(cone, plane, everywhere).flat();
  expect(points.length).toBeGreaterThan(20);
  for (const at of points) expect(Math.abs(offAxisDeg(cone, plane, at) - 50)).toBeLessThan(1e-9);
});

it("the axis meets the plane where a line through both points says", () => {
  const cone = coneFrom([100, 200, 2700], [0.3, -0.4, -0.8], 40);
  const foot = pierced(cone, levelAt(1100));
  if (foot === null) throw new Error("no foot");
  const way = [foot.u - 100, foot.v - 200, 1100 - 2700];
  const { x, y, z } = cone.axis;
  expect(norm(cross(way, [x, y, z]) as number[]) as number).toBeLessThan(1e-9 * (norm(way) as number));
  expect(dot(way, [x, y, z])).toBeGreaterThan(0);
  expect(pierced({ ...cone, axis: { x: 0, y: 0, z: 1 } }, levelAt(1100))).toBeNull();
  expect(pierced({ ...cone, axis: { x: 1, y: 0, z: 0 } }, levelAt(1100))).toBeNull();
});

describe("a line of sight", () => {
  const L = [
    { u: 0, v: 0 },
    { u: 7000, v: 0 },
    { u: 7000, v: 3000 },
    { u: 4000, v: 3000 },
    { u: 4000, v: 9000 },
    { u: 0, v: 9000 },
  ];

  it("goes round no corner", () => {
    expect(isInSight(L, { u: 1000, v: 8000 }, { u: 3000, v: 1000 })).toBe(true);
    // Past the corner (4000, 3000) from (3500, 8000): at v = 2000 it passes u = 4100 at the most.
    expect(isInSight(L, { u: 3500, v: 8000 }, { u: 4090, v: 2000 })).toBe(true);
    expect(isInSight(L, { u: 3500, v: 8000 }, { u: 4110, v: 2000 })).toBe(false);
  });

  it("begins on a wall", () => {
    expect(isInSight(L, { u: 0, v: 5000 }, { u: 3000, v: 5000 })).toBe(true);
    expect(isInSight(L, { u: 0, v: 5000 }, { u: 4001, v: 5000 })).toBe(false);
  });
});
