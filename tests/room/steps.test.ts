import { describe, expect, test } from "vitest";
import { toWorld } from "../../src/geometry/frame.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { type Edge, type Room, type Surface, surfaceNamed } from "../../src/room/room.js";
import { type Parts, room } from "../rooms/build.js";

/*
 * Soffits, trays and slopes in the plain box (4 x 6 m, 2.6 m high, boards of 12.5), in points of the world that can be
 * reckoned in the head: x from the left wall, y from the back wall. Corners are typed from the left and the front.
 */

type Typed = readonly (readonly [number, number])[];
const cornersMm = (typed: Typed) => typed.map((corner) => corner.map((mm) => `${mm} mm`));
const under = (...ceilings: readonly Parts[]): Room => room({ room: { ceilings }, framing: null });
const flat = (name: string, heightMm: number, typed: Typed): Parts => ({
  name,
  corners: cornersMm(typed),
  height: `${heightMm} mm`,
});

type Point = readonly number[];
const pointIn = ({ frame }: Surface, at: SurfacePoint): Point => {
  const { x, y, z } = toWorld(frame, at);
  return [x, y, z].map((mm) => Math.round(mm * 1000) / 1000 + 0);
};
/** Each edge by its name and where it begins and ends in the world. */
const edgesIn = (surface: Surface, edges: readonly Edge[] = surface.edges) =>
  edges.map(({ along, from, to }) => [along, pointIn(surface, from), pointIn(surface, to)]);
const finishedIn = (surface: Surface, outline = surface.finished): Point[] =>
  outline.map((corner) => pointIn(surface, corner));
const edgeNames = (one: Room, name: string): string[] =>
  surfaceNamed(one, name).edges.map(({ along }) => along);

describe("a tray", () => {
  const one = under(
    flat("tray", 2800, [
      [1000, 2000],
      [3000, 2000],
      [3000, 4000],
      [1000, 4000],
    ]),
  );
  const tray = surfaceNamed(one, "tray");
  const ceiling = surfaceNamed(one, "ceiling");

  test("ends at the ceiling round it, each side told by the wall behind it", () => {
    expect(edgesIn(tray)).toEqual([
      ["ceiling.front", [1000, 4000, 2800], [3000, 4000, 2800]],
      ["ceiling.right", [3000, 4000, 2800], [3000, 2000, 2800]],
      ["ceiling.back", [3000, 2000, 2800], [1000, 2000, 2800]],
      ["ceiling.left", [1000, 2000, 2800], [1000, 4000, 2800]],
    ]);
  });

  test("is a hole in the ceiling, whose left side is the tray's left side", () => {
    const [hole] = ceiling.voids;
    expect(edgesIn(ceiling, hole?.edges)).toEqual([
      ["tray.left", [1000, 4000, 2600], [1000, 2000, 2600]],
      ["tray.back", [1000, 2000, 2600], [3000, 2000, 2600]],
      ["tray.right", [3000, 2000, 2600], [3000, 4000, 2600]],
      ["tray.front", [3000, 4000, 2600], [1000, 4000, 2600]],
    ]);
    expect(ceiling.voids).toHaveLength(1);
    expect(edgeNames(one, "ceiling")).toEqual(["left", "front", "right", "back"]);
  });

  test("is narrower by the board on its upright sides, and so is the hole", () => {
    const narrowed = (z: number) =>
      [
        [1012.5, 2012.5],
        [1012.5, 3987.5],
        [2987.5, 2012.5],
        [2987.5, 3987.5],
      ].map((corner) => [...corner, z]);
    expect(finishedIn(tray).sort()).toEqual(narrowed(2800).sort());
    expect(finishedIn(ceiling, ceiling.voids[0]?.finished).sort()).toEqual(narrowed(2600).sort());
  });
});

describe("soffits along both side walls, 2.3 and 2.4 m high", () => {
  const one = under(
    flat("low", 2300, [
      [0, 0],
      [800, 0],
      [800, 6000],
      [0, 6000],
    ]),
    flat("lower", 2400, [
      [3000, 0],
      [4000, 0],
      [4000, 6000],
      [3000, 6000],
    ]),
  );

  test("the front wall follows them down and up", () => {
    expect(edgesIn(surfaceNamed(one, "front"))).toEqual([
      ["floor", [0, 6000, 0], [4000, 6000, 0]],
      ["right", [4000, 6000, 0], [4000, 6000, 2400]],
      ["lower", [4000, 6000, 2400], [3000, 6000, 2400]],
      ["lower", [3000, 6000, 2400], [3000, 6000, 2600]],
      ["ceiling", [3000, 6000, 2600], [800, 6000, 2600]],
      ["low", [800, 6000, 2600], [800, 6000, 2300]],
      ["low", [800, 6000, 2300], [0, 6000, 2300]],
      ["left", [0, 6000, 2300], [0, 6000, 0]],
    ]);
  });

  test("the board on a soffit's upright side makes the soffit wider and the ceiling narrower", () => {
    const xs = (name: string): number[] => {
      const points = finishedIn(surfaceNamed(one, name)).map(([x = Number.NaN]) => x);
      return [Math.min(...points), Math.max(...points)];
    };
    expect(xs("low")).toEqual([12.5, 812.5]);
    expect(xs("ceiling")).toEqual([812.5, 2987.5]);
    expect(xs("lower")).toEqual([2987.5, 3987.5]);
  });

  test("and the walls' finished outline likewise, under the boards of the ceilings", () => {
    expect(finishedIn(surfaceNamed(one, "front"))).toEqual([
      [12.5, 6000, 0],
      [3987.5, 6000, 0],
      [3987.5, 6000, 2387.5],
      [2987.5, 6000, 2387.5],
      [2987.5, 6000, 2587.5],
      [812.5, 6000, 2587.5],
      [812.5, 6000, 2287.5],
      [12.5, 6000, 2287.5],
    ]);
  });

  test("the one neighbour of a soffit needs no wall to tell it", () => {
    expect(edgeNames(one, "low")).toEqual(["front", "ceiling", "back", "left"]);
    expect(edgeNames(one, "ceiling")).toEqual(["front", "lower", "back", "low"]);
  });
});

describe("a soffit round three sides", () => {
  const one = under(
    flat("u", 2300, [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [3400, 3000],
      [3400, 500],
      [800, 500],
      [800, 3000],
      [0, 3000],
    ]),
  );

  test("has sides that look one way more than once: they are counted", () => {
    expect(edgesIn(surfaceNamed(one, "ceiling"))).toEqual([
      ["left", [0, 0, 2600], [0, 3000, 2600]],
      ["u.front", [0, 3000, 2600], [800, 3000, 2600]],
      ["u.left", [800, 3000, 2600], [800, 5500, 2600]],
      ["u.front-2", [800, 5500, 2600], [3400, 5500, 2600]],
      ["u.right", [3400, 5500, 2600], [3400, 3000, 2600]],
      ["u.front-3", [3400, 3000, 2600], [4000, 3000, 2600]],
      ["right", [4000, 3000, 2600], [4000, 0, 2600]],
      ["back", [4000, 0, 2600], [0, 0, 2600]],
    ]);
    expect(edgeNames(one, "u")).toEqual([
      ...["front", "right", "ceiling.back", "ceiling.left"],
      ...["ceiling.back-2", "ceiling.right", "ceiling.back-3", "left"],
    ]);
  });

  test("leaves walls at two heights beside each other", () => {
    expect(edgesIn(surfaceNamed(one, "left"))).toEqual([
      ["floor", [0, 0, 0], [0, 6000, 0]],
      ["front", [0, 6000, 0], [0, 6000, 2300]],
      ["u", [0, 6000, 2300], [0, 3000, 2300]],
      ["u", [0, 3000, 2300], [0, 3000, 2600]],
      ["ceiling", [0, 3000, 2600], [0, 0, 2600]],
      ["back", [0, 0, 2600], [0, 0, 0]],
    ]);
  });
});

describe("a corner that is typed in the middle of a straight side", () => {
  const soffit = (typed: Typed) => under(flat("low", 2300, typed));
  const plain = soffit([
    [0, 0],
    [800, 0],
    [800, 6000],
    [0, 6000],
  ]);
  const sorted = (one: Room, name: string) => edgesIn(surfaceNamed(one, name)).map(String).sort();

  test.each<[string, Typed]>([
    [
      "in it",
      [
        [0, 0],
        [800, 0],
        [800, 2000],
        [800, 4000],
        [800, 6000],
        [0, 6000],
      ],
    ],
    [
      "where the typing begins",
      [
        [800, 3000],
        [800, 6000],
        [0, 6000],
        [0, 0],
        [800, 0],
      ],
    ],
    [
      "at a wall, where the typing begins",
      [
        [0, 3000],
        [0, 0],
        [800, 0],
        [800, 6000],
        [0, 6000],
      ],
    ],
  ])("%s makes no edge of its own", (_, typed) => {
    const one = soffit(typed);
    for (const name of ["low", "ceiling", "left", "front"])
      expect(sorted(one, name)).toEqual(sorted(plain, name));
  });
});

describe("a ceiling that meets one thing in two places", () => {
  test("a wall before and behind a soffit is one wall, by its own name", () => {
    const one = under(
      flat("box", 2300, [
        [0, 2000],
        [800, 2000],
        [800, 4000],
        [0, 4000],
      ]),
    );
    expect(edgesIn(surfaceNamed(one, "ceiling")).filter(([along]) => along === "left")).toEqual([
      ["left", [0, 0, 2600], [0, 2000, 2600]],
      ["left", [0, 4000, 2600], [0, 6000, 2600]],
    ]);
    expect(edgeNames(one, "box")).toEqual(["ceiling.front", "ceiling.right", "ceiling.back", "left"]);
  });

  test("a soffit in a corner is told by the wall behind each of its two sides", () => {
    const one = under(
      flat("box", 2300, [
        [0, 0],
        [800, 0],
        [800, 1000],
        [0, 1000],
      ]),
    );
    expect(edgeNames(one, "box")).toEqual(["front", "ceiling.right", "ceiling.back", "left"]);
    expect(edgeNames(one, "ceiling")).toEqual(["left", "box.front", "box.left", "front", "right", "back"]);
  });

  test("two soffits end to end are two edges, though they are one line", () => {
    const half = (name: string, heightMm: number, fromMm: number) =>
      flat(name, heightMm, [
        [0, fromMm],
        [800, fromMm],
        [800, fromMm + 3000],
        [0, fromMm + 3000],
      ]);
    const one = under(half("low", 2300, 0), half("lower", 2200, 3000));
    expect(edgeNames(one, "ceiling")).toEqual(["right", "back", "lower", "low", "front"]);
    expect(edgesIn(surfaceNamed(one, "left"))).toEqual([
      ["floor", [0, 0, 0], [0, 6000, 0]],
      ["front", [0, 6000, 0], [0, 6000, 2300]],
      ["low", [0, 6000, 2300], [0, 3000, 2300]],
      ["lower", [0, 3000, 2300], [0, 3000, 2200]],
      ["lower", [0, 3000, 2200], [0, 0, 2200]],
      ["back", [0, 0, 2200], [0, 0, 0]],
    ]);
  });
});

describe("a slope that meets the flat ceiling in a crease", () => {
  const one = under({
    name: "slope",
    corners: cornersMm([
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ]),
    heights: ["2000 mm", "2000 mm", "2600 mm", "2600 mm"],
  });

  test("has no board in the crease, so the flat ceiling ends where it did", () => {
    const ceiling = surfaceNamed(one, "ceiling");
    expect(ceiling.edges.map(({ along, boardMm }) => [along, boardMm])).toEqual([
      ["left", 12.5],
      ["slope", 0],
      ["right", 12.5],
      ["back", 12.5],
    ]);
    expect(finishedIn(ceiling)).toContainEqual([12.5, 3000, 2600]);
  });

  test("the side walls follow it without a step", () => {
    expect(edgesIn(surfaceNamed(one, "left"))).toEqual([
      ["floor", [0, 0, 0], [0, 6000, 0]],
      ["front", [0, 6000, 0], [0, 6000, 2000]],
      ["slope", [0, 6000, 2000], [0, 3000, 2600]],
      ["ceiling", [0, 3000, 2600], [0, 0, 2600]],
      ["back", [0, 0, 2600], [0, 0, 0]],
    ]);
  });

  test("runs into the walls' boards: 12.5 square to it, more along it", () => {
    // Falls 600 in 3000: along the slope it is longer by the root of 1 + 0.2 squared.
    const long = Math.hypot(1, 0.2);
    const slope = surfaceNamed(one, "slope");
    const [front] = slope.edges;
    expect(front?.along).toBe("front");
    expect(front?.slantMm).toBeCloseTo(-12.5 * 0.2, 9);
    expect(front?.boardMm).toBeCloseTo(12.5 * long - 12.5 * 0.2, 9);
  });
});

test("layers of board and what stands on a surface are those of its kind and its name", () => {
  const one = room({
    board: { ceiling: ["12.5 mm", "15 mm"], walls: ["9 mm", "9 mm", "9 mm"] },
    surfaces: {
      front: { rated: true, insulation: "mineral" },
      ceiling: { enclosure: true, second_support: true },
    },
  });
  expect(surfaceNamed(one, "ceiling")).toMatchObject({
    kind: "ceiling",
    layersMm: [12.5, 15],
    boardMm: 27.5,
    ...{ rated: false, enclosure: true, insulation: null, secondSupport: true },
  });
  expect(surfaceNamed(one, "front")).toMatchObject({
    kind: "wall",
    layersMm: [9, 9, 9],
    boardMm: 27,
    ...{ rated: true, enclosure: false, secondSupport: false },
  });
  expect(surfaceNamed(one, "left")).toMatchObject({ rated: false, insulation: null, voids: [] });
});
