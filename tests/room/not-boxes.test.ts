import { abs, cross, dot, lusolve, norm, subtract } from "mathjs";
import { describe, expect, test } from "vitest";
import { toWorld } from "../../src/geometry/frame.js";
import type { Vector } from "../../src/geometry/vector.js";
import { type Surface, surfaceNamed } from "../../src/room/room.js";
import { type Parts, room, speakerNamed, TRAY_CORNERS } from "../rooms/build.js";
import { ANGLED, L_ROOM, L_WITH_SOFFIT, sloped } from "../rooms/not-boxes.js";

type Triple = [number, number, number];
const triple = ({ x, y, z }: Vector): Triple => [x, y, z];

/** Corners of a surface in the world, on framing faces. */
const cornersOf = (surface: Surface): readonly Triple[] =>
  surface.edges.map(({ from }) => triple(toWorld(surface.frame, from)));

const seatedAt = (left: number, front: number): Parts => ({
  seats: [{ name: "middle", at: { left: `${left} mm`, front: `${front} mm` }, ear: "1200 mm" }],
});

function expectPoints(found: readonly Triple[], wanted: readonly Triple[]): void {
  expect(found).toHaveLength(wanted.length);
  for (const point of wanted) {
    const nearest = Math.min(...found.map((each) => Number(norm(subtract(each, point)))));
    expect(nearest, JSON.stringify(point)).toBeLessThan(0.001);
  }
}

describe("an outline with named walls", () => {
  test("stands round the room in the world, whichever way round it was typed", () => {
    const ceiling: readonly Triple[] = [
      [0, 9000, 2600],
      [4000, 9000, 2600],
      [4000, 3000, 2600],
      [7000, 3000, 2600],
      [7000, 0, 2600],
      [0, 0, 2600],
    ];
    const { outline, walls, ...rest } = L_ROOM.room as Parts & {
      outline: readonly (readonly string[])[];
      walls: readonly string[];
    };
    const [first, ...others] = outline;
    const other = { ...rest, outline: [first ?? [], ...others.reverse()], walls: [...walls].reverse() };
    for (const one of [room(L_ROOM), room({ ...L_ROOM, room: other })]) {
      expectPoints(cornersOf(surfaceNamed(one, "ceiling")), ceiling);
      // Each wall from its left end to its right, as one faces it from inside.
      const step = surfaceNamed(one, "step");
      expect(triple(step.frame.origin)).toEqual([4000, 3000, 0]);
      expect(triple(step.frame.u)).toEqual([1, 0, 0]);
      expect(triple(step.frame.n).map((part) => part + 0)).toEqual([0, -1, 0]);
    }
  });

  test("has the finished outline a board inside, also round the corner that stands out", () => {
    const ceiling = surfaceNamed(room(L_ROOM), "ceiling");
    const world = ceiling.finished.map((at) => triple(toWorld(ceiling.frame, at)));
    expectPoints(world, [
      [12.5, 8987.5, 2600],
      [3987.5, 8987.5, 2600],
      [3987.5, 2987.5, 2600],
      [6987.5, 2987.5, 2600],
      [6987.5, 12.5, 2600],
      [12.5, 12.5, 2600],
    ]);
  });

  test("measured to finished faces it has its framing a board further out all round", () => {
    const { room: typed, ...rest } = L_ROOM;
    const one = room({ ...rest, room: { ...(typed as Parts), measured_to: "finish" } });
    const ceiling = surfaceNamed(one, "ceiling");
    // 7000 and 9000 between boards of 12.5: 7025 and 9025 between studs, 2600 + 12.5 up; the board is the outline typed.
    expectPoints(cornersOf(ceiling), [
      [0, 9025, 2612.5],
      [4025, 9025, 2612.5],
      [4025, 3025, 2612.5],
      [7025, 3025, 2612.5],
      [7025, 0, 2612.5],
      [0, 0, 2612.5],
    ]);
  });

  test("is the same room as the box where it is one", () => {
    const box = room({ framing: null });
    const outlined = room({
      framing: null,
      room: {
        width: null,
        length: null,
        outline: [
          [0, 0],
          ["4 m", 0],
          ["4 m", "6 m"],
          [0, "6 m"],
        ],
        walls: ["front", "right", "back", "left"],
      },
    });
    for (const { name, edges } of box.surfaces) {
      expectPoints(
        cornersOf(surfaceNamed(outlined, name)),
        edges.map(({ from }) => triple(toWorld(surfaceNamed(box, name).frame, from))),
      );
    }
  });

  test("a tape hooks on any of its walls, square to it; two that are not parallel fix a point", () => {
    const at = { slant: "1000 mm", back: "1500 mm" };
    const one = room({ ...ANGLED, speakers: [{ id: "S1", at }] });
    const { position } = speakerNamed(one, "S1");
    if (position.kind !== "given") throw new Error("not given");
    const { x, y } = toWorld(surfaceNamed(one, "ceiling").frame, position.centre);
    // The slant goes from (0, 0) to (2000, 6000); its normal into the room is (6, -2) / sqrt(40).
    const [solved] = lusolve(
      [
        [6 / Math.sqrt(40), -2 / Math.sqrt(40)],
        [0, 1],
      ],
      [1000, 1500],
    ) as number[][];
    expect(x).toBeCloseTo(solved?.[0] ?? Number.NaN, 9);
    expect(y).toBeCloseTo(1500, 9);
  });

  test("members run along a wall at an angle, square tapes apart", () => {
    const one = room({
      ...ANGLED,
      framing: {
        ceiling: {
          run: "along",
          member: { width: "45 mm", depth: "220 mm" },
          from: "slant",
          at: null,
          first: "600 mm",
          spacing: "600 mm",
        },
        left: null,
        right: null,
        front: null,
        back: null,
      },
    });
    const { framing, frame } = surfaceNamed(one, "ceiling");
    if (framing.kind === "unknown") throw new Error("unknown");
    const away = [6 / Math.sqrt(40), -2 / Math.sqrt(40), 0];
    expect(framing.members.length).toBeGreaterThan(4);
    for (const { number, from, to } of framing.members) {
      for (const end of [from, to]) {
        expect(Number(dot(triple(toWorld(frame, end)), away))).toBeCloseTo(600 * number, 6);
      }
    }
  });

  test("a joist's line in an L ends where the room ends, and comes twice where it leaves and comes back", () => {
    const one = room({
      ...L_ROOM,
      framing: {
        ceiling: {
          run: "left-right",
          member: { width: "40 mm", depth: "200 mm" },
          from: "front",
          at: null,
          first: "1 m",
          spacing: "1 m",
        },
        left: null,
        right: null,
        front: null,
        back: null,
      },
    });
    const { framing } = surfaceNamed(one, "ceiling");
    if (framing.kind === "unknown") throw new Error("unknown");
    const long = ({ from, to }: { from: { u: number }; to: { u: number } }) => Math.abs(to.u - from.u);
    const lengthOf = (number: number) =>
      framing.members.filter((each) => each.number === number).map((each) => Math.round(long(each)));
    expect(lengthOf(2)).toEqual([4000]);
    expect(lengthOf(8)).toEqual([7000]);
  });

  test("a seat in the corner that the L leaves out is not in the room", () => {
    expect(() => room({ ...L_ROOM, ...seatedAt(5500, 3000) })).toThrow(/seat-outside/u);
    expect(() => room({ ...L_ROOM, ...seatedAt(5500, 7000) })).not.toThrow();
  });
});

describe("a soffit", () => {
  test("is a surface of its own, and the ceiling loses its area", () => {
    const one = room(L_WITH_SOFFIT);
    expectPoints(cornersOf(surfaceNamed(one, "soffit")), [
      [0, 9000, 2300],
      [800, 9000, 2300],
      [800, 0, 2300],
      [0, 0, 2300],
    ]);
    expectPoints(cornersOf(surfaceNamed(one, "ceiling")), [
      [800, 9000, 2600],
      [4000, 9000, 2600],
      [4000, 3000, 2600],
      [7000, 3000, 2600],
      [7000, 0, 2600],
      [800, 0, 2600],
    ]);
    const along = surfaceNamed(one, "ceiling").edges.map((edge) => edge.along);
    expect(along.toSorted()).toEqual(["back", "end", "front", "right", "soffit", "step"]);
  });

  test("lowers the walls under it, with its side where the ceiling steps up", () => {
    const one = room(L_WITH_SOFFIT);
    expectPoints(cornersOf(surfaceNamed(one, "left")), [
      [0, 0, 0],
      [0, 9000, 0],
      [0, 9000, 2300],
      [0, 0, 2300],
    ]);
    expectPoints(cornersOf(surfaceNamed(one, "front")), [
      [0, 9000, 0],
      [4000, 9000, 0],
      [4000, 9000, 2600],
      [800, 9000, 2600],
      [800, 9000, 2300],
      [0, 9000, 2300],
    ]);
  });

  test("down hangs from the ceiling that is there", () => {
    const on = (left: string, model = "round"): Parts => ({
      ...L_WITH_SOFFIT,
      speakers: [{ id: "S1", model, on: "front", at: { left, down: "1 m" } }],
    });
    for (const [left, height] of [
      ["500 mm", 1300],
      ["2 m", 1600],
    ] as const) {
      const one = room(on(left));
      const { position } = speakerNamed(one, "S1");
      if (position.kind !== "given") throw new Error("not given");
      expect(position.centre.v).toBeCloseTo(height, 9);
    }
  });

  test("a tray in the middle leaves a hole in the ceiling", () => {
    const one = room({
      room: {
        ceilings: [
          {
            name: "tray",
            corners: TRAY_CORNERS,
            height: "2800 mm",
          },
        ],
      },
      framing: null,
    });
    const ceiling = surfaceNamed(one, "ceiling");
    expect(ceiling.voids.map(({ name }) => name)).toEqual(["tray"]);
    // The ceiling is the lower one: its board goes round the corner and up, a board inside the hole.
    const [hole] = ceiling.voids;
    const world = (hole?.finished ?? []).map((at) => triple(toWorld(ceiling.frame, at)));
    expectPoints(world, [
      [1012.5, 2012.5, 2600],
      [2987.5, 2012.5, 2600],
      [2987.5, 3987.5, 2600],
      [1012.5, 3987.5, 2600],
    ]);
  });
});

test("members of a tray that meets no wall are counted from one all the same", () => {
  const one = room({
    room: {
      ceilings: [
        {
          name: "tray",
          corners: TRAY_CORNERS,
          height: "2800 mm",
        },
      ],
    },
    framing: {
      tray: {
        run: "left-right",
        member: { width: "40 mm", depth: "200 mm" },
        from: "front",
        first: "700 mm",
        spacing: "700 mm",
      },
    },
  });
  const { framing, frame } = surfaceNamed(one, "tray");
  if (framing.kind === "unknown") throw new Error("unknown");
  // At 2100, 2800 and 3500 from the front wall: the third to the fifth; each from 1000 to 3000 from the left.
  const lines = framing.members.map(({ number, from, to }) => ({
    number,
    front: Math.round(6000 - toWorld(frame, from).y),
    across: [toWorld(frame, from).x, toWorld(frame, to).x].map(Math.round).toSorted((a, b) => a - b),
  }));
  expect(lines).toEqual([3, 4, 5].map((number) => ({ number, front: 700 * number, across: [1000, 3000] })));
});

describe.each(["front", "back", "left", "right"] as const)("a slope that is low at the %s", (low) => {
  const one = room({
    ...sloped(low),
    speakers: [{ id: "S1", on: "slope", at: { left: "1 m", front: "1500 mm" } }],
  });
  const slope = surfaceNamed(one, "slope");
  const { frame } = slope;
  const [run, rise] = low === "front" || low === "back" ? [6000, 2000] : [4000, 2000];

  test("lies in the plane of its corners and faces down into the room, v to the front wall", () => {
    const [a, b, c] = cornersOf(slope);
    if (a === undefined || b === undefined || c === undefined) throw new Error("corners");
    const normal = cross(subtract(b, a) as Triple, subtract(c, a) as Triple) as Triple;
    expect(Number(norm(cross(normal, triple(frame.n)) as Triple)) / Number(norm(normal))).toBeLessThan(1e-9);
    expect(frame.n.z).toBeLessThan(0);
    expect(frame.v.y).toBeGreaterThan(0);
    expect(frame.u.x).toBeLessThan(0);
    // A right-handed frame, as seen by the person under it.
    const right = cross(triple(frame.u), triple(frame.v)) as Triple;
    expect(Number(norm(subtract(right, triple(frame.n)) as Triple))).toBeLessThan(1e-9);
  });

  test("a tape is held along it: the point lies so far from where it meets each wall, on the slope itself", () => {
    const { position } = speakerNamed(one, "S1");
    if (position.kind !== "given") throw new Error("not given");
    const point = triple(toWorld(frame, position.centre));
    // Distance from the line in which the slope meets a wall: |(p - a) x d| / |d|.
    const fromEdge = (along: string): number => {
      const edge = slope.edges.find((each) => each.along === along);
      if (edge === undefined) throw new Error(along);
      const [from, to] = [edge.from, edge.to].map((end) => triple(toWorld(frame, end)));
      const d = subtract(to ?? [0, 0, 0], from ?? [0, 0, 0]) as Triple;
      return Number(norm(cross(subtract(point, from ?? [0, 0, 0]) as Triple, d) as Triple)) / Number(norm(d));
    };
    expect(fromEdge("left")).toBeCloseTo(1000, 6);
    expect(fromEdge("front")).toBeCloseTo(1500, 6);
    // One of the two is level; the other is as much longer than its plan as the slope is.
    const plan = low === "front" || low === "back" ? 6000 * 1 - (point[1] ?? 0) : (point[0] ?? 0);
    expect(plan * (Math.hypot(run, rise) / run)).toBeCloseTo(
      low === "front" || low === "back" ? 1500 : 1000,
      6,
    );
  });

  test("the finished outline on the slope is where the boarded walls stop it", () => {
    const { boardMm } = slope;
    for (const [index, at] of slope.finished.entries()) {
      const point = triple(toWorld(frame, at, boardMm));
      const [edge, before] = [slope.edges[index], slope.edges.at(index - 1)];
      for (const wall of [edge?.along, before?.along]) {
        const { frame: of, boardMm: board } = surfaceNamed(one, wall ?? "");
        const away = Number(dot(subtract(point, triple(of.origin)) as Triple, triple(of.n)));
        expect(Number(abs(away - board))).toBeLessThan(1e-6);
      }
    }
  });
});
