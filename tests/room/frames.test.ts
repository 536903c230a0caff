import { cross, det, dot, norm, subtract } from "mathjs";
import { describe, expect, test } from "vitest";
import { toSurface, toWorld } from "../../src/geometry/frame.js";
import type { Vector } from "../../src/geometry/vector.js";
import { type Surface, surfaceNamed } from "../../src/room/room.js";
import { room, speakerNamed } from "../rooms/build.js";

/*
 * Which way round, from points in the room and a person who stands in it, with the vector arithmetic of another
 * library: right is what lies to the right of somebody who looks at the surface with the sheet's top held up.
 */

type Triple = [number, number, number];

const triple = ({ x, y, z }: Vector): Triple => [x, y, z];
const crossed = (a: Triple, b: Triple): Triple => {
  const [x = Number.NaN, y = Number.NaN, z = Number.NaN] = cross(a, b) as number[];
  return [x, y, z];
};

/** A room 4 m wide, 6 m long and 2.6 m high; the person stands somewhere in it. */
const PERSON: Triple = [1700, 2300, 1600];
const UP: Triple = [0, 0, 1];
const TO_FRONT: Triple = [0, 1, 0];

/** Two marks on each surface by the tapes that a crew would hold, and the points in the room that those mean. */
const MARKS: Readonly<
  Record<
    string,
    { looking: Triple; top: Triple; marks: readonly { at: Record<string, string>; is: Triple }[] }
  >
> = {
  ceiling: {
    looking: UP,
    top: TO_FRONT,
    marks: [
      { at: { left: "1 m", front: "1.5 m" }, is: [1000, 4500, 2600] },
      { at: { right: "500 mm", back: "2 m" }, is: [3500, 2000, 2600] },
    ],
  },
  front: {
    looking: [0, 1, 0],
    top: UP,
    marks: [
      { at: { left: "1 m", up: "500 mm" }, is: [1000, 6000, 500] },
      { at: { right: "500 mm", down: "600 mm" }, is: [3500, 6000, 2000] },
    ],
  },
  back: {
    looking: [0, -1, 0],
    top: UP,
    marks: [
      { at: { left: "1 m", up: "500 mm" }, is: [1000, 0, 500] },
      { at: { right: "500 mm", down: "600 mm" }, is: [3500, 0, 2000] },
    ],
  },
  left: {
    looking: [-1, 0, 0],
    top: UP,
    marks: [
      { at: { front: "1 m", up: "500 mm" }, is: [0, 5000, 500] },
      { at: { back: "500 mm", down: "600 mm" }, is: [0, 500, 2000] },
    ],
  },
  right: {
    looking: [1, 0, 0],
    top: UP,
    marks: [
      { at: { front: "1 m", up: "500 mm" }, is: [4000, 5000, 500] },
      { at: { back: "500 mm", down: "600 mm" }, is: [4000, 500, 2000] },
    ],
  },
};

const speakers = Object.entries(MARKS).flatMap(([on, { marks }]) =>
  marks.map(({ at }, index) => ({ id: `${on}-${index}`, on, at })),
);
const resolved = room({ speakers });

function centreOf(id: string) {
  const { position } = speakerNamed(resolved, id);
  if (position.kind !== "given") throw new Error(`${id} has no position`);
  return position.centre;
}

describe("each surface as a person in the room sees it", () => {
  for (const [name, { looking, top, marks }] of Object.entries(MARKS)) {
    const surface: Surface = surfaceNamed(resolved, name);
    const { frame } = surface;
    // Looking along `looking` with `top` up: the right hand points along looking x top.
    const right = crossed(looking, top);

    test(`${name}: tapes mean the points that a crew would mark`, () => {
      for (const [index, { is }] of marks.entries()) {
        const world = triple(toWorld(frame, centreOf(`${name}-${index}`)));
        expect(Number(norm(subtract(world, is) as number[]))).toBeLessThan(1e-9);
        const [x, y, z] = is;
        const again = toSurface(frame, { x, y, z });
        expect(again.u).toBeCloseTo(centreOf(`${name}-${index}`).u, 9);
        expect(again.v).toBeCloseTo(centreOf(`${name}-${index}`).v, 9);
      }
    });

    test(`${name}: u grows to the person's right, v to the sheet's top`, () => {
      const [first, second] = marks.map(({ is }) => subtract(is, PERSON) as Triple);
      if (first === undefined || second === undefined) throw new Error("two marks wanted");
      const [a, b] = [centreOf(`${name}-0`), centreOf(`${name}-1`)];
      expect(b.u - a.u).toBeCloseTo(Number(dot(second, right)) - Number(dot(first, right)), 9);
      expect(b.v - a.v).toBeCloseTo(Number(dot(second, top)) - Number(dot(first, top)), 9);
      expect(Math.abs(b.u - a.u)).toBeGreaterThan(100);
    });

    test(`${name}: the frame is right-handed, of lengths 1, and n comes at the person`, () => {
      const [u, v, n] = [triple(frame.u), triple(frame.v), triple(frame.n)];
      expect(det([u, v, n])).toBeCloseTo(1, 12);
      for (const axis of [u, v, n]) expect(Number(norm(axis))).toBeCloseTo(1, 12);
      const toPerson = subtract(PERSON, triple(frame.origin)) as Triple;
      expect(Number(dot(n, toPerson))).toBeGreaterThan(0);
    });

    test(`${name}: the outline begins at 0, is on framing faces and goes round against the clock`, () => {
      const corners = surface.edges.map(({ from }) => from);
      expect(Math.min(...corners.map(({ u }) => u))).toBe(0);
      expect(Math.min(...corners.map(({ v }) => v))).toBe(0);
      const doubled = surface.edges.map(({ from, to }) => from.u * to.v - to.u * from.v);
      const areaMm2 = doubled.reduce((sum, part) => sum + part, 0) / 2;
      const sides = { ceiling: [4000, 6000], front: [4000, 2600], back: [4000, 2600] }[name] ?? [6000, 2600];
      expect(areaMm2).toBeCloseTo((sides[0] ?? 0) * (sides[1] ?? 0), 6);
      for (const [index, edge] of surface.edges.entries()) {
        expect(edge.to).toEqual(surface.edges[(index + 1) % surface.edges.length]?.from);
      }
    });

    test(`${name}: each edge lies along the wall, floor or ceiling that it is named for`, () => {
      const on: Readonly<Record<string, (point: Vector) => number>> = {
        left: ({ x }) => x,
        right: ({ x }) => x - 4000,
        back: ({ y }) => y,
        front: ({ y }) => y - 6000,
        floor: ({ z }) => z,
        ceiling: ({ z }) => z - 2600,
      };
      expect(surface.edges).toHaveLength(4);
      for (const { along, from, to } of surface.edges) {
        for (const corner of [from, to]) {
          expect(on[along]?.(toWorld(frame, corner)), along).toBeCloseTo(0, 9);
        }
      }
    });
  }

  test("left and right change places between a plan and the ceiling seen from below", () => {
    const [leftMark, rightMark] = [centreOf("ceiling-0"), centreOf("ceiling-1")];
    expect(leftMark.u).toBeGreaterThan(rightMark.u);
    expect(MARKS.ceiling?.marks.map(({ is }) => is[0])).toEqual([1000, 3500]);
  });
});

test("walls go round the room with the clock, seen from above", () => {
  expect(resolved.walls).toEqual(["left", "front", "right", "back"]);
  expect(resolved.surfaces.map(({ name }) => name)).toEqual(["ceiling", "left", "front", "right", "back"]);
});
