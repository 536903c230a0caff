import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alignDelayMs, samplesOf, travelMs } from "../../src/listen/delay.js";
import { distanceDb, levelDb, offAxisLossDb } from "../../src/listen/level.js";
import { driveOf } from "../../src/listen/power.js";
import { room, speakerNamed } from "../rooms/build.js";
import { job, openingNamed } from "../rooms/job.js";

describe("level with distance", () => {
  test("20 lg: 6.02 dB less for each doubling, 9.54 dB less at 3 m, 20 dB less at 10 m", () => {
    expect(distanceDb(1000)).toBeCloseTo(0, 12);
    expect(distanceDb(2000)).toBeCloseTo(-6.02, 2);
    expect(distanceDb(3000)).toBeCloseTo(-9.54, 2);
    expect(distanceDb(10_000)).toBeCloseTo(-20, 12);
  });

  test("off the axis: none on it, 6 dB at half the stated coverage, never less further out, never over 20 dB", () => {
    expect(offAxisLossDb(0, 90)).toBe(0);
    expect(offAxisLossDb(45, 90)).toBeCloseTo(6, 12);
    expect(offAxisLossDb(60, 120)).toBeCloseTo(6, 12);
    expect(offAxisLossDb(180, 90)).toBe(20);
    const angle = fc.double({ min: 0, max: 180, noNaN: true });
    fc.assert(
      fc.property(angle, angle, fc.double({ min: 1, max: 360, noNaN: true }), (one, other, coverage) => {
        const [near, far] = [Math.min(one, other), Math.max(one, other)];
        expect(offAxisLossDb(far, coverage)).toBeGreaterThanOrEqual(offAxisLossDb(near, coverage));
      }),
    );
  });

  test("by distance alone where coverage or axis is not known", () => {
    expect(levelDb({ distanceMm: 2000, offAxisDeg: 40, coverageDeg: null })).toBeCloseTo(-6.0206, 4);
    expect(levelDb({ distanceMm: 2000, offAxisDeg: null, coverageDeg: 90 })).toBeCloseTo(-6.0206, 4);
    expect(levelDb({ distanceMm: 2000, offAxisDeg: 45, coverageDeg: 90 })).toBeCloseTo(-12.0206, 4);
  });
});

describe("time", () => {
  test("2.9138 ms a metre, 0.8881 ms a foot at 343.2 m/s", () => {
    expect(travelMs(1000, 20)).toBeCloseTo(2.9138, 4);
    expect(travelMs(304.8, 20)).toBeCloseTo(0.8881, 4);
  });

  test("the nearer waits for the furthest, in ms and in samples at 48 kHz", () => {
    expect(alignDelayMs(2000, 3000, 20)).toBeCloseTo(2.9138, 4);
    expect(alignDelayMs(3000, 3000, 20)).toBe(0);
    // 2.9138 x 48
    expect(samplesOf(alignDelayMs(2000, 3000, 20))).toBe(140);
  });
});

/* Handbook examples: level = sensitivity + 10 lg P - 20 lg r, on the axis. */
describe("power", () => {
  const [model] = [speakerNamed(room({ speakers: [{ at: { left: "2 m", front: "900 mm" } }] }), "S1").model];
  const stated = (sensitivityDb: number, powerW: number, impedanceOhm = 8) => ({
    ...model,
    sensitivityDb,
    powerW,
    impedanceOhm,
  });
  const listening = { temperatureC: 20, targetDb: 85, headroomDb: 20 };
  const at = (metres: number) => distanceDb(metres * 1000);

  test.each([
    { sensitivity: 88, watts: 100, metres: 3, level: 98.5 },
    { sensitivity: 87, watts: 100, metres: 3, level: 97.46 },
    { sensitivity: 87, watts: 500, metres: 10, level: 94 },
  ])("$sensitivity dB, $watts W, $metres m: $level dB", ({ sensitivity, watts, metres, level }) => {
    const drive = driveOf(stated(sensitivity, watts), at(metres), listening);
    expect(85 + (drive?.headroomDb ?? 0)).toBeCloseTo(level, 1);
  });

  test("105 dB at 3 m from 87 dB takes 567.9 W", () => {
    expect(driveOf(stated(87, 100), at(3), listening)?.powerW).toBeCloseTo(567.9, 1);
  });

  test("into 4 ohm 2.83 V is 2 W, so the same level takes twice the power", () => {
    const eight = driveOf(stated(87, 100), at(3), listening)?.powerW ?? 0;
    expect(driveOf(stated(87, 100, 4), at(3), listening)?.powerW).toBeCloseTo(2 * eight, 6);
  });

  test("is not guessed where the data sheet is silent", () => {
    expect(driveOf({ ...model, sensitivityDb: null, impedanceOhm: 8 }, 0, listening)).toBeNull();
    expect(driveOf({ ...stated(87, 1), powerW: null }, 0, listening)?.headroomDb).toBeNull();
  });
});

/* Plain room: seat in the middle of 4 x 6 m, ear 1.2 m; the finished ceiling is 1387.5 over the ear. */
describe("in a room", () => {
  const answer = job({
    listening: { temperature: "86 F" },
    models: { round: { coverage: "90 deg", sensitivity: "88 dB", impedance: "8 ohm", power: "100 W" } },
    seats: [
      { name: "middle", at: { left: "2 m", front: "3 m" }, ear: "1.2 m", reference: true },
      { name: "back", at: { left: "2 m", front: "4 m" }, ear: "1.2 m" },
    ],
    speakers: [
      { id: "OVER", channel: "T+000", at: { left: "2 m", front: "2.7 m" } },
      { id: "FAR", channel: "M+030", at: { left: "2 m", front: "300 mm" } },
    ],
  });
  const over = openingNamed(answer, "OVER").listening;

  test("the level at another seat is what distance and the lobe take off against the reference seat", () => {
    const angle = (back: number) => (Math.atan2(back, 1387.5) * 180) / Math.PI;
    const lobe = (back: number) => 6 * (angle(back) / 45) ** 2;
    const spread = 20 * Math.log10(Math.hypot(1300, 1387.5) / Math.hypot(300, 1387.5));
    expect(over.heard[0]?.levelDb).toBe(0);
    expect(over.heard[1]?.levelDb).toBeCloseTo(-spread - (lobe(1300) - lobe(300)), 9);
  });

  test("the delay is for the warmth that was typed", () => {
    const gapMm = Math.hypot(2700, 1387.5) - Math.hypot(300, 1387.5);
    // 86 °F is 30 °C: 349.005 m/s.
    expect(over.heard[0]?.delayMs).toBeCloseTo(gapMm / 349.005, 4);
    expect(openingNamed(answer, "FAR").listening.heard[0]?.delayMs).toBe(0);
  });

  test("without a layout no window is spoken of", () => {
    expect(over.heard.map(({ inside }) => inside)).toEqual([null, null]);
  });
});

test("a window holds for the reference seat and not for one under the loudspeaker", () => {
  const answer = job({
    layout: "4+5+0",
    seats: [
      { name: "middle", at: { left: "2 m", front: "3 m" }, ear: "1.2 m", reference: true },
      { name: "under", at: { left: "1 m", front: "1.5 m" }, ear: "1.2 m" },
    ],
    speakers: [{ id: "TL", channel: "U+030", at: { left: "1 m", front: "1.5 m" } }],
  });
  expect(openingNamed(answer, "TL").listening.heard.map(({ inside }) => inside)).toEqual([true, false]);
});
