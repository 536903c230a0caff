import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Effort } from "../../src/effort.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { type Mounted, mountedIn } from "../../src/listen/mounted.js";
import { fittingOf, neighboursNear, neighboursOf } from "../../src/place/fitting.js";
import { nearestClearCentre, rememberedGrounds, TAPE_STEP_MM } from "../../src/place/nearest-clear.js";
import { gapMm, mayBeTooNear, neighbourObstacles } from "../../src/place/obstacles.js";
import { pointAt, tapeLine, tapeMm } from "../../src/place/tapes.js";
import type { Room } from "../../src/room/room.js";
import { howMany } from "../how-many.js";
import { type Parts, room } from "../rooms/build.js";
import { isClearByHand } from "../rooms/by-hand.js";
import { randomRoom } from "../rooms/random.js";

const wallsOf = ({ speaker: { position } }: Mounted): readonly [string, string] => {
  if (position.kind !== "given") throw new Error("no tapes");
  return [position.tapes[0].from, position.tapes[1].from];
};

function fixOf(one: Room, mounted: Mounted) {
  const neighbours = neighboursOf(mounted, mountedIn(one));
  return nearestClearCentre({ room: one, mounted, neighbours, from: wallsOf(mounted) });
}

function onlyFix(parts: Parts) {
  const one = room(parts);
  const [mounted] = mountedIn(one);
  if (mounted === undefined) throw new Error("no loudspeaker");
  return fixOf(one, mounted);
}

test("found with looks enough, and not told where they are used up", () => {
  const one = room({ speakers: [{ at: { left: "1 m", front: "600 mm" } }] });
  const [mounted] = mountedIn(one);
  if (mounted === undefined) throw new Error("no loudspeaker");
  const wanted = { room: one, mounted, neighbours: [], from: wallsOf(mounted) };
  const found = nearestClearCentre(wanted);
  expect(found).not.toBeNull();
  const enough = rememberedGrounds(new Effort(5000));
  expect(nearestClearCentre({ ...wanted, groundOf: enough })).toEqual(found);
  const few = rememberedGrounds(new Effort(20));
  expect(nearestClearCentre({ ...wanted, groundOf: few })).toBeNull();
  expect(nearestClearCentre({ ...wanted, groundOf: few })).toBeNull();
});

/*
 * By hand, in the plain room: joists of 45 mm every 600 from the front, opening 200, clamps 12, clear 6.35. The
 * nearest centre beside the joist at 600 is 22.5 + 100 + 18.35 = 140.85 from its centre.
 */
describe("by hand in the plain room", () => {
  const at = (left: string, front: string): Parts => ({ speakers: [{ at: { left, front } }] });

  test("beside a joist, into whole millimetres: 600 + 140.85 = 740.85, so 741", () => {
    expect(onlyFix(at("2 m", "650 mm"))?.at).toEqual({ left: 2000, front: 741 });
    expect(onlyFix(at("2 m", "590 mm"))?.at).toEqual({ left: 2000, front: 459 });
  });

  test("as tapes from the walls that were typed", () => {
    // 6000 - 741 from the back; the room is 4000 wide.
    expect(onlyFix({ speakers: [{ at: { right: "2 m", back: "5350 mm" } }] })?.at).toEqual({
      right: 2000,
      back: 5259,
    });
  });

  test("back inside when the flange passes the wall: 12.5 + 115 = 127.5, so 128", () => {
    expect(onlyFix(at("100 mm", "300 mm"))?.at).toEqual({ left: 128, front: 300 });
  });

  test("to sixteenths of an inch where the room is in inches", () => {
    // 16 in from the front; half of 1 1/2 + half of 8 + 1 = 5 3/4 more: 21 3/4 in exactly.
    const imperial: Parts = {
      units: "imperial",
      board: { ceiling: '1/2"', walls: '1/2"' },
      framing: {
        ceiling: {
          run: "left-right",
          from: "front",
          member: "2x10",
          at: null,
          first: '16"',
          spacing: '24"',
        },
      },
      models: { round: { opening: { round: '8"' }, flange: { round: '9"' }, clamp_reach: '3/4"' } },
      checks: { clear: '1/4"' },
      speakers: [{ at: { left: "6'", front: '18"' } }],
    };
    const fix = onlyFix(imperial);
    expect(fix?.at.left).toBeCloseTo(6 * 304.8, 9);
    expect(fix?.at.front).toBeCloseTo(21.75 * 25.4, 9);
  });

  test("on a wall from the floor, as the tape was typed", () => {
    // Upright, 300 high: over the bottom plate (38.1) by 18.35 is 206.45 from the floor, so 207.
    const low = { id: "W", model: "upright", on: "front", at: { left: "900 mm", up: "150 mm" } };
    expect(onlyFix({ speakers: [low] })?.at).toEqual({ left: 900, floor: 207 });
  });

  test("none where nothing is clear, and none where the framing is unknown", () => {
    const wide = {
      ...at("2 m", "650 mm"),
      models: { round: { opening: { round: "550 mm" }, flange: { round: "600 mm" } } },
    };
    expect(onlyFix(wide)).toBeNull();
    expect(onlyFix({ ...at("2 m", "650 mm"), framing: { ceiling: null } })).toBeNull();
  });

  test("a bay that the opening fills to the last is found where its middle is on a mark", () => {
    // 600 - 45 - 2 (12 + 8) = 515 across.
    const full = {
      ...at("2 m", "650 mm"),
      checks: { clear: "8 mm" },
      models: { round: { opening: { round: "515 mm" }, flange: { round: "540 mm" } } },
    };
    expect(onlyFix(full)?.at).toEqual({ left: 2000, front: 900 });
  });
});

describe("in any room", () => {
  /** Marks of the two tapes within a distance, at most about 2000 of them, evenly. */
  function marksWithin(one: Room, mounted: Mounted, withinMm: number): SurfacePoint[] {
    const [first, second] = wallsOf(mounted);
    const lines = [tapeLine(one, mounted.surface, first), tapeLine(one, mounted.surface, second)] as const;
    const stepMm = TAPE_STEP_MM[one.units];
    const stride = Math.max(1, Math.ceil((2 * withinMm) / stepMm / 44));
    const steps = Array.from({ length: 45 }, (_, index) => (index - 22) * stride);
    const middle = lines.map((line) => Math.round(tapeMm(line, mounted.centre) / stepMm));
    return steps.flatMap((a) =>
      steps.flatMap((b) => {
        const [p = 0, q = 0] = middle;
        return pointAt(lines, [(p + a) * stepMm, (q + b) * stepMm]) ?? [];
      }),
    );
  }

  test("the fix is clear by the plainest arithmetic, on whole marks, and no nearer mark is clear", () => {
    let fixes = 0;
    fc.assert(
      fc.property(randomRoom, (parts) => {
        const one = room(parts);
        for (const mounted of mountedIn(one)) {
          const { speaker, centre } = mounted;
          if (isClearByHand(one, speaker, centre, EPSILON_MM)) continue;
          const fix = fixOf(one, mounted);
          const away = ({ u, v }: SurfacePoint): number => Math.hypot(u - centre.u, v - centre.v);
          const withinMm = fix === null ? 3000 : away(fix);
          if (fix !== null) {
            fixes += 1;
            expect(isClearByHand(one, speaker, fix, EPSILON_MM + 1e-6)).toBe(true);
            for (const [from, mm] of Object.entries(fix.at)) {
              expect(Math.abs(mm - Math.round(mm))).toBeLessThan(1e-9);
              expect(tapeMm(tapeLine(one, mounted.surface, from), fix)).toBeCloseTo(mm, 6);
            }
          }
          // A step of both tapes nearer would have been found.
          const slackMm = fix === null ? 0 : Math.SQRT2 * TAPE_STEP_MM[one.units];
          for (const mark of marksWithin(one, mounted, withinMm)) {
            if (away(mark) >= withinMm - slackMm) continue;
            expect(isClearByHand(one, speaker, mark, EPSILON_MM)).toBe(false);
          }
        }
      }),
      { numRuns: howMany(16) },
    );
    expect(fixes).toBeGreaterThan(5);
  });

  test("a tape reads at an opening what was typed", () => {
    fc.assert(
      fc.property(randomRoom, (parts) => {
        const one = room(parts);
        for (const { speaker, surface, centre } of mountedIn(one)) {
          if (speaker.position.kind !== "given") throw new Error("not given");
          for (const { from, mm } of speaker.position.tapes) {
            expect(tapeMm(tapeLine(one, surface, from), centre)).toBeCloseTo(mm, 6);
          }
        }
      }),
    );
  });
});

describe("among many", () => {
  const place = fc.record({
    left: fc.integer({ min: 0, max: 4000 }),
    front: fc.integer({ min: 0, max: 6000 }),
    model: fc.constantFrom("round", "upright", "tilted"),
    turn: fc.constantFrom("0 deg", "90 deg"),
  });
  const crowded = fc.array(place, { minLength: 2, maxLength: 40 }).map((places) =>
    room({
      speakers: places.map(({ left, front, model, turn }, index) => ({
        id: `S${index}`,
        ...{ model, ...(model === "upright" ? { turn } : {}) },
        at: { left: `${left} mm`, front: `${front} mm` },
      })),
    }),
  );

  test("asked with the others or with all of them at once, the fix is the same", () => {
    fc.assert(
      fc.property(crowded, (one) => {
        const all = mountedIn(one);
        const groundOf = rememberedGrounds();
        for (const mounted of all) {
          const from = wallsOf(mounted);
          const together = nearestClearCentre({ room: one, mounted, neighbours: all, groundOf, from });
          expect(together).toEqual(fixOf(one, mounted));
        }
      }),
      { numRuns: howMany(6) },
    );
  });

  test("none is passed over that is nearer than it may be", () => {
    let near = 0;
    fc.assert(
      fc.property(crowded, (one) => {
        const all = mountedIn(one);
        for (const mounted of all) {
          const fitting = fittingOf(mounted.speaker, one.checks);
          const looked = neighboursNear(mounted, all, one.checks.clearMm);
          for (const other of neighboursOf(mounted, all)) {
            for (const obstacle of neighbourObstacles([other], fitting)) {
              if (gapMm(obstacle, mounted.centre) >= obstacle.wantedMm) continue;
              near += 1;
              expect(looked).toContain(other);
              expect(mayBeTooNear(obstacle)(mounted.centre)).toBe(true);
            }
          }
        }
      }),
      { numRuns: howMany(10) },
    );
    expect(near).toBeGreaterThan(20);
  });
});
