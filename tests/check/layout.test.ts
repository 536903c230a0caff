import { describe, expect, test } from "vitest";
import { jobJson } from "../../src/job-json.js";
import { type Parts, room } from "../rooms/build.js";
import { answer, findingsOf, job } from "../rooms/job.js";

/*
 * Ranges and labels: ITU-R BS.2051-2, as in tests/standards/published-positions.ts, where the table is held to its
 * source. Directions are worked out here from tapes: the plain room is 4 x 6 x 2.6 m, its seat 2 m from the left and the
 * front with the ear at 1.2 m, 12.5 mm of board everywhere; a centre on the front wall is 2000 - 12.5 before the ear.
 */
const TO_FRONT_MM = 1987.5;
const TO_BACK_MM = 3987.5;
const OVER_EAR_MM = 1387.5;

const of = (layout: string, speakers: readonly Parts[], more: Parts = {}): Parts => ({
  layout,
  seats: [{ name: "middle", at: { left: "2 m", front: "2 m" }, ear: "1.2 m", reference: true }],
  speakers,
  ...more,
});

const LAYOUT_CODES = ["channel-missing", "channel-twice", "channel-not-in-layout", "outside-window"];
const layoutFindings = (parts: Parts) => findingsOf(parts).filter(({ code }) => LAYOUT_CODES.includes(code));

/** So far to the left of the middle of the front wall that the azimuth is this. */
const frontAt = (azimuthDeg: number): Parts => ({
  left: `${2000 - TO_FRONT_MM * Math.tan((azimuthDeg * Math.PI) / 180)} mm`,
  up: "1.2 m",
});

const inFront = (id: string, channel: string, azimuthDeg: number): Parts => ({
  id,
  channel,
  on: "front",
  at: frontAt(azimuthDeg),
});

describe("channels of the layout", () => {
  test("without a layout nothing is asked", () => {
    expect(layoutFindings({ speakers: [inFront("A", "M+030", 10), inFront("B", "M+030", -10)] })).toEqual([]);
  });

  test("each that nobody has is missing, but for low-frequency effects", () => {
    // System B: M+030, M-030, M+000, LFE1, M+110, M-110.
    const found = layoutFindings(of("0+5+0", [inFront("C", "M+000", 0)]));
    expect(found).toMatchObject(
      ["M+030", "M-030", "M+110", "M-110"].map((channel) => ({
        code: "channel-missing",
        level: "warning",
        figures: { channel, layout: "0+5+0" },
        speaker: null,
        path: ["layout"],
      })),
    );
  });

  test("by the system's letter the same", () => {
    expect(layoutFindings(of("B", [inFront("C", "M+000", 0)]))).toHaveLength(4);
  });

  test("the second of two with one channel is told of the first, and both may be cut", () => {
    const twice = job(
      of("0+2+0", [inFront("L", "M+030", 30), inFront("R", "M-030", -30), inFront("X", "M+030", 0)]),
    );
    expect(twice.findings.filter(({ code }) => code === "channel-twice")).toMatchObject([
      {
        code: "channel-twice",
        level: "warning",
        figures: { channel: "M+030", other: "L" },
        speaker: "X",
        path: ["speakers", 2, "channel"],
      },
    ]);
    expect(twice.openings.map(({ mustNotCut }) => mustNotCut)).toEqual([false, false, false]);
  });

  test("one that the layout does not have is told, once, and its direction is not compared", () => {
    const stray = layoutFindings(
      of("0+2+0", [inFront("L", "M+030", 30), inFront("R", "M-030", -30), inFront("C", "M+000", 12)]),
    );
    expect(stray).toMatchObject([
      {
        code: "channel-not-in-layout",
        level: "warning",
        figures: { channel: "M+000", layout: "0+2+0" },
        speaker: "C",
        path: ["speakers", 2, "channel"],
      },
    ]);
  });

  test("low-frequency effects are left out of all of it", () => {
    const two = [inFront("L", "M+030", 30), inFront("R", "M-030", -30)];
    const bass = [inFront("B1", "LFE1", 3), inFront("B2", "LFE1", -10)];
    expect(layoutFindings(of("0+2+0", [...two, ...bass]))).toEqual([]);
  });

  test("a warning that is accepted keeps its level", () => {
    const accept = [{ code: "channel-missing", why: "stands free" }];
    const found = layoutFindings(of("0+2+0", [inFront("L", "M+030", 30)], { accept }));
    expect(found).toMatchObject([{ level: "warning", accepted: "stands free" }]);
  });
});

const pair = (left: number, right: number): readonly Parts[] => [
  inFront("L", "M+030", left),
  inFront("R", "M-030", right),
];

describe("outside the window", () => {
  test("where the standard fixes one value the tolerance is allowed either side, the limit itself too", () => {
    expect(layoutFindings(of("0+2+0", pair(34.999, -25)))).toEqual([]);
    expect(layoutFindings(of("0+2+0", pair(25, -35)))).toEqual([]);
    expect(layoutFindings(of("0+2+0", pair(30, -36)))).toMatchObject([
      { code: "outside-window", level: "warning", speaker: "R", path: ["speakers", 1], fix: null },
    ]);
  });

  test("the finding has the figure, by how much, and the nearest that is allowed", () => {
    const [left, right] = layoutFindings(of("0+2+0", pair(24.5, -36.25)));
    expect(left?.figures).toMatchObject({
      channel: "M+030",
      figure: "azimuth",
      nearestDeg: 25,
      toleranceDeg: 5,
    });
    expect(left?.figures).toMatchObject({
      isDeg: expect.closeTo(24.5, 9) as number,
      byDeg: expect.closeTo(0.5, 9) as number,
    });
    expect(right?.figures).toMatchObject({
      nearestDeg: -35,
      isDeg: expect.closeTo(-36.25, 9) as number,
      byDeg: expect.closeTo(1.25, 9) as number,
    });
  });

  test("the room file's tolerance takes its place", () => {
    const checks = { tolerance: "1 deg" };
    expect(layoutFindings(of("0+2+0", pair(31, -29), { checks }))).toEqual([]);
    expect(layoutFindings(of("0+2+0", pair(32, -30), { checks }))).toHaveLength(1);
  });

  test("a range that the standard gives takes no tolerance", () => {
    // System I: M+030 from 30 to 45.
    const others = { checks: { tolerance: "40 deg" } };
    const found = layoutFindings(of("0+7+0", pair(29.5, -30), others)).filter(
      ({ code }) => code === "outside-window",
    );
    expect(found).toMatchObject([{ speaker: "L", figures: { nearestDeg: 30, toleranceDeg: 0 } }]);
  });

  test("elevation has a finding of its own", () => {
    // 500 mm over the ear on the front wall: atan(500 / 1987.5) = 14.1 degrees, and 5 are allowed.
    const high = { ...inFront("C", "M+000", 0), at: { left: "2 m", up: "1.7 m" } };
    const [found] = layoutFindings(of("0+5+0", [high])).filter(({ code }) => code === "outside-window");
    const deg = (Math.atan2(500, TO_FRONT_MM) * 180) / Math.PI;
    expect(found?.figures).toMatchObject({ figure: "elevation", nearestDeg: 5, toleranceDeg: 5 });
    expect(found?.figures).toMatchObject({ byDeg: expect.closeTo(deg - 5, 9) as number });
  });

  test("straight behind, the window reaches round the half turn", () => {
    // System H: M+180 at 180, fixed, so from 175 anticlockwise to -175.
    const behind = (azimuthDeg: number): Parts => ({
      id: "B",
      channel: "M+180",
      on: "back",
      at: { left: `${2000 - TO_BACK_MM * Math.tan(((180 - azimuthDeg) * Math.PI) / 180)} mm`, up: "1.2 m" },
    });
    const told = (azimuthDeg: number) =>
      layoutFindings(of("9+10+3", [behind(azimuthDeg)])).filter(({ code }) => code === "outside-window");
    expect(told(176)).toEqual([]);
    expect(told(184)).toEqual([]);
    expect(told(173)).toMatchObject([
      { figures: { nearestDeg: 175, byDeg: expect.closeTo(2, 9) as number } },
    ]);
    expect(told(187)).toMatchObject([
      { figures: { nearestDeg: -175, byDeg: expect.closeTo(2, 9) as number } },
    ]);
  });

  test("above 85 degrees the azimuth is not compared", () => {
    // T+000 at 90 degrees, fixed. Behind the seat by OVER_EAR_MM / tan(elevation) the azimuth is 180.
    const overhead = (elevationDeg: number): Parts => ({
      id: "T",
      channel: "T+000",
      at: { left: "2 m", front: `${2000 + OVER_EAR_MM / Math.tan((elevationDeg * Math.PI) / 180)} mm` },
    });
    const told = (elevationDeg: number) =>
      layoutFindings(of("9+10+3", [overhead(elevationDeg)], { checks: { tolerance: "10 deg" } })).filter(
        ({ code }) => code === "outside-window",
      );
    expect(told(86)).toEqual([]);
    expect(told(84)).toMatchObject([{ figures: { figure: "azimuth", nearestDeg: -10 } }]);
  });
});

describe("in JSON", () => {
  const windows = (parts: Parts) => jobJson(answer(room(parts))).speakers.map(({ window }) => window);

  test("the window takes the tolerance in, and says whether the loudspeaker is inside", () => {
    expect(windows(of("0+2+0", pair(30, -40)))).toEqual([
      { azimuth: [25, 35], elevation: [-5, 5], inside: true },
      { azimuth: [-35, -25], elevation: [-5, 5], inside: false },
    ]);
  });

  test("round the half turn, and never past straight up", () => {
    const over: Parts = { id: "T", channel: "T+000", at: { left: "2 m", front: "2 m" } };
    const behind: Parts = { id: "B", channel: "M+180", on: "back", at: { left: "2 m", up: "1.2 m" } };
    expect(windows(of("H", [over, behind]))).toEqual([
      { azimuth: [-5, 5], elevation: [85, 90], inside: true },
      { azimuth: [175, -175], elevation: [0, 15], inside: true },
    ]);
  });

  test("null without a layout, for a channel of another one and for low-frequency effects", () => {
    expect(windows({ speakers: [inFront("L", "M+030", 30)] })).toEqual([null]);
    expect(windows(of("0+2+0", [inFront("C", "M+000", 0), inFront("B", "LFE1", 20)]))).toEqual([null, null]);
  });
});
