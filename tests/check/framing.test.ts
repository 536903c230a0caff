import { describe, expect, test } from "vitest";
import type { Parts } from "../rooms/build.js";
import { codesOf, findingsOf, job } from "../rooms/job.js";

/*
 * The plain room's joists are 45 wide, every 600 from the front; the opening is 200, the flange 230, clamps reach 12
 * and 6.35 is asked for beyond. Beside the joist at 600 the centre of an opening with gap g is at 600 + 122.5 + g.
 */
const front = (mm: number, more: Parts = {}): Parts => ({
  ...more,
  speakers: [{ id: "S", at: { left: "2 m", front: `${mm} mm` } }],
});

describe("the gap to a member", () => {
  test.each([
    { gap: -40, codes: ["opening-cuts-member"], level: "error" },
    { gap: -0.02, codes: ["opening-cuts-member"], level: "error" },
    { gap: -0.009, codes: ["clamps-blocked"], level: "error" },
    { gap: 11.98, codes: ["clamps-blocked"], level: "error" },
    { gap: 11.995, codes: ["opening-near-member"], level: "warning" },
    { gap: 12, codes: ["opening-near-member"], level: "warning" },
    { gap: 18.33, codes: ["opening-near-member"], level: "warning" },
    { gap: 18.345, codes: [], level: undefined },
    { gap: 18.35, codes: [], level: undefined },
  ])("$gap mm: $codes", ({ gap, codes, level }) => {
    const found = findingsOf(front(722.5 + gap));
    expect(found.map(({ code }) => code)).toEqual(codes);
    expect(found[0]?.level).toBe(level);
  });

  test("figures of each, with the nearest clear centre", () => {
    const [cut] = findingsOf(front(700));
    expect(cut).toMatchObject({
      speaker: "S",
      surface: "ceiling",
      path: ["speakers", 0],
      figures: { member: { surface: "ceiling", kind: "joist", number: 1 }, byMm: expect.closeTo(22.5, 9) },
      fix: { at: { left: 2000, front: 741 } },
    });
    const [blocked] = findingsOf(front(727.5));
    expect(blocked?.figures).toMatchObject({ gapMm: expect.closeTo(5, 9), reachMm: 12 });
    const [near] = findingsOf(front(737.5));
    expect(near?.figures).toMatchObject({
      gapMm: expect.closeTo(15, 9),
      wantedMm: expect.closeTo(18.35, 9),
    });
  });

  test("each member that is cut is said, and none of those behind it", () => {
    // Opening from 650 to 850: 615 ends at 637.5, near; 660 and 840 are cut by 32.5, 750 by half itself and 100.
    const narrow = {
      framing: { ceiling: { at: ["615 mm", "660 mm", "750 mm", "840 mm", "885 mm", "6 m"] } },
    };
    const found = findingsOf(front(750, narrow));
    expect(found.map(({ code }) => code)).toEqual(Array(3).fill("opening-cuts-member"));
    expect(found.map(({ figures }) => figures)).toEqual([
      { member: { surface: "ceiling", kind: "joist", number: 3 }, byMm: expect.closeTo(122.5, 9) },
      { member: { surface: "ceiling", kind: "joist", number: 2 }, byMm: expect.closeTo(32.5, 9) },
      { member: { surface: "ceiling", kind: "joist", number: 4 }, byMm: expect.closeTo(32.5, 9) },
    ]);
  });

  test("of more than eight that are cut the eight deepest, and how many more", () => {
    // Battens of 10 every 20, the opening from 800 to 1000: ten are cut, those at 815 to 995; 795 only touches it.
    const battens = Array.from({ length: 60 }, (_, index) => `${675 + 20 * index} mm`);
    const narrow = {
      framing: { ceiling: { at: [...battens, "6 m"], member: { width: "10 mm", depth: "220 mm" } } },
    };
    const found = findingsOf(front(900, narrow)).filter(({ code }) => code === "opening-cuts-member");
    const cut = found.flatMap(({ figures }) => ("byMm" in figures && "member" in figures ? [figures] : []));
    // 895 is 5 off its middle, 915 is 15 off, 875 is 25 off, and so on outward.
    expect(cut.map(({ member }) => member.number)).toEqual([12, 13, 11, 14, 10, 15, 9, 16]);
    expect(found).toHaveLength(9);
    expect(found[8]).toMatchObject({ level: "error", figures: { others: 2, errors: 2 }, fix: null });
  });

  test("of a doubled joist beside a square opening the nearer half is said", () => {
    // 300 square, its edge 20 from the nearer half: the other, 38 behind, is nearer than the 70 asked for as well.
    const square: Parts = {
      framing: {
        ceiling: { at: ["600 mm", "638 mm", "6 m"], member: { width: "38 mm", depth: "220 mm" } },
      },
      models: {
        square: {
          opening: { width: "300 mm", height: "300 mm" },
          flange: { width: "320 mm", height: "320 mm" },
          depth: "90 mm",
          clamp_reach: "12 mm",
        },
      },
      checks: { clear: "58 mm" },
    };
    const at = { left: "2 m", front: `${638 + 19 + 20 + 150} mm` };
    const found = findingsOf({ ...square, speakers: [{ id: "S", model: "square", at }] });
    expect(found).toMatchObject([
      { code: "opening-near-member", figures: { member: { number: 2 }, gapMm: expect.closeTo(20, 9) } },
    ]);
  });

  test("of members that are not cut at most the nearest on each side is said", () => {
    // 245 between the members' edges, the opening 200: 22.5 on each side, two more members behind each.
    const tight: Parts = {
      framing: { ceiling: { at: ["600 mm", "650 mm", "940 mm", "990 mm", "6 m"] } },
      checks: { clear: "30 mm" },
    };
    const found = findingsOf(front(795, tight));
    expect(found.map(({ code }) => code)).toEqual(["opening-near-member", "opening-near-member"]);
    expect(found.map(({ figures }) => ("member" in figures ? figures.member.number : null)).sort()).toEqual([
      2, 3,
    ]);
  });
});

describe("structure that does not repeat", () => {
  test("an opening near a wall's top that would cut the plate is an error", () => {
    // Two plates of 38.1: 2600 - 76.2 = 2523.8. Upright, 300 high: its top at 2400 + 150 = 2550 cuts 26.2.
    const high = { id: "S", model: "upright", on: "front", at: { left: "900 mm", up: "2400 mm" } };
    const [found] = findingsOf({ speakers: [high] });
    expect(found).toMatchObject({
      code: "opening-cuts-member",
      level: "error",
      figures: { member: { kind: "top-plate", number: 2 }, byMm: expect.closeTo(26.2, 9) },
      fix: { at: { left: 900 } },
    });
  });

  test("end studs are members too", () => {
    // The end stud ends at 45; the opening begins at 150 - 100 = 50: 5 away, under the clamps' 12.
    const corner = { id: "S", on: "front", at: { left: "150 mm", up: "1 m" } };
    expect(findingsOf({ speakers: [corner] })).toMatchObject([
      { code: "clamps-blocked", figures: { member: { kind: "end-stud", number: 1 } } },
    ]);
  });
});

describe("framing that nobody knows", () => {
  test("without an entry every opening on the surface is an error, with nowhere to move to", () => {
    const unknown = { framing: { ceiling: null } };
    expect(findingsOf(front(900, unknown))).toMatchObject([
      {
        code: "framing-unknown",
        level: "error",
        speaker: "S",
        figures: { surface: "ceiling", beyondMeasured: false },
        fix: null,
      },
    ]);
  });

  test("past the last measured member likewise, with the nearest place that is known", () => {
    const short = { framing: { ceiling: { at: ["600 mm", "1200 mm"] } } };
    expect(codesOf(front(900, short))).toEqual([]);
    const [found] = findingsOf(front(1800, short));
    expect(found).toMatchObject({
      code: "framing-unknown",
      level: "error",
      figures: { beyondMeasured: true },
      // Before the member at 1200: 1200 - 140.85 = 1059.15.
      fix: { at: { left: 2000, front: 1059 } },
    });
  });

  test("assumed framing is a note, one for each surface that an opening is asked for on", () => {
    const laid = { at: null, first: "600 mm", spacing: "600 mm" };
    const { findings } = job({
      framing: { ceiling: laid, left: laid, right: laid },
      speakers: [
        { id: "A", at: { left: "1 m", front: "900 mm" } },
        { id: "B", at: { left: "3 m", front: "900 mm" } },
        { id: "C", on: "left", at: { front: "900 mm", up: "1 m" } },
      ],
    });
    expect(findings).toMatchObject([
      {
        code: "framing-assumed",
        level: "note",
        surface: "ceiling",
        speaker: null,
        figures: { surface: "ceiling", firstMm: 600, spacingMm: 600, from: "front" },
        path: ["framing", "ceiling"],
      },
      { code: "framing-assumed", surface: "left" },
    ]);
  });

  test("on finished faces the first mark is what was typed, the board not added", () => {
    const { findings } = job({
      room: { measured_to: "finish" },
      framing: { ceiling: { at: null, first: "600 mm", spacing: "600 mm" } },
      speakers: [{ at: { left: "1 m", front: "900 mm" } }],
    });
    expect(findings).toMatchObject([
      { code: "framing-assumed", figures: { firstMm: expect.closeTo(600, 9) } },
    ]);
  });
});

/* 16 in less half of 1 1/2 in is 15 1/4 in: where a framer strikes the near edge of the second member. */
describe("a near edge given as a centre", () => {
  const laid = (first: string, more: Parts = {}): Parts => ({
    units: "imperial",
    framing: {
      ceiling: {
        run: "left-right",
        member: "2x10",
        from: "front",
        at: null,
        first,
        spacing: '16"',
        ...more,
      },
    },
    speakers: [{ at: { left: "1 m", front: "600 mm" } }],
  });
  const edgeNotes = (parts: Parts) => findingsOf(parts).filter(({ code }) => code === "edge-given-as-centre");

  test('15 1/4" is noted, 16" is not', () => {
    expect(edgeNotes(laid('15 1/4"'))).toMatchObject([
      {
        level: "note",
        surface: "ceiling",
        figures: { givenMm: expect.closeTo(387.35, 9), centreIfEdgeMm: expect.closeTo(406.4, 9) },
      },
    ]);
    expect(edgeNotes(laid('16"'))).toEqual([]);
  });

  test("with mark: near-edge it is right", () => {
    expect(edgeNotes(laid('15 1/4"', { mark: "near-edge" }))).toEqual([]);
  });

  test('15 1/4" is the usual edge whatever the spacing after it', () => {
    expect(edgeNotes(laid('15 1/4"', { spacing: '24"' }))).toHaveLength(1);
    expect(edgeNotes(laid('14"', { spacing: '24"' }))).toEqual([]);
  });
});
