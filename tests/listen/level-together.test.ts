import { atan, exp, log10, pi, std, sum } from "mathjs";
import { describe, expect, test } from "vitest";
import { vector } from "../../src/geometry/vector.js";
import { coverageOf, earsOver } from "../../src/listen/covered.js";
import { levelDb } from "../../src/listen/level.js";
import { levelAtDb, type Source, sourceOf, spreadOver, sumDb } from "../../src/listen/level-together.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { type Parts, room } from "../rooms/build.js";

const source = (x: number, y: number, said: Partial<Source> = {}): Source => ({
  position: vector(x, y, 3000),
  axis: vector(0, 0, -1),
  coverageDeg: 90,
  sensitivityDb: 0,
  ...said,
});

describe("levels that have nothing to do with each other", () => {
  // Worked by hand in any handbook of acoustics: two equal ones are 3.01 dB more, ten 10 dB; 80 and 70 dB make 80.41.
  test.each([
    [[60, 60], 63.0103],
    [Array.from({ length: 10 }, () => 60), 70],
    [[80, 70], 80.4139],
    [[80, 80, 80], 84.7712],
    [[0], 0],
  ])("%j together", (levels, together) => {
    expect(sumDb(levels)).toBeCloseTo(together, 4);
  });

  test("two loudspeakers at equal distance and angle are 3.01 dB more than one", () => {
    const ear = vector(0, 0, 1200);
    const one = levelAtDb([source(-800, 0)], ear);
    expect(levelAtDb([source(-800, 0), source(800, 0)], ear)).toBeCloseTo(one + 3.0103, 4);
  });

  test("one loudspeaker is what the model of a single one says", () => {
    for (const [x, y] of [
      [0, 0],
      [700, 200],
      [4000, 0],
      [20_000, 100],
    ] as const) {
      const ear = vector(x, y, 1200);
      const distanceMm = Math.hypot(x, y, 1800);
      const offAxisDeg = (Math.atan2(Math.hypot(x, y), 1800) * 180) / Math.PI;
      expect(levelAtDb([source(0, 0)], ear)).toBeCloseTo(
        levelDb({ distanceMm, offAxisDeg, coverageDeg: 90 }),
        6,
      );
      expect(levelAtDb([source(0, 0, { sensitivityDb: 87 })], ear)).toBeCloseTo(
        87 + levelDb({ distanceMm, offAxisDeg, coverageDeg: 90 }),
        6,
      );
      expect(levelAtDb([source(0, 0, { axis: null })], ear)).toBeCloseTo(
        levelDb({ distanceMm, offAxisDeg: null, coverageDeg: 90 }),
        6,
      );
    }
  });

  // The published factor: on the edge of a circle of 90 degrees a loudspeaker is down 6 dB and the longer way's 3.01.
  test("at the edge of its circle one of 90 degrees is down 9.01 dB", () => {
    const below = levelAtDb([source(0, 0)], vector(0, 0, 1200));
    expect(levelAtDb([source(0, 0)], vector(1800, 0, 1200)) - below).toBeCloseTo(-9.0103, 4);
  });
});

const HALL: Parts = {
  room: { width: "8 m", length: "6 m", height: "3 m" },
  framing: { ceiling: { at: ["6 m"] }, left: null, right: null, front: null, back: null },
  models: {
    straight: { ...STRAIGHT(), coverage: "100 deg", sensitivity: "87 dB", impedance: "8 ohm", power: "30 W" },
  },
  areas: [{ name: "hall", on: "ceiling", model: "straight", ear: "1.2 m" }],
  speakers: [
    [2000, 1500],
    [6000, 1500],
    [2000, 4500],
    [6000, 4500],
  ].map(([left, front], index) => ({
    id: `S${index + 1}`,
    channel: "M+000",
    area: "hall",
    model: "straight",
    at: { left: `${left} mm`, front: `${front} mm` },
  })),
};

function STRAIGHT(): Parts {
  return { opening: { round: "160 mm" }, flange: { round: "190 mm" }, depth: "90 mm", clamp_reach: "12 mm" };
}

describe("the level over an area", () => {
  const hall = room(HALL);
  const [coverage] = coverageOf(hall, mountedIn(hall));
  if (coverage?.spread === undefined || coverage.spread === null) throw new Error("no level");
  const { spread } = coverage;

  // Everything a second time, from the words of the model alone, with mathjs: a grid of our own, points, powers, sum.
  test("is that of a sum worked out apart from the house", () => {
    const places = [2000, 6000].flatMap((x) => [1500, 4500].map((y) => [x, y] as const));
    const levels: number[] = [];
    for (let i = 0; i < 90; i += 1) {
      for (let j = 0; j < 70; j += 1) {
        const x = 12.5 + ((i + 0.5) / 90) * 7975;
        const y = 12.5 + ((j + 0.5) / 70) * 5975;
        const powers = places.map(([u, v]) => {
          const [across, down] = [Math.hypot(x - u, y - v) / 1000, 1.7875];
          const deg = (Number(atan(across / down)) * 180) / pi;
          const lossDb = Math.min(20, 6 * (deg / 50) ** 2);
          return Number(exp((-lossDb / 10) * Math.log(10))) / (across ** 2 + down ** 2);
        });
        levels.push(87 + 10 * Number(log10(Number(sum(powers)))));
      }
    }
    const mean = Number(sum(levels)) / levels.length;
    expect(spread.meanDb).toBeCloseTo(mean, 1);
    expect(spread.deviationDb).toBeCloseTo(Number(std(levels, "uncorrected")), 1);
    expect(spread.leastDb).toBeCloseTo(Math.min(...levels) - mean, 0);
    expect(spread.mostDb).toBeCloseTo(Math.max(...levels) - mean, 1);
    const even = levels.filter((level) => Math.abs(level - mean) <= 3).length / levels.length;
    expect(spread.evenShare).toBeCloseTo(even, 1);
  });

  test("counts as the mean of equal cells, in the world and at the ears", () => {
    const area = hall.areas[0];
    const surface = hall.surfaces.find(({ name }) => name === "ceiling");
    if (area === undefined || surface === undefined) throw new Error("no area");
    const ears = earsOver(area, surface, 100);
    expect(ears.length).toBeGreaterThan(80);
    expect(ears.every(({ z }) => z === 1200)).toBe(true);
    expect(ears.reduce((all, { x }) => all + x, 0) / ears.length).toBeCloseTo(4000, 6);
    expect(ears.reduce((all, { y }) => all + y, 0) / ears.length).toBeCloseTo(3000, 6);
  });

  // By hand: 30 W against 1 W into 8 ohm is 14.77 dB above the mean level with 2.83 V; the target is 85 dB.
  test("what power it takes, and what the stated power leaves", () => {
    expect(coverage.drive?.headroomDb).toBeCloseTo(spread.meanDb + 14.7712 - 85, 3);
    expect(coverage.drive?.powerW).toBeCloseTo(10 ** ((105 - spread.meanDb) / 10), 3);
  });

  test("of equal levels everywhere nothing is off its mean", () => {
    const far = [source(0, 0, { position: vector(0, 0, 1e9), coverageDeg: null })];
    const { leastDb, mostDb, deviationDb, evenShare } = spreadOver(
      far,
      [0, 1, 2].map((x) => vector(x, 0, 0)),
    );
    expect([leastDb, mostDb, deviationDb].map((db) => Math.round(db * 1e6) + 0)).toEqual([0, 0, 0]);
    expect(evenShare).toBe(1);
  });

  test("an area that nobody fills has none, and others do not count", () => {
    const empty = room({ ...HALL, speakers: [] });
    expect(coverageOf(empty, mountedIn(empty))[0]?.spread).toBeNull();
    const beside = room({
      ...HALL,
      speakers: [...(HALL.speakers as Parts[]), { id: "X", at: { left: "4 m", front: "3 m" } }],
    });
    const all = mountedIn(beside);
    expect(coverageOf(beside, all)[0]?.mounted).toHaveLength(4);
    expect(coverageOf(beside, all)[0]?.spread).toEqual(spread);
    expect(sourceOf(all[0] ?? never()).sensitivityDb).toBe(87);
  });
});

function never(): never {
  throw new Error("nobody there");
}
