import { describe, expect, test } from "vitest";
import { type Cabling, cablingOf } from "../../src/cable/cabling.js";
import { toWorld } from "../../src/geometry/frame.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { surfaceNamed } from "../../src/room/room.js";
import { type Parts, room } from "../rooms/build.js";

/*
 * The plain room of 4 x 6 m with joists at 45 degrees from its right front corner, 1000 mm from it and every 1000 mm:
 * the left ends toward the front. Square to them from that corner a point lies (right + front) / sqrt(2) away.
 */

const ANGLED: Parts = {
  framing: {
    ceiling: {
      run: "45 deg",
      from: { right: 0, front: 0 },
      at: null,
      first: "1000 mm",
      spacing: "1000 mm",
    },
  },
  equipment: { at: { right: "0", front: "2500 mm" }, up: "500 mm" },
};

function cabling(right: number, front: number): { one: ReturnType<typeof room>; found: Cabling } {
  const one = room({
    ...ANGLED,
    speakers: [{ id: "S", channel: "U+030", at: { right: `${right} mm`, front: `${front} mm` } }],
  });
  const found = cablingOf(one, mountedIn(one));
  if (found === null) throw new Error("no equipment");
  return { one, found };
}

describe("cable under joists that run at an angle", () => {
  test("goes along their bay without a hole in any", () => {
    // Up the wall 2500 mm from the front: 2500 / sqrt 2 = 1768 from the corner, between joists 1 and 2. So is the
    // loudspeaker: (1900 + 600) / sqrt 2 = 1768.
    const { found } = cabling(1900, 600);
    const [run] = found.runs;
    const overhead = run?.legs.filter(({ field }) => field.surface.kind === "ceiling") ?? [];
    expect(overhead.flatMap(({ crossed }) => crossed)).toEqual([]);
    expect(overhead.map(({ way }) => way)).toEqual(["along"]);
    expect(overhead[0]?.between).toEqual([1, 2]);
    // From (0, 2500) to (1900, 600), straight along the bay.
    expect(overhead[0]?.lengthMm).toBeCloseTo(1900 * Math.SQRT2, 6);
  });

  test("takes one hole in each that stands between, on its centre line", () => {
    // (1900 + 2700) / sqrt 2 = 3253: joists 2 and 3 stand between.
    const { one, found } = cabling(1900, 2700);
    const holes = found.holes.filter(({ surface }) => surface === "ceiling");
    expect(holes.map(({ member }) => member.number)).toEqual([2, 3]);
    const { frame } = surfaceNamed(one, "ceiling");
    for (const { at, member } of holes) {
      const { x, y } = toWorld(frame, at);
      expect((4000 - x + (6000 - y)) / Math.SQRT2).toBeCloseTo(1000 * member.number, 6);
    }
  });

  test("never leaves the room on its way, wherever it goes", () => {
    const speakers = [500, 1500, 2500, 3500].flatMap((right) =>
      [500, 2000, 3500, 4500, 5500].map((front) => ({
        id: `S${right}-${front}`,
        channel: "U+030",
        at: { right: `${right} mm`, front: `${front} mm` },
      })),
    );
    const one = room({
      ...ANGLED,
      equipment: { at: { right: "0", front: "5450 mm" }, up: "500 mm" },
      speakers,
    });
    const found = cablingOf(one, mountedIn(one));
    expect(found?.runs).toHaveLength(speakers.length);
    for (const { legs } of found?.runs ?? []) {
      const overhead = legs.filter(({ field }) => field.surface.kind === "ceiling");
      expect(overhead.length).toBeGreaterThan(0);
      for (const { field, from, to } of overhead) {
        for (const { x, y } of [from, to].map((end) => toWorld(field.surface.frame, end))) {
          expect(Math.min(x, y, 4000 - x, 6000 - y)).toBeGreaterThan(-0.01);
        }
      }
    }
  });
});
