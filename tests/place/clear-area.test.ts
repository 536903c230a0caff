import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaMm2, type Region } from "../../src/geometry/clip.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { clearTest } from "../../src/place/clear.js";
import { fittingOf, neighboursOf } from "../../src/place/fitting.js";
import type { Room } from "../../src/room/room.js";
import { howMany } from "../how-many.js";
import { type Parts, room } from "../rooms/build.js";
import { isClearByHand } from "../rooms/by-hand.js";
import { clearArea } from "../rooms/clear-area.js";
import { contains } from "../rooms/clipped.js";
import { randomRoom } from "../rooms/random.js";

function areaOf(one: Room): Region {
  const mounted = mountedIn(one);
  const [first] = mounted;
  if (first === undefined) throw new Error("no loudspeaker");
  return clearArea(first.surface, fittingOf(first.speaker, one.checks), neighboursOf(first, mounted));
}

const heights = (region: Region): number[] =>
  region.map((piece) => {
    const vs = piece.map(({ v }) => v);
    return Math.max(...vs) - Math.min(...vs);
  });

/*
 * Facts of the trade (computed there): the clear slide across a bay for an 8 1/4 in hole with 1 in on each side. By
 * hand: spacing less the member's width, less 8 1/4, less 2. 16 - 1 1/2 - 8 1/4 - 2 = 4 1/4.
 */
describe("clear slide across a bay, 8 1/4 in hole, 1 in each side", () => {
  const MM_PER_INCH = 25.4;
  const laid = (spacing: string, width: string): Parts => ({
    units: "imperial",
    board: { ceiling: '5/8"', walls: '1/2"' },
    room: { width: "12'", length: "24'", height: "9'", measured_to: "framing" },
    framing: {
      ceiling: {
        run: "left-right",
        from: "front",
        member: { width, depth: '9 1/4"' },
        at: null,
        first: spacing,
        spacing,
      },
      left: null,
      right: null,
      front: null,
      back: null,
    },
    models: {
      round: { opening: { round: '8 1/4"' }, flange: { round: '9 3/8"' }, clamp_reach: '3/4"' },
    },
    checks: { clear: '1/4"' },
    speakers: [{ at: { left: "6'", front: "6'" } }],
  });

  test.each([
    { spacing: '12"', width: '1 1/2"', slide: 0.25 },
    { spacing: '16"', width: '1 1/2"', slide: 4.25 },
    { spacing: '16"', width: '3 1/2"', slide: 2.25 },
    // The list says 7.5; 19.2 - 1.5 - 8.25 - 2 is 7.45.
    { spacing: '19.2"', width: '1 1/2"', slide: 7.45 },
    { spacing: '24"', width: '1 1/2"', slide: 12.25 },
  ])("members $width wide every $spacing: $slide in", ({ spacing, width, slide }) => {
    // The first and last bays are bounded by the walls instead.
    const slides = heights(areaOf(room(laid(spacing, width)))).map((height) => height / MM_PER_INCH);
    const count = slides.filter((found) => Math.abs(found - slide) < (2 * EPSILON_MM) / MM_PER_INCH).length;
    expect(count).toBeGreaterThanOrEqual(9);
  });

  test("a bay that the opening fills to the last has a line of clear centres left: at a limit passes", () => {
    // 11 3/4 - 1 1/2 - 8 1/4 - 2 = 0.
    const slides = heights(areaOf(room(laid('11 3/4"', '1 1/2"'))));
    expect(Math.min(...slides)).toBeGreaterThan(0);
    expect(Math.min(...slides)).toBeLessThanOrEqual(2 * EPSILON_MM);
    // A thousandth of an inch less and it is gone: what is left is bounded by the walls.
    expect(areaOf(room(laid('11.749"', '1 1/2"'))).length).toBeLessThanOrEqual(2);
  });
});

describe("by hand in the plain room (4 x 6 m, joists of 45 every 600 from the front, board 12.5)", () => {
  const one = (more: Parts = {}) => room({ ...more, speakers: [{ at: { left: "2 m", front: "0.3 m" } }] });

  test("a bay's clear part: 4000 - 2 (12.5 + 115) long, 600 - 45 - 200 - 2 (12 + 6.35) high", () => {
    const whole = areaOf(one());
    const bay = (4000 - 2 * 127.5) * (600 - 45 - 200 - 2 * 18.35);
    const bays = whole.map((piece) => Math.abs(areaMm2([piece])));
    expect(bays.filter((area) => Math.abs(area - bay) < 2 * EPSILON_MM * 4400).length).toBe(9);
  });

  test("nothing where the framing is unknown", () => {
    expect(areaOf(one({ framing: { ceiling: null } }))).toEqual([]);
  });

  test("nothing past the last measured member", () => {
    const short = { framing: { ceiling: { at: ["600 mm", "1200 mm"] } } };
    // v is counted from the back: the last member is centred at 6000 - 1200 = 4800.
    for (const piece of areaOf(one(short))) {
      for (const { v } of piece) expect(v).toBeGreaterThan(4800 + 22.5);
    }
  });

  test("what starts behind counts only for hardware deeper than that and the board", () => {
    const pipe = (behind: string): Parts => ({
      obstructions: [
        { name: "pipe", on: "ceiling", at: { left: "2 m", front: "0.3 m" }, round: "100 mm", behind },
      ],
    });
    // The model needs 90 behind the finished face, and the board is 12.5: 77.5 behind the framing is just free.
    const free = areaMm2(areaOf(one(pipe("77.5 mm"))));
    expect(free).toBeCloseTo(areaMm2(areaOf(one())), 6);
    expect(areaMm2(areaOf(one(pipe("77 mm"))))).toBeLessThan(free - 1000);
  });
});

describe("in any room", () => {
  const share = fc.integer({ min: 0, max: 10_000 }).map((n) => n / 10_000);
  const place = fc.record({ u: share, v: share });

  test("a centre is in the area when the plainest arithmetic says that it is clear, and only then", () => {
    let inside = 0;
    let outside = 0;
    fc.assert(
      fc.property(randomRoom, fc.array(place, { minLength: 60, maxLength: 60 }), (parts, places) => {
        const one = room(parts);
        const mounted = mountedIn(one);
        for (const each of mounted) {
          const { surface, speaker } = each;
          const fitting = fittingOf(speaker, one.checks);
          const area = clearArea(surface, fitting, neighboursOf(each, mounted));
          const isClear = clearTest(surface, fitting, neighboursOf(each, mounted));
          const far = {
            u: Math.max(...surface.finished.map((corner) => corner.u)),
            v: Math.max(...surface.finished.map((corner) => corner.v)),
          };
          for (const { u, v } of places) {
            const centre: SurfacePoint = { u: u * far.u, v: v * far.v };
            const isIn = contains(area, centre);
            if (isIn) inside += 1;
            else outside += 1;
            // The area never holds what the rule refuses, and lacks at most the house's tolerance of what it passes.
            if (isIn) expect(isClearByHand(one, speaker, centre, EPSILON_MM + 1e-3)).toBe(true);
            else expect(isClearByHand(one, speaker, centre, -1e-3)).toBe(false);
            if (isClear(centre)) expect(isClearByHand(one, speaker, centre, EPSILON_MM + 1e-6)).toBe(true);
            else expect(isClearByHand(one, speaker, centre, EPSILON_MM - 1e-6)).toBe(false);
          }
        }
      }),
      { numRuns: howMany(16) },
    );
    // Both sides of the rule were met.
    expect(inside).toBeGreaterThan(50);
    expect(outside).toBeGreaterThan(50);
  });

  test("every corner of the area passes the exact rule", () => {
    fc.assert(
      fc.property(randomRoom, (parts) => {
        const one = room(parts);
        const mounted = mountedIn(one);
        for (const each of mounted) {
          const fitting = fittingOf(each.speaker, one.checks);
          const area = clearArea(each.surface, fitting, neighboursOf(each, mounted));
          const isClear = clearTest(each.surface, fitting, neighboursOf(each, mounted));
          for (const corner of area.flat()) expect(isClear(corner)).toBe(true);
        }
      }),
      { numRuns: howMany(16) },
    );
  });
});
