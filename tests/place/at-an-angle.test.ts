import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaMm2, type Region } from "../../src/geometry/clip.js";
import { sidesOf } from "../../src/geometry/distance.js";
import { toSurface, toWorld } from "../../src/geometry/frame.js";
import { distanceMm } from "../../src/geometry/surface-point.js";
import { fromRunOf } from "../../src/listen/from-run.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { bayOf } from "../../src/place/bay.js";
import { clearTest } from "../../src/place/clear.js";
import { fittingOf } from "../../src/place/fitting.js";
import { memberGaps, nearestGap, sideGaps } from "../../src/place/gaps.js";
import { nearestClearCentre } from "../../src/place/nearest-clear.js";
import { placeAll } from "../../src/place/place.js";
import { surfaceNamed } from "../../src/room/room.js";
import { howMany } from "../how-many.js";
import { only } from "../only.js";
import { type Parts, room } from "../rooms/build.js";
import { clearArea } from "../rooms/clear-area.js";

/*
 * Members that lie along no wall. A room turned as a whole is the same room: what turns with it must not change what is
 * measured on it.
 */

const ROOMS = howMany(12);

type Plan = readonly [number, number];
const mm = (value: number): string => `${value.toFixed(9)} mm`;
const rad = (deg: number): number => (deg * Math.PI) / 180;

/** A point of the plan, from the left and from the front, turned so that a line at 0 deg comes to lie at `deg`. */
const turned = ([left, front]: Plan, deg: number): Plan => [
  left * Math.cos(rad(deg)) - front * Math.sin(rad(deg)),
  left * Math.sin(rad(deg)) + front * Math.cos(rad(deg)),
];

const NAMES = ["north", "east", "cut", "south", "west"] as const;

interface Drawn {
  readonly width: number;
  readonly length: number;
  readonly cut: number;
  readonly angle: number;
  readonly first: number;
  readonly spacing: number;
  readonly measured: "framing" | "finish";
  readonly at: Plan;
}

/** A five-sided room; joists measured from the corner that they all lie to one side of. */
function parts(drawn: Drawn, turnDeg: number): Parts {
  const { width, length, cut, angle, first, spacing, measured, at } = drawn;
  const corners: readonly Plan[] = [
    [0, 0],
    [width, 0],
    [width, length - cut],
    [width - cut, length],
    [0, length],
  ];
  const away: Plan = [-Math.sin(rad(angle)), Math.cos(rad(angle))];
  const reach = corners.map(([left, front]) => left * away[0] + front * away[1]);
  const corner = reach.indexOf(Math.min(...reach));
  const outline = corners.map((point) => turned(point, turnDeg));
  const least = [0, 1].map((axis) => Math.min(...outline.map((point) => point[axis] ?? 0)));
  const moved = ([left, front]: Plan): Plan => [left - (least[0] ?? 0), front - (least[1] ?? 0)];
  const seat = moved(turned([width / 2, length / 2], turnDeg));
  const run = (((angle + turnDeg) % 180) + 180) % 180;
  return {
    room: {
      width: null,
      length: null,
      outline: outline.map((point) => moved(point).map(mm)),
      walls: [...NAMES],
      measured_to: measured,
    },
    framing: {
      left: null,
      right: null,
      front: null,
      back: null,
      ceiling: {
        run: `${run.toFixed(12)} deg`,
        at: null,
        from: { [NAMES.at(corner - 1) ?? ""]: 0, [NAMES[corner] ?? ""]: 0 },
        first: mm(first),
        spacing: mm(spacing),
      },
    },
    layout: "9+10+3",
    seats: [{ name: "middle", at: plainTapes(seat, moved(turned([0, 0], turnDeg)), turnDeg), ear: "1.2 m" }],
    speakers: [
      { id: "S1", channel: "M+000", at: { west: mm(at[0]), north: mm(at[1]) } },
      { id: "S2", channel: "T+000", at: "best" },
    ].slice(0, turnDeg % 90 === 0 ? 2 : 1),
    checks: { line: 0 },
  };
}

/** The same two walls for the seat whichever way the room is turned. */
function plainTapes(seat: Plan, corner: Plan, turnDeg: number): Parts {
  const [west, north] = turned([seat[0] - corner[0], seat[1] - corner[1]], -turnDeg);
  return { west: mm(west), north: mm(north) };
}

const drawn = fc.record({
  width: fc.integer({ min: 3200, max: 5000 }),
  length: fc.integer({ min: 3600, max: 6000 }),
  cut: fc.integer({ min: 300, max: 1500 }),
  angle: fc.integer({ min: 3, max: 177 }),
  first: fc.integer({ min: 30, max: 600 }),
  spacing: fc.constantFrom(305, 400, 488, 610),
  measured: fc.constantFrom("framing", "finish"),
  at: fc.tuple(fc.integer({ min: 300, max: 2500 }), fc.integer({ min: 300, max: 2500 })),
}) satisfies fc.Arbitrary<Drawn>;

function measuredIn(said: Parts) {
  const one = room(said);
  const [mounted] = mountedIn(one);
  if (mounted === undefined) throw new Error("not mounted");
  const { speaker, surface } = mounted;
  const fitting = fittingOf(speaker, one.checks);
  const fix = nearestClearCentre({ room: one, mounted, neighbours: [], from: ["west", "north"] });
  return {
    one,
    mounted,
    nearest: nearestGap(mounted),
    // Of the others those are measured that are the nearest on a side of the sheet, which turns with the room.
    cut: (memberGaps(mounted) ?? []).filter((gap) => gap.mm < -1e-3),
    sides: sideGaps(mounted),
    bay: bayOf(mounted),
    area: clearArea(surface, fitting, []),
    isClear: clearTest(surface, fitting, [])(mounted.centre),
    fixMm: fix === null ? null : distanceMm(fix, mounted.centre),
  };
}

/** Length of all sides. */
const roundMm = (area: Region): number =>
  area.flatMap(sidesOf).reduce((sum, { from, to }) => sum + distanceMm(from, to), 0);

test("a room turned as a whole has the same gaps, bays, clear area and places", () => {
  let clear = 0;
  fc.assert(
    fc.property(drawn, fc.integer({ min: 1, max: 359 }), (one, turnDeg) => {
      const [plain, other] = [measuredIn(parts(one, 0)), measuredIn(parts(one, turnDeg))];
      expect(Math.abs((other.nearest?.mm ?? Number.NaN) - (plain.nearest?.mm ?? Number.NaN))).toBeLessThan(
        1e-6,
      );
      expect(other.cut.length).toBe(plain.cut.length);
      // Two that are equally far may come either way round.
      for (const gap of plain.cut) {
        const same = other.cut.find(({ member }) => member.number === gap.member.number);
        expect(Math.abs((same?.mm ?? Number.NaN) - gap.mm)).toBeLessThan(1e-6);
      }
      expect(other.sides.before?.member).toEqual(plain.sides.before?.member);
      expect(other.sides.after?.member).toEqual(plain.sides.after?.member);
      expect(other.bay).toEqual(plain.bay);
      expect(other.isClear).toBe(plain.isClear);
      // Of marks that are equally near either may be taken.
      expect(other.fixMm === null).toBe(plain.fixMm === null);
      expect(Math.abs((other.fixMm ?? 0) - (plain.fixMm ?? 0))).toBeLessThan(1e-6);
      // The area's corners are whole steps of the clipping library, a ten-thousandth of a millimetre: each of the two
      // areas may be out by half a step both ways, along all of its sides.
      const moreMm2 = areaMm2(other.area) - areaMm2(plain.area);
      expect(Math.abs(moreMm2)).toBeLessThan(1 + roundMm(plain.area) * Math.SQRT2 * 1e-4);
      clear += plain.isClear ? 1 : 0;
    }),
    { numRuns: ROOMS },
  );
  expect(clear).toBeGreaterThan(ROOMS / 20);
});

test("turned by a right angle, the best place overhead is as good", () => {
  let within = 0;
  fc.assert(
    fc.property(drawn, fc.constantFrom(90, 180, 270), (one, turnDeg) => {
      const [plain, other] = [0, turnDeg].map((deg) => {
        const [placed] = placeAll(room(parts(one, deg))).placed;
        return placed?.cost;
      });
      // Below 85 degrees up the azimuth counts too, and that turns with the room.
      if (plain?.breaches !== 0) return;
      within += 1;
      // Straight overhead is straight overhead, whichever way the room is turned; marks of other tapes cost a little.
      expect(other?.breaches).toBe(0);
      expect(Math.abs(plain.offDeg - (other?.offDeg ?? 90))).toBeLessThan(0.05);
    }),
    { numRuns: ROOMS },
  );
  expect(within).toBeGreaterThan(ROOMS / 10);
});

describe("by hand", () => {
  const angled = (run: string, from: Parts, more: Parts = {}): Parts => ({
    framing: { ceiling: { run, from, at: null, first: "500 mm", spacing: "600 mm", ...more } },
  });

  test("30 degrees: the left ends lie toward the front, and figures are square to the joists", () => {
    const one = room(angled("30 deg", { right: 0, front: 0 }));
    const { frame, framing } = surfaceNamed(one, "ceiling");
    if (framing.kind === "unknown") throw new Error("unknown");
    for (const { from, to, number } of framing.members) {
      const [a, b] = [toWorld(frame, from), toWorld(frame, to)];
      const [left, right] = a.x < b.x ? [a, b] : [b, a];
      // To the right by cos 30, back (y is forward) by sin 30.
      expect(Math.atan2(left.y - right.y, right.x - left.x)).toBeCloseTo(Math.PI / 6, 12);
      // The corner is at (4000, 6000); the way from it square to the joists is back by cos 30, left by sin 30.
      const away = (4000 - left.x) * 0.5 + (6000 - left.y) * Math.cos(Math.PI / 6);
      expect(away).toBeCloseTo(500 + 600 * (number - 1), 9);
    }
    expect(framing.unknown).toEqual([]);
    // Across the room from corner to corner: 4000 sin 30 + 6000 cos 30 = 7196; the last within it and half a width.
    expect(Math.max(...framing.members.map(({ number }) => number))).toBe(12);
    expect(framing.layout.from).toBe("right/front");
  });

  test("at 45 degrees an arrow is told by two different walls, and no other arrow by the same", () => {
    const said = angled("45 deg", { right: 0, front: 0 });
    for (const at of [
      { left: "600 mm", front: "700 mm" },
      { left: "3 m", front: "1 m" },
      { left: "2 m", front: "5 m" },
    ]) {
      const one = room({ ...said, speakers: [{ id: "S1", at }] });
      const { surface, centre } = only(mountedIn(one));
      const told = [10, 55, 100, 145, 190, 235, 280, 325].map((deg) => {
        const lean = { u: Math.cos(rad(deg)), v: Math.sin(rad(deg)) };
        const arrow = fromRunOf({ surface, centre }, lean);
        expect(arrow?.end).not.toBe(arrow?.toward);
        return `${arrow?.end} ${arrow?.degrees.toFixed(3)} ${arrow?.toward}`;
      });
      expect(new Set(told).size).toBe(told.length);
    }
  });

  test("at 0, 90 and 180 degrees it is what left-right and front-back say", () => {
    const bare = (said: Parts) => {
      const { framing } = surfaceNamed(room(said), "ceiling");
      if (framing.kind === "unknown") throw new Error("unknown");
      const near = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
      return framing.members.map(({ number, from, to }) =>
        [number, ...[from, to].flatMap(({ u, v }) => [u, v]).map(near)].join(" "),
      );
    };
    const walls = (run: string, from: string): Parts => ({
      framing: { ceiling: { run, from, at: null, first: "500 mm", spacing: "600 mm" } },
    });
    const corner = { right: 0, front: 0 };
    expect(bare(angled("0 deg", corner))).toEqual(bare(walls("left-right", "front")));
    expect(bare(angled("180 deg", corner))).toEqual(bare(walls("left-right", "front")));
    expect(bare(angled("90 deg", corner))).toEqual(bare(walls("front-back", "right")));
    expect(bare(angled("left-right", corner))).toEqual(bare(walls("left-right", "front")));
  });

  test("past a mark that joists lie to both sides of, the other side is unknown", () => {
    const one = room(angled("45 deg", { left: 0, front: "3 m" }));
    const { framing, frame } = surfaceNamed(one, "ceiling");
    if (framing.kind === "unknown") throw new Error("unknown");
    expect(framing.layout.from).toBe("left//front");
    // From the mark the line goes right and back: most of the room lies in front of it, the left back corner behind.
    const corners = [
      [0, 3000],
      [0, 0],
      [3000, 0],
    ].map(([x = 0, y = 0]) => toSurface(frame, { x, y, z: 2600 }));
    const unknown = only(framing.unknown);
    expect(unknown).toHaveLength(3);
    for (const { u, v } of corners) {
      const nearest = Math.min(...unknown.map((each) => Math.hypot(each.u - u, each.v - v)));
      expect(nearest).toBeLessThan(0.1);
    }
  });
});
