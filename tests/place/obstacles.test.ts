import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { distanceToBodyMm } from "../../src/geometry/body.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import { type Mounted, mountedIn } from "../../src/listen/mounted.js";
import { fittingOf, neighboursNear, neighboursOf, reachMm } from "../../src/place/fitting.js";
import { memberGaps, type Side } from "../../src/place/gaps.js";
import {
  gapMm,
  jointObstacles,
  mayBeTooNear,
  type Obstacle,
  obstaclesOn,
  takenBy,
} from "../../src/place/obstacles.js";
import { type Parts, room } from "../rooms/build.js";

/*
 * What an opening keeps away from in the plain room (4 x 6 x 2.6 m, joists of 45 every 600 from the front): opening
 * 200, flange 230, 90 deep behind 12.5 of board, clamps reach 12 and 6.35 is asked for beyond: 18.35.
 */

const ROOM = room({
  obstructions: [
    { name: "lamp", on: "ceiling", at: { left: "3 m", front: "900 mm" }, round: "100 mm" },
    { name: "duct", on: "ceiling", at: { left: "1 m", front: "900 mm" }, round: "100 mm", keep: "50 mm" },
    // 77.5 behind and 12.5 of board are 90: just as deep as the model.
    { name: "pipe", on: "ceiling", at: { left: "1 m", front: "3 m" }, round: "50 mm", behind: "77.5 mm" },
    { name: "hose", on: "ceiling", at: { left: "1 m", front: "3 m" }, round: "50 mm", behind: "77 mm" },
  ],
  speakers: [
    { id: "A", at: { left: "2 m", front: "900 mm" } },
    { id: "B", model: "upright", at: { left: "2 m", front: "2100 mm" } },
    { id: "W", on: "left", at: { front: "900 mm", up: "1 m" } },
  ],
});
const ALL = mountedIn(ROOM);
const named = (id: string): Mounted => {
  const found = ALL.find(({ speaker }) => speaker.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};
const A = named("A");
const around = (mounted: Mounted): Obstacle[] =>
  obstaclesOn(mounted.surface, fittingOf(mounted.speaker, ROOM.checks), neighboursOf(mounted, ALL));
const FROM_A = around(A);
const gapsTo = (kind: string) =>
  FROM_A.filter(({ what }) => what.kind === kind).map((obstacle) => ({
    gap: gapMm(obstacle, A.centre),
    wanted: obstacle.wantedMm,
  }));
const near = (gap: number, wanted: number) => ({
  gap: expect.closeTo(gap, 9),
  wanted: expect.closeTo(wanted, 9),
});

describe("what the opening keeps away from", () => {
  test("the finished edges, from the flange's edge, which may touch them", () => {
    // 2000 - 12.5 - 115 to both sides; 900 and 5100 less as much to the front and the back.
    const edges = gapsTo("edge").sort((a, b) => a.gap - b.gap);
    expect(edges).toEqual([near(772.5, 0), near(1872.5, 0), near(1872.5, 0), near(4972.5, 0)]);
  });

  test("the members, by the clamps' reach and what is asked for beyond", () => {
    const members = gapsTo("member").sort((a, b) => a.gap - b.gap);
    // Joists 1 and 2 are 300 away at their middles.
    expect(members.slice(0, 2)).toEqual([near(177.5, 18.35), near(177.5, 18.35)]);
    expect(members).toHaveLength(10);
  });

  test("obstructions, by their own keep where that is more; not by what lies behind its depth", () => {
    const names = FROM_A.flatMap(({ what }) => (what.kind === "obstruction" ? [what.obstruction.name] : []));
    expect(names).toEqual(["lamp", "duct", "hose"]);
    // 1000 between the middles, less 50 and 100.
    expect(gapsTo("obstruction").slice(0, 2)).toEqual([near(850, 18.35), near(850, 50)]);
  });

  test("openings on the same surface, by both clamps' reach, and their flanges, which may touch", () => {
    const edges = FROM_A.flatMap(({ what }) =>
      what.kind === "neighbour" ? [[what.neighbour.speaker.id, what.edges]] : [],
    );
    expect(edges).toEqual([
      ["B", "openings"],
      ["B", "flanges"],
    ]);
    // 1200 between the middles: less 100 and half of 300; less 115 and half of 330.
    expect(gapsTo("neighbour")).toEqual([near(950, 12 + 12 + 6.35), near(920, 0)]);
    expect(around(named("W")).some(({ what }) => what.kind === "neighbour")).toBe(false);
  });

  test("stretches that nobody has measured, as if a member began where they do", () => {
    const short = room({
      framing: { ceiling: { at: ["600 mm", "1200 mm"] } },
      speakers: [{ id: "A", at: { left: "2 m", front: "900 mm" } }],
    });
    const [mounted] = mountedIn(short);
    if (mounted === undefined) throw new Error("no opening");
    const obstacles = obstaclesOn(mounted.surface, fittingOf(mounted.speaker, short.checks), []);
    const unknown = obstacles.filter(({ what }) => what.kind === "unknown");
    expect(unknown.map((one) => [one.wantedMm, gapMm(one, mounted.centre)])).toEqual([
      [expect.closeTo(18.35, 9), expect.any(Number)],
    ]);
    // Unknown from the last member on: its far edge at 1222.5, 322.5 from the middle.
    expect(gapMm(unknown[0] as Obstacle, mounted.centre)).toBeCloseTo(222.5, 6);
  });

  test("nothing but the edges where the framing is not known at all", () => {
    const none = room({
      framing: { ceiling: null },
      speakers: [{ id: "A", at: { left: "2 m", front: "1 m" } }],
    });
    const [mounted] = mountedIn(none);
    if (mounted === undefined) throw new Error("no opening");
    const obstacles = obstaclesOn(mounted.surface, fittingOf(mounted.speaker, none.checks), []);
    expect(obstacles.map(({ what }) => what.kind)).toEqual(["edge", "edge", "edge", "edge"]);
  });
});

test("an obstacle takes just the centres that leave less than is wanted, and one exactly at the limit passes", () => {
  const mm = fc.integer({ min: 0, max: 60_000 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(fc.constantFrom(...FROM_A, ...around(named("B"))), mm, mm, (obstacle, u, v) => {
      const gap = gapMm(obstacle, { u, v });
      const off = distanceToBodyMm({ u, v }, takenBy(obstacle));
      expect(off).toBeCloseTo(gap - obstacle.wantedMm + EPSILON_MM, 6);
    }),
  );
});

/* Most of what is on a surface is far off and is not measured to; what is left out must be no nearer than it may be. */
describe("what is near enough to be measured to", () => {
  const obstruction = (name: string, among: readonly Obstacle[] = FROM_A): Obstacle => {
    const found = among.find(({ what }) => what.kind === "obstruction" && what.obstruction.name === name);
    if (found === undefined) throw new Error(name);
    return found;
  };
  const beside = (obstacle: Obstacle, u: number, v: number): boolean => {
    const [middle] = obstacle.body.core;
    return mayBeTooNear(obstacle)({ u: (middle?.u ?? 0) + u, v: (middle?.v ?? 0) + v });
  };

  test("the lamp: up to its half, the opening's half and what is asked for, along either axis: 50 + 100 + 18.35", () => {
    const lamp = obstruction("lamp");
    for (const sign of [1, -1]) {
      expect(beside(lamp, sign * 168.34, 0)).toBe(true);
      expect(beside(lamp, sign * 168.36, 0)).toBe(false);
      expect(beside(lamp, 0, sign * 168.34)).toBe(true);
      expect(beside(lamp, 0, sign * 168.36)).toBe(false);
      expect(beside(lamp, sign * 168.3, -sign * 168.3)).toBe(true);
    }
  });

  test("the duct, which is kept 50 from: 50 + 100 + 50", () => {
    expect(beside(obstruction("duct"), 199.9, 0)).toBe(true);
    expect(beside(obstruction("duct"), 200.1, 0)).toBe(false);
  });

  test("of an opening that is no circle half of its longer side, either way that it is turned", () => {
    // 180 by 300 and a lamp of 100: 150 + 50 + 18.35.
    const upright = obstruction("lamp", around(named("B")));
    expect(beside(upright, 218.3, 0)).toBe(true);
    expect(beside(upright, 218.4, 0)).toBe(false);
    const wide = { ...upright, mover: { kind: "rectangle", widthMm: 300, heightMm: 180 } } as const;
    expect(beside(wide, 0, 218.3)).toBe(true);
    expect(beside(wide, 0, 218.4)).toBe(false);
  });

  test("a joist all along it, and no further past its ends than beside it: 22.5 + 100 + 18.35", () => {
    const joist = FROM_A.find(({ what }) => what.kind === "member" && what.member.number === 1);
    if (joist === undefined) throw new Error("no joist");
    const us = joist.body.core.map(({ u }) => u);
    const vs = joist.body.core.map(({ v }) => v);
    const [least, most] = [Math.min(...us), Math.max(...us)];
    const middle = (Math.min(...vs) + Math.max(...vs)) / 2;
    expect(most - least).toBeGreaterThan(3900);
    for (const u of [least, (least + most) / 2, most])
      for (const sign of [1, -1]) {
        expect(mayBeTooNear(joist)({ u, v: middle + sign * 140.8 })).toBe(true);
        expect(mayBeTooNear(joist)({ u, v: middle + sign * 140.9 })).toBe(false);
      }
    // Past its ends, 100 + 18.35.
    expect(mayBeTooNear(joist)({ u: most + 118.3, v: middle })).toBe(true);
    expect(mayBeTooNear(joist)({ u: most + 118.4, v: middle })).toBe(false);
    expect(mayBeTooNear(joist)({ u: least - 118.3, v: middle })).toBe(true);
    expect(mayBeTooNear(joist)({ u: least - 118.4, v: middle })).toBe(false);
  });

  test("whatever is left out is no nearer than it may be", () => {
    const mm = fc.integer({ min: -1000, max: 7000 });
    fc.assert(
      fc.property(fc.constantFrom(...FROM_A), mm, mm, (obstacle, u, v) => {
        if (mayBeTooNear(obstacle)({ u, v })) return;
        expect(gapMm(obstacle, { u, v })).toBeGreaterThan(obstacle.wantedMm - EPSILON_MM);
      }),
    );
  });
});

test("a joint of the board lies under an opening as soon as its edge does; the flange hides it", () => {
  const boarded = room({
    board: { sheets: { ceiling: { from: "front", first: "1200 mm", width: "1200 mm" } } },
    speakers: [{ id: "A", at: { left: "2 m", front: "1090 mm" } }],
  });
  const [mounted] = mountedIn(boarded);
  if (mounted === undefined) throw new Error("no opening");
  const joints = jointObstacles(mounted.surface, fittingOf(mounted.speaker, boarded.checks));
  expect(joints.map(({ what }) => what.kind)).toEqual(mounted.surface.joints.map(() => "joint"));
  // 110 from the first joint: 100 of it is opening, and 115 would be flange.
  const [nearest] = joints
    .map((joint) => [gapMm(joint, mounted.centre), joint.wantedMm])
    .sort(([a = 0], [b = 0]) => a - b);
  expect(nearest).toEqual([expect.closeTo(10, 6), 0]);
});

describe("on which side a member lies, as one faces the surface", () => {
  const sideOf = (parts: Parts): readonly Side[] => {
    const [mounted] = mountedIn(room({ speakers: [{ id: "S", ...parts }] }));
    return (mounted === undefined ? null : memberGaps(mounted))?.slice(0, 2).map(({ side }) => side) ?? [];
  };

  test.each([
    // Overhead with the front wall at the top: joist 1, at 600, is nearer to the front.
    [{ at: { left: "2 m", front: "850 mm" } }, ["above", "below"]],
    [{ at: { left: "2 m", front: "950 mm" } }, ["below", "above"]],
    // Facing the front wall, studs are counted from the left.
    [{ on: "front", at: { left: "850 mm", up: "1 m" } }, ["left", "right"]],
    [{ on: "front", at: { left: "950 mm", up: "1 m" } }, ["right", "left"]],
    // Right on a member: by the way it runs.
    [{ at: { left: "2 m", front: "1200 mm" } }, ["below", "below"]],
    [{ on: "front", at: { left: "1200 mm", up: "1 m" } }, ["left", "left"]],
  ] as const)("%j: %j", (parts, sides) => {
    expect(sideOf(parts)[0]).toBe(sides[0]);
    if (sides[0] !== sides[1]) expect(sideOf(parts)).toEqual(sides);
  });
});

describe("how far a loudspeaker reaches, and which others are near enough to be looked at", () => {
  const mountedAt = (model: string, left: number, front: number): Mounted => {
    const [found] = mountedIn(
      room({ speakers: [{ id: "N", model, at: { left: `${left} mm`, front: `${front} mm` } }] }),
    );
    if (found === undefined) throw new Error(model);
    return found;
  };
  const isNear = (model: string, right: number, back: number): boolean =>
    neighboursNear(A, [mountedAt(model, 2000 + right, 900 + back)], 6.35).length === 1;

  test("half of its flange's longest way across and its clamps", () => {
    expect(reachMm(A.speaker)).toBeCloseTo(230 / 2 + 12, 9);
    // 210 by 330 across its corners.
    expect(reachMm(named("B").speaker)).toBeCloseTo(Math.hypot(210, 330) / 2 + 12, 9);
  });

  test("along either axis up to both reaches and what is asked for beyond: 127 twice and 6.35 between two round ones", () => {
    expect(isNear("round", 260.34, 0)).toBe(true);
    expect(isNear("round", 0, 260.34)).toBe(true);
    expect(isNear("round", 260.3, 260.3)).toBe(true);
    expect(isNear("round", 260.4, 0)).toBe(false);
    expect(isNear("round", 0, 260.4)).toBe(false);
    expect(isNear("upright", 341, 0)).toBe(false);
    expect(isNear("upright", 340.9, 0)).toBe(true);
  });
});
