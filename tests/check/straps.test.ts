import { describe, expect, test } from "vitest";
import { sideGaps } from "../../src/place/gaps.js";
import { type Member, surfaceNamed } from "../../src/room/room.js";
import { only } from "../only.js";
import { type Parts, room } from "../rooms/build.js";
import { codesOf, job, openingNamed } from "../rooms/job.js";

/*
 * Strapping and resilient channel as members. The plain room is 4 x 6 m with joists from left to right every 600 mm;
 * straps lie across them, front to back. An opening is 200 mm across, its clamps reach 12 mm, a quarter inch beyond.
 */

/** Null takes a key away. */
const straps = (more: Parts = {}): Parts => {
  const told = { depth: "19 mm", width: "63 mm", from: "left", first: "300 mm", spacing: "600 mm", ...more };
  const kept = Object.entries(told).filter(([, value]) => value !== null);
  return { framing: { ceiling: { strapping: Object.fromEntries(kept) } } };
};

const strapsOf = (said: Parts, name = "ceiling"): readonly Member[] => {
  const { framing } = surfaceNamed(room(said), name);
  if (framing.kind === "unknown") throw new Error("unknown");
  return framing.members.filter(({ kind }) => kind === "strap" || kind === "channel");
};

describe("straps and channels", () => {
  test("lie across the joists over all of the ceiling, counted from their wall", () => {
    // u is from the right wall, 4000 mm from the left one.
    expect(strapsOf(straps()).map(({ number, from, to }) => [number, 4000 - from.u, from.v, to.v])).toEqual([
      [1, 300, 0, 6000],
      [2, 900, 0, 6000],
      [3, 1500, 0, 6000],
      [4, 2100, 0, 6000],
      [5, 2700, 0, 6000],
      [6, 3300, 0, 6000],
      [7, 3900, 0, 6000],
    ]);
  });

  test("an opening keeps from them as from a joist, and the finding names them", () => {
    const one = (kind: string, left: string) =>
      job({ ...straps({ kind }), speakers: [{ id: "S", at: { left, front: "900 mm" } }] }).findings;
    // 100 of the opening and 31.5 of the strap: at 900 + 120 it is cut by 11.5, at 900 + 140 it is 8.5 away.
    expect(one("strap", "1020 mm")).toMatchObject([
      { code: "framing-assumed", figures: { of: "strap", firstMm: 300, from: "left" } },
      {
        code: "opening-cuts-member",
        level: "error",
        figures: { member: { kind: "strap", number: 2 }, byMm: expect.closeTo(11.5, 9) },
        // 900 + 31.5 + 100 + 12 + 6.35: on whole millimetres 1050.
        fix: { at: { left: 1050, front: 900 } },
      },
    ]);
    expect(one("channel", "1040 mm")[1]).toMatchObject({
      code: "clamps-blocked",
      figures: { member: { kind: "channel", number: 2 }, gapMm: expect.closeTo(8.5, 9) },
    });
    expect(one("strap", "1200 mm").map(({ code }) => code)).toEqual(["framing-assumed"]);
  });

  test("their depth is part of what is behind the face, as where only that is told", () => {
    const deep = (strapping: Parts[string]): readonly string[] =>
      codesOf({
        framing: { ceiling: { strapping } },
        models: { round: { depth: "251 mm" } },
        speakers: [{ id: "S", at: { left: "1200 mm", front: "900 mm" } }],
      });
    const told = { width: "63 mm", from: "left", first: "300 mm", spacing: "600 mm" };
    // 220 of joist, 19 of strap, 12.5 of board: 251.5.
    expect(deep({ depth: "19 mm", ...told })).not.toContain("too-deep");
    expect(deep({ depth: "18 mm", ...told })).toContain("too-deep");
    expect(deep("18 mm")).toContain("too-deep");
  });

  test("bays and gaps on both sides are those of the joists", () => {
    const one = openingNamed(
      job({ ...straps(), speakers: [{ id: "S", at: { left: "1200 mm", front: "900 mm" } }] }),
    );
    const { before, after } = sideGaps(one);
    expect([before, after].map((gap) => gap?.member)).toMatchObject([
      { kind: "joist", number: 1 },
      { kind: "joist", number: 2 },
    ]);
    expect(one.bay).toEqual({ number: 2, from: "front" });
  });

  test("past the last that was measured nobody knows whether there is one", () => {
    const { framing } = surfaceNamed(
      room(straps({ first: null, spacing: null, at: ["300 mm", "900 mm", "1500 mm"] })),
      "ceiling",
    );
    if (framing.kind === "unknown") throw new Error("unknown");
    const stretch = only(framing.unknown);
    expect(Math.max(...stretch.map(({ u }) => 4000 - u))).toBe(4000);
    expect(Math.min(...stretch.map(({ u }) => 4000 - u))).toBe(1531.5);
    expect(framing.straps?.layout.basis).toBe("measured");
  });

  test("on a wall channels lie level, counted from the floor, and end at doors", () => {
    const channels = strapsOf(
      {
        framing: {
          front: {
            strapping: {
              kind: "channel",
              depth: "13 mm",
              width: "70 mm",
              from: "floor",
              at: ["80 mm", "1300 mm", "2565 mm"],
            },
            openings: [
              {
                name: "door",
                corner: { left: "1 m", up: 0 },
                opposite: { left: "2 m", up: "2 m" },
                studs: 0,
                header: "200 mm",
              },
            ],
          },
        },
      },
      "front",
    );
    expect(channels.map(({ number, from, to }) => [number, from.u, to.u, from.v])).toEqual([
      [1, 0, 1000, 80],
      [1, 2000, 4000, 80],
      [2, 0, 1000, 1300],
      [2, 2000, 4000, 1300],
      [3, 0, 4000, 2565],
    ]);
  });

  test("they may run at an angle of their own, from a corner", () => {
    const angled = strapsOf(straps({ run: "45 deg", from: { right: 0, front: 0 } }));
    for (const { number, from } of angled) {
      // u from the right wall; v from the back, 6000 from the front one.
      expect((from.u + 6000 - from.v) / Math.SQRT2).toBeCloseTo(300 + 600 * (number - 1), 9);
    }
  });

  test("what they are counted from runs as they do", () => {
    expect(() => room(straps({ from: "front" }))).toThrow(/framing-from/u);
    expect(() => room(straps({ from: "fro" }))).toThrow(/unknown-name/u);
    expect(() => room(straps({ first: null }))).toThrow(/framing-layout/u);
  });
});

test("told by their depth alone they are a warning: nobody knows what an opening cuts", () => {
  const said = (strapping: Parts[string]): Parts => ({
    framing: { ceiling: { strapping } },
    speakers: [{ id: "S", at: { left: "1200 mm", front: "900 mm" } }],
  });
  expect(job(said("19 mm")).findings).toMatchObject([
    { code: "straps-unknown", level: "warning", surface: "ceiling", figures: { depthMm: 19 } },
  ]);
  const placed = { depth: "19 mm", width: "63 mm", from: "left", first: "300 mm", spacing: "600 mm" };
  expect(codesOf(said(placed))).toEqual([]);
});
