import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import { toWorld } from "../../src/geometry/frame.js";
import { surfaceNamed } from "../../src/room/room.js";
import { type Parts, room, speakerNamed } from "../rooms/build.js";

/*
 * What a tape says, worked out here from the room's size and the point alone: the origin of the world is the floor
 * under the back-left corner of the framing, x to the right, y to the front, z up.
 */

interface Box {
  readonly width: number;
  readonly length: number;
  readonly height: number;
  readonly measuredTo: "framing" | "finish";
  readonly wallBoard: number;
  readonly ceilingBoard: number;
  /** Where the point lies, as shares of the room's sides. */
  readonly across: number;
  readonly along: number;
  readonly up: number;
}

const tenths = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((count) => count / 10);

const boxes: fc.Arbitrary<Box> = fc.record({
  width: tenths(1000, 20000),
  length: tenths(1000, 20000),
  height: tenths(1500, 6000),
  measuredTo: fc.constantFrom("framing", "finish"),
  wallBoard: tenths(0, 40),
  ceilingBoard: tenths(0, 60),
  across: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
  along: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
  up: fc.double({ min: 0.05, max: 0.9, noNaN: true }),
});

/** Between framing faces, in mm. */
function framed({ width, length, height, measuredTo, wallBoard, ceilingBoard }: Box) {
  const isFinish = measuredTo === "finish";
  return {
    width: width + (isFinish ? 2 * wallBoard : 0),
    length: length + (isFinish ? 2 * wallBoard : 0),
    height: height + (isFinish ? ceilingBoard : 0),
  };
}

/** Every tape that reaches the point, as typed: from the faces that the file measures from. */
function tapesTo(box: Box) {
  const { width, length, height } = framed(box);
  const point = { x: width * box.across, y: length * box.along, z: height * box.up };
  const wall = box.measuredTo === "finish" ? box.wallBoard : 0;
  const ceiling = box.measuredTo === "finish" ? box.ceilingBoard : 0;
  const mm = (value: number): string => `${value.toFixed(9)} mm`;
  return {
    point,
    left: mm(point.x - wall),
    right: mm(width - point.x - wall),
    front: mm(length - point.y - wall),
    back: mm(point.y - wall),
    up: mm(point.z),
    down: mm(height - point.z - ceiling),
  };
}

function boxParts({ width, length, height, measuredTo, wallBoard, ceilingBoard }: Box): Parts {
  return {
    room: { width: `${width} mm`, length: `${length} mm`, height: `${height} mm`, measured_to: measuredTo },
    board: { ceiling: `${ceilingBoard} mm`, walls: `${wallBoard} mm` },
    framing: null,
    seats: [{ name: "middle", at: { left: "500 mm", front: "500 mm" }, ear: "1 m" }],
  };
}

type Side = "left" | "right" | "front" | "back" | "up" | "down";

/** One loudspeaker for each pair of tapes, on that surface. */
const speakersBy = (on: string, pairs: readonly (readonly [Side, Side])[], box: Box): Parts[] => {
  const tapes = tapesTo(box);
  return pairs.map(([first, second], index) => ({
    id: `S${index}`,
    on,
    at: { [first]: tapes[first], [second]: tapes[second] },
  }));
};

const SURFACES: Readonly<Record<string, readonly (readonly [Side, Side])[]>> = {
  ceiling: [
    ["left", "front"],
    ["left", "back"],
    ["right", "front"],
    ["back", "right"],
  ],
  front: [
    ["left", "up"],
    ["left", "down"],
    ["right", "up"],
    ["down", "right"],
  ],
  back: [
    ["left", "up"],
    ["right", "down"],
  ],
  left: [
    ["front", "up"],
    ["back", "down"],
  ],
  right: [
    ["front", "down"],
    ["back", "up"],
  ],
};

/** Where the surface itself puts the point, in the world. */
function onSurface(name: string, box: Box): { x?: number; y?: number; z?: number } {
  const { width, length, height } = framed(box);
  const places = {
    ceiling: { z: height },
    front: { y: length },
    back: { y: 0 },
    left: { x: 0 },
    right: { x: width },
  };
  return places[name as keyof typeof places];
}

describe("tapes from any walls to one point give one centre, where the point is", () => {
  for (const [name, pairs] of Object.entries(SURFACES)) {
    test(name, () => {
      const holds = fc.property(boxes, (box) => {
        const resolved = room({ ...boxParts(box), speakers: speakersBy(name, pairs, box) });
        const wanted = { ...tapesTo(box).point, ...onSurface(name, box) };
        for (const { position } of resolved.speakers) {
          if (position.kind !== "given") throw new Error("no position");
          const found = toWorld(surfaceNamed(resolved, name).frame, position.centre);
          for (const axis of ["x", "y", "z"] as const) {
            expect(Math.abs(found[axis] - wanted[axis])).toBeLessThan(1e-6);
          }
        }
      });
      fc.assert(holds, { numRuns: 40 });
    });
  }
});

test("a seat's ear is where its tapes and its height say", () => {
  const holds = fc.property(boxes, (box) => {
    const { point, left, back, up } = tapesTo(box);
    const seats = [{ name: "middle", at: { left, back }, ear: up }];
    const { ear } = room({ ...boxParts(box), seats }).reference;
    for (const axis of ["x", "y", "z"] as const) expect(Math.abs(ear[axis] - point[axis])).toBeLessThan(1e-6);
  });
  fc.assert(holds, { numRuns: 40 });
});

describe("tapes stay as they were typed, whatever the faces", () => {
  for (const measured_to of ["framing", "finish"]) {
    test(measured_to, () => {
      const resolved = room({
        room: { measured_to },
        speakers: [
          { id: "A", on: "ceiling", at: { back: "1234.5 mm", left: "777 mm" } },
          { id: "B", on: "front", at: { down: "600 mm", right: `3' 1/2"` } },
        ],
      });
      expect(speakerNamed(resolved, "A").position).toMatchObject({
        tapes: [
          { from: "back", mm: 1234.5 },
          { from: "left", mm: 777 },
        ],
      });
      // NIST SP 811: 3 x 304.8 mm and 0.5 x 25.4 mm.
      expect(speakerNamed(resolved, "B").position).toMatchObject({
        tapes: [
          { from: "ceiling", mm: 600 },
          { from: "right", mm: 927.1 },
        ],
      });
    });
  }
});

test("what is held when a position is to be found, as tapes", () => {
  const speakers = [
    { id: "A", on: "left", at: "best", hold: { down: "500 mm", front: "1 m" }, mirror: "B" },
    { id: "B", at: "best" },
  ];
  expect(speakerNamed(room({ speakers }), "A").position).toEqual({
    kind: "best",
    hold: [
      { from: "ceiling", mm: 500 },
      { from: "front", mm: 1000 },
    ],
    mirror: "B",
  });
});

describe("framing and finished faces differ by the board, exactly", () => {
  const at = { left: "1000 mm", front: "2000 mm" };
  const said = (measured_to: string): Parts => ({
    room: { measured_to },
    board: { ceiling: "15 mm", walls: "12.5 mm" },
    framing: { ceiling: { at: ["600 mm", "1200 mm"] }, front: { at: ["400 mm", "800 mm"] } },
    obstructions: [{ name: "light", on: "ceiling", at, round: "100 mm", behind: "20 mm" }],
    equipment: { at: { right: "0", back: "500 mm" }, up: "600 mm" },
    speakers: [
      { id: "C", on: "ceiling", at },
      { id: "U", on: "front", at: { left: "1000 mm", up: "900 mm" } },
      { id: "D", on: "front", at: { right: "1000 mm", down: "900 mm" } },
    ],
  });
  const framing = room(said("framing"));
  const finish = room(said("finish"));
  const centre = (of: typeof framing, id: string) => {
    const { position } = speakerNamed(of, id);
    if (position.kind !== "given") throw new Error("no position");
    return position.centre;
  };

  test("the room grows by the board on every side that has one", () => {
    const corner = (of: typeof framing) => surfaceNamed(of, "ceiling").frame.origin;
    expect(corner(framing)).toEqual({ x: 4000, y: 0, z: 2600 });
    expect(corner(finish)).toEqual({ x: 4025, y: 0, z: 2615 });
  });

  test("openings, over the ceiling and on a wall, up from the floor and down from the ceiling", () => {
    expect(centre(framing, "C")).toEqual({ u: 3000, v: 4000 });
    expect(centre(finish, "C")).toEqual({ u: 4025 - 1012.5, v: 6025 - 2012.5 });
    expect(centre(framing, "U")).toEqual({ u: 1000, v: 900 });
    expect(centre(finish, "U")).toEqual({ u: 1012.5, v: 900 });
    expect(centre(framing, "D")).toEqual({ u: 3000, v: 1700 });
    expect(centre(finish, "D")).toEqual({ u: 4025 - 1012.5, v: 2615 - 915 });
  });

  test("members", () => {
    const places = (of: typeof framing, name: string, axis: "u" | "v") => {
      const { framing: found } = surfaceNamed(of, name);
      if (found.kind === "unknown") throw new Error("unknown framing");
      return found.members
        .filter(({ kind }) => kind === "joist" || kind === "stud")
        .map(({ from }) => from[axis]);
    };
    expect(places(framing, "ceiling", "v")).toEqual([5400, 4800]);
    expect(places(finish, "ceiling", "v")).toEqual([6025 - 612.5, 6025 - 1212.5]);
    expect(places(framing, "front", "u")).toEqual([400, 800]);
    expect(places(finish, "front", "u")).toEqual([412.5, 812.5]);
  });

  test("obstructions, seats and equipment, but nothing that is counted from the floor", () => {
    const light = (of: typeof framing) => surfaceNamed(of, "ceiling").obstructions[0]?.area;
    expect(light(framing)).toMatchObject({ centre: { u: 3000, v: 4000 } });
    expect(light(finish)).toMatchObject({ centre: { u: 3012.5, v: 4012.5 } });
    expect(framing.reference.ear).toEqual({ x: 2000, y: 3000, z: 1200 });
    expect(finish.reference.ear).toEqual({ x: 2012.5, y: 3012.5, z: 1200 });
    expect(framing.equipment?.at).toEqual({ x: 4000, y: 500, z: 600 });
    expect(finish.equipment?.at).toEqual({ x: 4012.5, y: 512.5, z: 600 });
  });

  test("between finished faces both are the same room, but for where it lies", () => {
    const spans = (of: typeof framing, name: string) => {
      const us = surfaceNamed(of, name).finished.map(({ u }) => u);
      const vs = surfaceNamed(of, name).finished.map(({ v }) => v);
      return [Math.max(...us) - Math.min(...us), Math.max(...vs) - Math.min(...vs)];
    };
    expect(spans(finish, "ceiling")).toEqual([4000, 6000]);
    expect(spans(framing, "ceiling")).toEqual([3975, 5975]);
    expect(spans(finish, "front")).toEqual([4000, 2600]);
    expect(spans(framing, "front")).toEqual([3975, 2585]);
  });
});

test("a floor that is laid later raises ears, and nothing else", () => {
  const said = { speakers: [{ on: "front", at: { left: "1 m", up: "900 mm" } }] };
  const bare = room(said);
  const later = room({ ...said, floor: { build_up: "30 mm" } });
  expect(later.floorBuildUpMm).toBe(30);
  expect(later.reference.ear.z - bare.reference.ear.z).toBeCloseTo(30, 9);
  expect(later.speakers[0]?.position).toEqual(bare.speakers[0]?.position);
  expect(later.surfaces).toEqual(bare.surfaces);
});

test("imperial and metric files of one room give one room", () => {
  const imperial = room({
    room: { width: `13' 4"`, length: "20 ft", height: `102 1/2"` },
    speakers: [{ on: "ceiling", at: { left: `3' 6 1/2"`, back: `60"` } }],
    framing: null,
  });
  const metric = room({
    room: { width: "4064 mm", length: "609.6 cm", height: "2.6035 m" },
    speakers: [{ on: "ceiling", at: { left: "1079.5 mm", back: "1.524 m" } }],
    framing: null,
  });
  const apart = (a: number, b: number): number => Math.abs(a - b);
  const [one, other] = [imperial.speakers[0]?.position, metric.speakers[0]?.position];
  if (one?.kind !== "given" || other?.kind !== "given") throw new Error("no position");
  expect(apart(one.centre.u, other.centre.u)).toBeLessThan(EPSILON_MM / 1e6);
  expect(apart(one.centre.v, other.centre.v)).toBeLessThan(EPSILON_MM / 1e6);
});
