import fc from "fast-check";
import { cross, dot, norm, subtract as without } from "mathjs";
import { describe, expect, test } from "vitest";
import { ceilingFrame, type Frame, toSurface, toWorld, wallFrame } from "../../src/geometry/frame.js";
import { angleBetweenDeg, degrees, radians, unit, type Vector, vector } from "../../src/geometry/vector.js";

/*
 * Frames of walls at any angle and ceilings at any slope, in worked points and with the vector arithmetic of another
 * library (mathjs). World: x to the right, y to the front, z up; mm.
 */

type Triple = [number, number, number];
const triple = ({ x, y, z }: Vector): Triple => [x, y, z];
const near = ({ x, y, z }: Vector) => ({
  x: expect.closeTo(x, 9),
  y: expect.closeTo(y, 9),
  z: expect.closeTo(z, 9),
});

const FRONT = wallFrame(vector(0, 6000, 0), vector(4000, 6000, 0));
/** Looking at a wall that runs to the right and away from one, 3 to 4. */
const SKEW = wallFrame(vector(1000, 2000, 0), vector(4000, 6000, 0));
/** 45 degrees: low at the front, high at the back. */
const SLOPE = ceilingFrame(vector(4000, 0, 6000), vector(0, -1, -1));

describe("the frame of a surface", () => {
  test("of the front wall: u to the right, v up, n at the person behind", () => {
    expect(FRONT).toEqual({
      origin: vector(0, 6000, 0),
      u: vector(1, 0, 0),
      v: vector(0, 0, 1),
      n: near(vector(0, -1, 0)),
    });
  });

  test("of a wall at an angle: 3 to the right and 4 ahead for every 5 along it", () => {
    expect(SKEW.u).toEqual(near(vector(0.6, 0.8, 0)));
    expect(SKEW.n).toEqual(near(vector(0.8, -0.6, 0)));
  });

  test("of a flat ceiling: u to the room's left, v to the front, n down", () => {
    const { u, v, n } = ceilingFrame(vector(4000, 0, 2600), vector(0, 0, -2));
    expect([u, v, n]).toEqual([vector(-1, 0, 0), vector(0, 1, 0), vector(0, 0, -1)].map(near));
  });

  test("of a slope: v down it to the front, u level", () => {
    const half = Math.SQRT1_2;
    expect(SLOPE.v).toEqual(near(vector(0, half, -half)));
    expect(SLOPE.u).toEqual(near(vector(-1, 0, 0)));
    expect(SLOPE.n).toEqual(near(vector(0, -half, -half)));
  });

  const part = fc.integer({ min: -5000, max: 5000 });
  const anyWall = fc
    .tuple(part, part, part, part)
    .filter(([x, y, right, ahead]) => Math.hypot(right - x, ahead - y) > 10)
    .map(([x, y, right, ahead]) => wallFrame(vector(x, y, 0), vector(right, ahead, 0)));
  const anyCeiling = fc
    .tuple(part, part, part, fc.integer({ min: 3000, max: 9000 }))
    .map(([x, y, lean, down]) => ceilingFrame(vector(x, y, 2600), vector(lean / 2, y / 2, -down)));
  const anyFrame: fc.Arbitrary<Frame> = fc.oneof(anyWall, anyCeiling);

  test("is square, of lengths 1, and right-handed, whatever the angle", () => {
    fc.assert(
      fc.property(anyFrame, ({ u, v, n }) => {
        for (const axis of [u, v, n]) expect(Number(norm(triple(axis)))).toBeCloseTo(1, 12);
        expect(Number(dot(triple(u), triple(v)))).toBeCloseTo(0, 12);
        expect(Number(norm(without(cross(triple(u), triple(v)) as Triple, triple(n))))).toBeCloseTo(0, 12);
      }),
    );
  });

  test("says of every point where it is, and of every place which point it is", () => {
    fc.assert(
      fc.property(anyFrame, part, part, part, (frame, u, v, offMm) => {
        const world = toWorld(frame, { u, v }, offMm);
        expect(toSurface(frame, world)).toEqual({ u: expect.closeTo(u, 6), v: expect.closeTo(v, 6) });
        const off = dot(without(triple(world), triple(frame.origin)) as Triple, triple(frame.n));
        expect(Number(off)).toBeCloseTo(offMm, 6);
        // A tape along the surface reads what the room measures.
        const from = toWorld(frame, { u: 0, v: 0 }, offMm);
        expect(Number(norm(without(triple(world), triple(from)) as Triple))).toBeCloseTo(Math.hypot(u, v), 6);
      }),
    );
  });

  test("in points worked by hand", () => {
    expect(toWorld(FRONT, { u: 1000, v: 500 })).toEqual(near(vector(1000, 6000, 500)));
    expect(toWorld(FRONT, { u: 1000, v: 500 }, 12.5)).toEqual(near(vector(1000, 5987.5, 500)));
    expect(toWorld(SKEW, { u: 500, v: 200 }, 10)).toEqual(near(vector(1308, 2394, 200)));
    // 1414.2 mm down the slope is 1 m ahead and 1 m down.
    expect(toWorld(SLOPE, { u: 700, v: 1000 * Math.SQRT2 })).toEqual(near(vector(3300, 1000, 5000)));
    expect(toSurface(SLOPE, vector(3300, 1000, 5000))).toEqual({
      u: expect.closeTo(700, 9),
      v: expect.closeTo(1000 * Math.SQRT2, 9),
    });
  });
});

describe("directions", () => {
  test("have length 1, and nothing stays nothing", () => {
    expect(unit(vector(2, -3, 6))).toEqual(near(vector(2 / 7, -3 / 7, 6 / 7)));
    expect(unit(vector(0, 0, 0))).toEqual(vector(0, 0, 0));
  });

  test.each([
    [vector(1, 0, 0), vector(5, 0, 0), 0],
    [vector(1, 0, 0), vector(0, 0, 3), 90],
    [vector(1, 0, 0), vector(-2, 0, 0), 180],
    [vector(0, 1, 0), vector(0, 1, 1), 45],
    [vector(1, 1, 0), vector(0, 1, 1), 60],
    [vector(1, 2, 3), vector(-1, -2, -3), 180],
  ])("%j and %j are %d degrees apart", (a, b, apart) => {
    expect(angleBetweenDeg(a, b)).toBeCloseTo(apart, 9);
    expect(angleBetweenDeg(b, a)).toBeCloseTo(apart, 9);
  });

  test("an angle far under a second of arc is told, where a cosine would be 1", () => {
    expect(angleBetweenDeg(vector(1, 0, 0), vector(1, 1e-9, 0)) / degrees(1e-9)).toBeCloseTo(1, 9);
  });

  test("half a turn is pi, either way", () => {
    expect([degrees(Math.PI), radians(180), degrees(radians(37))]).toEqual([
      180,
      Math.PI,
      expect.closeTo(37, 12),
    ]);
  });
});
