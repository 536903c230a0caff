import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Cabling, cablingOf } from "../../src/cable/cabling.js";
import type { CableRun } from "../../src/cable/run.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { type Parts, room, TRAY_CORNERS } from "../rooms/build.js";
import { L_WITH_SOFFIT, sloped } from "../rooms/not-boxes.js";
import { block, costByLibrary, grid, HOLE, key, place, ROUND_CORNER_MM } from "./grid.js";

/*
 * The plain room is 4 x 6 x 2.6 m, joists 45 x 220 mm left to right every 600 mm, studs 45 x 120 mm every 600 mm. Cable
 * lies in the middle of either: from wall to ceiling it goes up half a joist and in half a stud, 110 + 60 mm.
 */

function cabling(said: Parts): Cabling {
  const one = room(said);
  const found = cablingOf(one, mountedIn(one));
  if (found === null) throw new Error("no equipment");
  return found;
}

function run(said: Parts): CableRun {
  const [found] = cabling(said).runs;
  if (found === undefined) throw new Error("no way");
  return found;
}

const inShort = ({ legs }: CableRun) =>
  legs.map(({ field, toward, lengthMm, way, crossed }) => [
    field.surface.name,
    toward,
    Math.round(lengthMm),
    way,
    crossed.length,
  ]);

/** On the right wall, 700 mm from the back, 500 mm up. */
const RACK: Parts = { equipment: { at: { right: "0", back: "700 mm" }, up: "500 mm" } };
const overhead = (left: number, front: number, more: Parts = {}): Parts => ({
  ...RACK,
  ...more,
  speakers: [{ id: "S", at: { left: `${left} mm`, front: `${front} mm` } }],
});

describe("the way", () => {
  test("up the bay, in through both top plates, along the joists' bay", () => {
    // 700 mm from the back of 6 m is 5300 from the front, in the bay between the joists at 4800 and 5400.
    const one = run(overhead(1000, 5300));
    expect(inShort(one)).toEqual([
      ["right", "ceiling", 2100, "along", 2],
      ["ceiling", "left", 3000, "along", 0],
    ]);
    expect(one.routeMm).toBeCloseTo(2100 + ROUND_CORNER_MM + 3000, 6);
    expect(one.bored).toBe(2);
    expect(one.legs[1]?.between).toEqual([8, 9]);
  });

  test("across the joists it takes a hole in each", () => {
    const one = run(overhead(1000, 3500));
    // Joists at 3600, 4200, 4800 stand between 3500 and 5300; with the plates 5 holes, whichever bay it goes along.
    expect(one.bored).toBe(5);
    expect(one.routeMm).toBeCloseTo(2100 + ROUND_CORNER_MM + 3000 + 1800, 6);
  });

  test("on its own wall it stays there", () => {
    const one = run({
      ...RACK,
      speakers: [{ on: "right", model: "upright", at: { back: "2 m", up: "1.2 m" } }],
    });
    // Studs at 4200 and 4800 from the front stand between 5300 and 4000.
    expect(one.routeMm).toBeCloseTo(1300 + 700, 6);
    expect(one.bored).toBe(2);
  });

  test("equipment off the wall adds the way to it", () => {
    const off = run(
      overhead(1000, 5300, { equipment: { at: { right: "400 mm", back: "700 mm" }, up: "500 mm" } }),
    );
    expect(off.routeMm).toBeCloseTo(400 + 2100 + ROUND_CORNER_MM + 3000, 6);
  });

  test("a rack in front of a stud goes up the middle of a bay beside it", () => {
    const at: Parts = { equipment: { at: { right: "0", front: "4800 mm" }, up: "500 mm" } };
    const one = run(overhead(1000, 5100, at));
    expect(inShort(one).slice(0, 2)).toEqual([
      ["right", "back", 300, "across", 1],
      ["right", "ceiling", 2100, "along", 2],
    ]);
  });

  test("over an open attic cable lies on the joists, and nothing is bored but plates", () => {
    const open = run(overhead(1000, 3500, { framing: { ceiling: { cavity: "open" } } }));
    expect(open.bored).toBe(2);
  });

  test("past framing that nobody measured the holes are not known", () => {
    expect(run(overhead(1000, 3500, { framing: { ceiling: null } })).bored).toBeNull();
  });

  test("goes round an obstruction, under one that starts deep enough, and round what is to be avoided", () => {
    const duct = (more: Parts): Parts => ({
      obstructions: [
        {
          name: "duct",
          on: "ceiling",
          corner: { left: "2 m", front: "4.9 m" },
          opposite: { left: "2.3 m", front: "5.5 m" },
          keep: "50 mm",
          ...more,
        },
      ],
    });
    const straight = run(overhead(1000, 5300)).routeMm;
    // The near way past it: 5300 to 5500 + 50 and back again.
    expect(run(overhead(1000, 5300, duct({}))).routeMm).toBeCloseTo(straight + 2 * 250, 6);
    expect(run(overhead(1000, 5300, duct({ behind: "80 mm" }))).routeMm).toBeCloseTo(straight, 6);
    expect(run(overhead(1000, 5300, duct({ behind: "20 mm" }))).routeMm).toBeGreaterThan(straight);
    const avoid = {
      cable: {
        avoid: [
          {
            on: "ceiling",
            corner: { left: "2 m", front: "4.9 m" },
            opposite: { left: "2.3 m", front: "5.5 m" },
          },
        ],
      },
    };
    expect(run(overhead(1000, 5300, avoid)).routeMm).toBeCloseTo(straight + 2 * 200, 6);
  });

  test("goes by the points that are given, in their order", () => {
    const one = run({
      ...RACK,
      speakers: [
        {
          at: { left: "1 m", front: "5300 mm" },
          cable: { via: [{ on: "ceiling", at: { left: "2 m", front: "4500 mm" } }] },
        },
      ],
    });
    expect(one.routeMm).toBeCloseTo(2100 + ROUND_CORNER_MM + 2000 + 800 + 1000 + 800, 6);
  });

  test("goes round the openings of others", () => {
    const found = cabling({
      ...RACK,
      speakers: [
        { id: "FAR", at: { left: "1 m", front: "5100 mm" } },
        { id: "NEAR", at: { left: "2.5 m", front: "5100 mm" } },
      ],
    });
    const far = found.runs.find(({ speaker }) => speaker.id === "FAR");
    const alone = run(overhead(1000, 5100)).routeMm;
    expect(far?.routeMm ?? 0).toBeGreaterThanOrEqual(alone);
    for (const leg of far?.legs ?? []) {
      if (leg.field.surface.name !== "ceiling") continue;
      // NEAR's opening and clamps: 100 + 12 about (u 1500, v 900).
      const us = [leg.from.u, leg.to.u];
      const vs = [leg.from.v, leg.to.v];
      const meets =
        Math.max(...us) > 1388.1 &&
        Math.min(...us) < 1611.9 &&
        Math.max(...vs) > 788.1 &&
        Math.min(...vs) < 1011.9;
      expect(meets).toBe(false);
    }
  });

  test("a ceiling that is shut off by what stands in it leaves a loudspeaker without a way", () => {
    const wall = (front: number) => ({
      name: "beam",
      on: "ceiling",
      corner: { left: "0", front: `${front} mm` },
      opposite: { right: "0", front: `${front + 100} mm` },
    });
    const side = (from: string) => ({
      name: "side",
      on: "ceiling",
      corner: { [from]: "0", front: "2 m" },
      opposite: { [from]: "300 mm", front: "6 m" },
    });
    const found = cabling({
      ...overhead(2000, 3500),
      obstructions: [wall(2000), side("left"), side("right"), wall(5900)],
    });
    expect(found.unreached.map(({ id }) => id)).toEqual(["S"]);
  });
});

describe("under a slope", () => {
  // 2000 mm high at the left wall, 4000 at the right one: the front wall's top plates run aslant, 1 up for 2 along.
  const slope: Parts = {
    ...sloped("left"),
    equipment: { at: { front: "0", left: "1500 mm" }, up: "500 mm" },
    framing: {
      ceiling: null,
      slope: {
        run: "left-right",
        member: { width: "45 mm", depth: "220 mm" },
        from: "front",
        at: ["600 mm", "1200 mm", "6 m"],
      },
    },
    speakers: [{ id: "S", on: "slope", at: { left: "1500 mm", front: "900 mm" } }],
  };

  test("cable passes both plates at the height that they have where it passes", () => {
    const found = cabling(slope);
    const [one] = found.runs;
    const up = one?.legs.filter(({ field }) => field.surface.name === "front") ?? [];
    expect(up.flatMap(({ crossed }) => crossed.map(({ kind }) => kind))).toEqual(["top-plate", "top-plate"]);
    expect(up.map(({ toward }) => toward)).toContain("ceiling");
    const plates = found.holes.filter(({ surface }) => surface === "front");
    expect(plates).toHaveLength(2);
    for (const { at, member } of plates) {
      // The plates rise by half of what they run, a little under the wall's top, which does too.
      const rise = (at.v - member.from.v) / (at.u - member.from.u);
      expect(rise).toBeCloseTo(0.5, 6);
      expect(2000 + at.u / 2 - at.v).toBeGreaterThan(0);
      expect(2000 + at.u / 2 - at.v).toBeLessThan(120);
    }
  });
});

describe("length", () => {
  test("a loop at each end and spare on all of it", () => {
    const base = 2100 + ROUND_CORNER_MM + 3000;
    const length = (cable: Parts) => run(overhead(1000, 5300, { cable })).lengthMm;
    expect(length({ loop: "1 m", spare: "5%" })).toBeCloseTo((base + 2000) * 1.05, 6);
    expect(length({ loop: "1 m", rack_loop: "3 m", spare: "0%" })).toBeCloseTo(base + 4000, 6);
    // Nothing said: 3 ft, 6 ft and 5 %.
    expect(length({})).toBeCloseTo((base + 9 * 304.8) * 1.05, 6);
  });

  test("the user's own figure stands above the computed one", () => {
    const one = run({
      ...RACK,
      speakers: [{ at: { left: "1 m", front: "5300 mm" }, cable: { length: "20 m", gauge: 12 } }],
    });
    expect(one).toMatchObject({
      lengthMm: 20_000,
      size: { kind: "gauge", gauge: 12 },
      from: { length: "given", size: "given" },
    });
  });
});

describe("as a general graph library finds it", () => {
  test("overhead and in the front wall, round blocks", () => {
    let reached = 0;
    fc.assert(
      fc.property(
        fc.record({
          rack: fc.record({ front: place(6000), up: place(2400) }),
          onWall: fc.boolean(),
          left: place(4000),
          front: place(6000),
          up: place(2400),
          blocks: fc.array(block, { maxLength: 4 }),
        }),
        ({ rack, onWall, left, front, up, blocks }) => {
          const speaker = onWall
            ? { on: "front", at: { left: `${left} mm`, up: `${up} mm` } }
            : { on: "ceiling", at: { left: `${left} mm`, front: `${front} mm` } };
          const inBlock = blocks.some(
            (each) => left > each.left && left < each.right && front > each.front && front < each.back,
          );
          fc.pre(onWall || !inBlock);
          const found = cabling({
            equipment: { at: { right: "0", front: `${rack.front} mm` }, up: `${rack.up} mm` },
            obstructions: blocks.map((each, index) => ({
              name: `b${index}`,
              on: "ceiling",
              corner: { left: `${each.left} mm`, front: `${each.front} mm` },
              opposite: { left: `${each.right} mm`, front: `${each.back} mm` },
            })),
            speakers: [speaker],
          });
          const graph = grid(
            blocks.map((each) => ({
              u: [4000 - each.right, 4000 - each.left],
              v: [6000 - each.back, 6000 - each.front],
            })),
          );
          const to = onWall ? key("front", left, up) : key("ceiling", 4000 - left, 6000 - front);
          const cost = costByLibrary(graph, key("right", rack.front, rack.up), to);
          const [one] = found.runs;
          if (cost === null || one === undefined) {
            expect(one === undefined).toBe(cost === null);
            return;
          }
          reached += 1;
          expect(one.routeMm).toBeCloseTo(Math.floor(cost), 6);
          expect(one.bored).toBe(Math.round((cost - Math.floor(cost)) / HOLE));
        },
      ),
      { numRuns: 25 },
    );
    expect(reached).toBeGreaterThan(10);
  });
});

describe("a soffit", () => {
  /** Along all of the left wall of the L, 800 mm wide, its framing 300 mm lower; the rack is across on the right wall. */
  const inL = (rims: boolean): Parts => ({
    ...L_WITH_SOFFIT,
    framing: {
      ceiling: {
        run: "left-right",
        member: { width: "45 mm", depth: "220 mm" },
        from: "front",
        at: null,
        first: "600 mm",
        spacing: "600 mm",
      },
      soffit: {
        run: "left-right",
        member: { width: "45 mm", depth: "95 mm" },
        rims,
        from: "front",
        first: "600 mm",
        spacing: "600 mm",
      },
      right: {
        member: { width: "45 mm", depth: "120 mm" },
        from: "front",
        at: null,
        first: "600 mm",
        spacing: "600 mm",
      },
      left: {
        member: { width: "45 mm", depth: "120 mm" },
        from: "front",
        at: null,
        first: "600 mm",
        spacing: "600 mm",
      },
    },
    equipment: { at: { right: "0", front: "2700 mm" }, up: "500 mm" },
    speakers: [{ id: "S", on: "soffit", at: { left: "400 mm", front: "2700 mm" } }],
  });

  test("is reached over the room's ceiling and down behind its face", () => {
    const one = run(inL(false));
    // Up the right wall 2100, round the corner 110 + 60, 3200 to the soffit, from 110 over the joists' face down to
    // 47.5 over the soffit's, 300 mm lower, and 400 in.
    expect(inShort(one)).toEqual([
      ["right", "ceiling", 2100, "along", 2],
      ["ceiling", "soffit", 3200, "along", 0],
      ["soffit", "left", 400, "along", 0],
    ]);
    expect(one.routeMm).toBeCloseTo(2100 + 170 + 3200 + (300 + 110 - 47.5) + 400, 6);
    expect(one.legs.map(({ upMm }) => Math.round(upMm))).toEqual([0, 0, -300]);
  });

  test("its rims are lower than the step: cable comes over them", () => {
    expect(run(inL(true)).bored).toBe(2);
  });

  test("is on the way to the wall under it", () => {
    const wall = {
      ...inL(true),
      speakers: [{ on: "left", model: "upright", at: { front: "2700 mm", up: "1.2 m" } }],
    };
    const one = run(wall);
    expect(one.legs.map(({ field }) => field.surface.name)).toEqual(["right", "ceiling", "soffit", "left"]);
    // In at the soffit's far side 47.5 + 60 and down 2300 - 1200, through its two plates.
    expect(one.routeMm).toBeCloseTo(2100 + 170 + 3200 + 362.5 + 800 + 107.5 + 1100, 6);
    expect(one.bored).toBe(4);
  });
});

test("a tray in a ceiling is crossed up and down behind its sides, or gone round", () => {
  const tray: Parts = {
    room: {
      ceilings: [
        {
          name: "tray",
          corners: TRAY_CORNERS,
          height: "2.9 m",
        },
      ],
    },
    framing: {
      tray: {
        run: "left-right",
        member: { width: "45 mm", depth: "95 mm" },
        from: "front",
        first: "600 mm",
        spacing: "600 mm",
      },
    },
    equipment: { at: { right: "0", front: "3300 mm" }, up: "500 mm" },
  };
  const past = run({ ...tray, speakers: [{ id: "S", at: { left: "500 mm", front: "3300 mm" } }] });
  // Up 300 and down again; round by way of the tray's back edge, 700 mm off, would be longer.
  expect(past.legs.map(({ field }) => field.surface.name)).toEqual(["right", "ceiling", "tray", "ceiling"]);
  expect(past.routeMm).toBeCloseTo(2100 + ROUND_CORNER_MM + 3500 + 2 * 300, 6);
  const whole = {
    on: "tray",
    corner: { left: "1 m", front: "2 m" },
    opposite: { left: "3 m", front: "4 m" },
  };
  const round = run({
    ...tray,
    cable: { avoid: [whole] },
    speakers: [{ id: "S", at: { left: "500 mm", front: "3300 mm" } }],
  });
  expect(round.routeMm).toBeCloseTo(2100 + ROUND_CORNER_MM + 3500 + 2 * 700, 6);
  const onto = run({ ...tray, speakers: [{ id: "S", on: "tray", at: { left: "2 m", front: "3300 mm" } }] });
  expect(onto.legs.map(({ field }) => field.surface.name)).toEqual(["right", "ceiling", "tray"]);
});
