import fc from "fast-check";
import { cross, dot, lusolve, norm } from "mathjs";
import { describe, expect, test } from "vitest";
import { unit, type Vector, vector } from "../../src/geometry/vector.js";
import { alongPlane, insetMm, moved, slantMm } from "../../src/room/resolve/meeting.js";
import { isParallel, meetingPoint, type Plane, planeThrough } from "../../src/room/resolve/planes.js";

/* Where walls, slopes and their boards meet; another library (mathjs) as the judge of the points. */

type Triple = [number, number, number];
const triple = ({ x, y, z }: Vector): Triple => [x, y, z];
const near = ({ x, y, z }: Vector) => ({
  x: expect.closeTo(x, 6),
  y: expect.closeTo(y, 6),
  z: expect.closeTo(z, 6),
});

const LEFT = planeThrough(vector(0, 0, 0), vector(1, 0, 0));
const FRONT = planeThrough(vector(0, 6000, 0), vector(0, -1, 0));
const CEILING = planeThrough(vector(0, 0, 2600), vector(0, 0, -1));
/** 2600 mm high at the back wall, a metre lower for every 2 m toward the front. */
const SLOPE = planeThrough(vector(0, 0, 2600), unit(vector(0, -1, -2)));

const part = fc.integer({ min: -1000, max: 1000 });
const direction = fc
  .tuple(part, part, part)
  .filter(([x, y, z]) => Math.hypot(x, y, z) > 100)
  .map(([x, y, z]) => unit(vector(x, y, z)));

describe("three planes", () => {
  test("meet in the corner of a room, in whichever order they come", () => {
    const corner = vector(0, 6000, 2600);
    expect(meetingPoint([LEFT, FRONT, CEILING])).toEqual(corner);
    expect(meetingPoint([CEILING, LEFT, FRONT])).toEqual(corner);
    expect(meetingPoint([FRONT, LEFT, CEILING])).toEqual(corner);
    // Half of 6 m lower.
    expect(meetingPoint([LEFT, FRONT, SLOPE])).toEqual(near(vector(0, 6000, -400)));
  });

  test("have no corner where two of them are parallel, or where all three share a direction", () => {
    const right = planeThrough(vector(4000, 0, 0), vector(-1, 0, 0));
    expect(meetingPoint([LEFT, right, CEILING])).toBeNull();
    expect(meetingPoint([LEFT, LEFT, CEILING])).toBeNull();
    const upright = planeThrough(vector(100, 100, 0), unit(vector(1, 1, 0)));
    expect(meetingPoint([LEFT, FRONT, upright])).toBeNull();
  });

  test("at any angle meet where the equations are solved", () => {
    const point = fc.tuple(part, part, part).map(([x, y, z]) => vector(x, y, z));
    fc.assert(
      fc.property(direction, direction, direction, point, (a, b, c, at) => {
        const volume = Math.abs(Number(dot(triple(a), cross(triple(b), triple(c)) as Triple)));
        fc.pre(volume > 0.05);
        const planes = [a, b, c].map((normal): Plane => planeThrough(at, normal));
        const rows = planes.map(({ normal }) => triple(normal));
        const solved = lusolve(
          rows,
          planes.map(({ offsetMm }) => offsetMm),
        ) as number[][];
        const [x = 0, y = 0, z = 0] = solved.map(([value = Number.NaN]) => value);
        const [first, second, third] = planes as [Plane, Plane, Plane];
        expect(meetingPoint([first, second, third])).toEqual(near(vector(x, y, z)));
        expect(meetingPoint([first, second, third])).toEqual(near(at));
      }),
    );
  });

  test("are parallel facing each other or alike, and not at any slope that is built", () => {
    expect(isParallel(vector(1, 0, 0), vector(-1, 0, 0))).toBe(true);
    expect(isParallel(SLOPE.normal, SLOPE.normal)).toBe(true);
    expect(isParallel(vector(0, 0, 1), unit(vector(0, 0.001, 1)))).toBe(false);
    expect(isParallel(vector(0, 0, 1), vector(0, 1, 0))).toBe(false);
    expect(isParallel(vector(0, 0, 1), vector(1, 0, 0))).toBe(false);
    expect(isParallel(vector(0, 1, 0), vector(1, 0, 0))).toBe(false);
  });
});

describe("the board of a face takes off the surface that ends at it", () => {
  const wall = { name: "front", normal: vector(0, -1, 0), on: vector(0, 6000, 0), boardMm: 12.5 };
  const flat = { normal: vector(0, 0, -1), boardMm: 16 };
  const toBack = vector(0, -1, 0);

  test("its own thickness where they are square to each other", () => {
    expect(insetMm(flat, toBack, wall)).toBeCloseTo(12.5, 9);
    expect(slantMm(flat, toBack, wall)).toBe(0);
  });

  test("more or less at a slope: of 3 along and 4 down, 5 / 3 of it and 4 / 3 of the surface's own board", () => {
    // Falling to the front wall: up the slope to the back is (0, -3, 4) / 5, its normal (0, -4, -3) / 5.
    const falling = { normal: vector(0, -0.8, -0.6), boardMm: 15 };
    const upToBack = vector(0, -0.6, 0.8);
    expect(insetMm(falling, upToBack, wall)).toBeCloseTo(12.5 * (5 / 3) - 15 * (4 / 3), 9);
    expect(slantMm(falling, upToBack, wall)).toBeCloseTo(-15 * (4 / 3), 9);
    // Rising to it: the slope's board comes away from the wall.
    const rising = { normal: vector(0, 0.8, -0.6), boardMm: 15 };
    const downToBack = vector(0, -0.6, -0.8);
    expect(insetMm(rising, downToBack, wall)).toBeCloseTo(12.5 * (5 / 3) + 15 * (4 / 3), 9);
  });

  test("nothing where they do not meet", () => {
    expect(insetMm({ normal: vector(0, -1, 0), boardMm: 16 }, vector(0, 0, 1), wall)).toBe(0);
  });

  test("so that the finished edge lies in both finished faces, at any angle", () => {
    const board = fc.integer({ min: 0, max: 40 });
    fc.assert(
      fc.property(direction, direction, direction, board, board, (normal, along, faceNormal, own, other) => {
        const inward = unit(alongPlane(normal, along));
        const reach = Number(dot(triple(faceNormal), triple(inward)));
        fc.pre(Number(norm(triple(inward))) > 0.5 && Math.abs(reach) > 0.1);
        const face = { name: "", normal: faceNormal, on: vector(0, 0, 0), boardMm: other };
        const onFraming = moved(vector(0, 0, 0), inward, insetMm({ normal, boardMm: own }, inward, face));
        const finished = moved(onFraming, normal, own);
        expect(Number(dot(triple(finished), triple(faceNormal)))).toBeCloseTo(other, 6);
        expect(Number(dot(triple(finished), triple(normal)))).toBeCloseTo(own, 6);
      }),
    );
  });
});

test("a direction along a plane is what the plane leaves of it", () => {
  expect(alongPlane(vector(0, 0, -1), vector(3, 4, 12))).toEqual(near(vector(3, 4, 0)));
  expect(moved(vector(1, 2, 3), vector(0.6, 0, 0.8), 10)).toEqual(near(vector(7, 2, 11)));
});
