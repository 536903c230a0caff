import { describe, expect, test } from "vitest";
import { placeAll } from "../../../src/place/place.js";
import { only } from "../../only.js";
import { type Parts, room } from "../../rooms/build.js";
import { job } from "../../rooms/job.js";

/*
 * Joints of the board: kept off where that costs less than `checks: { joint: ... }`. Straight over the seat is 2000 mm
 * from the left and 3300 from the front, midway between the joists at 3000 and 3600; the ear is at 1200 mm, the face at
 * 2587.5. The opening is 200 mm across, so that 100 mm off a joint its edge lies on it, which is no longer over it.
 */
const OVER_EAR_MM = 2587.5 - 1200;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

const asked = (firstMm: number, more: Parts = {}): Parts => ({
  layout: "9+10+3",
  board: { sheets: { ceiling: { from: "front", first: `${firstMm} mm`, width: "4 m" } } },
  seats: [{ name: "middle", at: { left: "2 m", front: "3300 mm" }, ear: "1200 mm", reference: true }],
  speakers: [{ id: "T", channel: "T+000", at: "best" }],
  ...more,
});

const placedIn = (said: Parts) => {
  const placed = only(placeAll(room(said)).placed);
  return { ...placed, frontMm: 6000 - placed.mounted.centre.v, leftMm: 4000 - placed.mounted.centre.u };
};

describe("a joint through the best place", () => {
  test("is kept off where that costs less than the limit", () => {
    // 30 mm past the joint at 3270: 70 mm further is 2.9 degrees.
    expect(degrees(Math.atan(70 / OVER_EAR_MM))).toBeCloseTo(2.888, 3);
    const { frontMm, cost, inTheWay } = placedIn(asked(3270, { checks: { joint: "3 deg" } }));
    expect(frontMm).toBe(3370);
    expect(cost).toMatchObject({ offDeg: expect.closeTo(2.888, 2) as number, jointDeg: 0 });
    expect(inTheWay).toEqual([{ kind: "joint", joint: "long" }]);
  });

  test("stays where it is where that would cost more, and the finding names a centre off it", () => {
    const said = asked(3270);
    const { frontMm, cost } = placedIn(said);
    expect(frontMm).toBe(3300);
    expect(cost).toMatchObject({ jointDeg: 2 });
    const codes = job(said).findings.map(({ code }) => code);
    expect(codes).toContain("joint-through-opening");
  });

  test("means nothing where the file asks for no such care", () => {
    const { frontMm, cost } = placedIn(asked(3210, { checks: { joint: 0 } }));
    expect([frontMm, cost.jointDeg]).toEqual([3300, 0]);
    // With it: 10 mm further is nothing.
    expect(placedIn(asked(3210)).frontMm).toBe(3310);
  });
});

test("the fix of an opening over a joint is the nearest clear centre off every joint", () => {
  const said = (left: string): Parts => ({
    board: {
      sheets: {
        ceiling: {
          from: "front",
          first: "1200 mm",
          width: "1200 mm",
          length: "2400 mm",
          ends: { from: "left", first: "1 m", stagger: "1200 mm" },
        },
      },
    },
    speakers: [{ id: "S", at: { left, front: "900 mm" } }],
  });
  // The first row's butt joint lies 1000 mm from the left, the joists at 600 and 1200 leave 740.85 to 1059.15.
  expect(job(said("1030 mm")).findings).toMatchObject([
    {
      code: "joint-through-opening",
      figures: { joint: "butt", offCentreMm: 30 },
      fix: { at: { left: 1100, front: 900 } },
    },
  ]);
  expect(job(said("1100 mm")).findings).toEqual([]);
});
