import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { loopOhm, lossOf, type Size, thinnestOf, USUAL_LIMIT_DB } from "../../src/cable/gauge.js";

const FOOT_MM = 304.8;
const gauge = (number: number): Size => ({ kind: "gauge", gauge: number });
const area = (areaMm2: number): Size => ({ kind: "area", areaMm2 });
const run = (lengthMm: number) => ({ lengthMm, wiring: "single", temperatureC: 20 }) as const;

/*
 * The widely printed table of longest runs in feet that add 5 % to the load, by gauge for 2, 4, 6 and 8 ohm. Its
 * rows are rounded at 2 ohm and multiplied, so that some run over 5 %: it is compared within 5 % of the length.
 */
const LONGEST_FT: readonly (readonly [number, readonly number[]])[] = [
  [22, [3, 6, 9, 12]],
  [20, [5, 10, 15, 20]],
  [18, [8, 16, 24, 32]],
  [16, [12, 24, 36, 48]],
  [14, [20, 40, 60, 80]],
  [12, [30, 60, 90, 120]],
  [10, [50, 100, 150, 200]],
];

describe("the printed table of longest runs at 5 % of the load", () => {
  test.each(LONGEST_FT)("gauge %s", (number, feet) => {
    feet.forEach((printed, index) => {
      const impedance = 2 * (index + 1);
      const perFoot = loopOhm(gauge(number), run(FOOT_MM));
      const computed = (0.05 * impedance) / perFoot;
      expect(Math.abs(computed / printed - 1)).toBeLessThan(0.05);
    });
  });

  test("exact for 8 ohm", () => {
    const longest = (number: number) => 0.4 / loopOhm(gauge(number), run(FOOT_MM));
    const exact = [12.39, 19.7, 31.32, 49.81, 79.2, 125.93, 200.23];
    [22, 20, 18, 16, 14, 12, 10].forEach((number, index) => {
      expect(Math.abs(longest(number) - (exact[index] ?? 0))).toBeLessThan(0.006);
    });
  });

  /* The same for flexible conductors of IEC 60228 at 8 ohm, in metres. */
  test.each([
    [0.75, 7.69],
    [1, 10.26],
    [1.5, 15.04],
    [2.5, 25.06],
    [4, 40.4],
  ])("%s mm²: %s m", (mm2, metres) => {
    expect(0.4 / loopOhm(area(mm2), run(1000))).toBeCloseTo(metres, 2);
  });
});

describe("loss", () => {
  test.each([
    [0.01, 0.086],
    [0.02, 0.172],
    [0.05, 0.424],
    [0.1, 0.828],
  ])("%s of the load is %s dB", (share, db) => {
    const size = gauge(16);
    const lengthMm = (share * 8 * 1000) / loopOhm(size, run(1000));
    expect(lossOf(size, run(lengthMm), 8).lossDb).toBeCloseTo(db, 3);
    expect(lossOf(size, run(lengthMm), 8).damping).toBeCloseTo(1 / share, 6);
  });

  /* Published losses of 100 ft, for stranded wire: 2 to 4 % more than solid. */
  test.each([
    [16, 4, 1.65],
    [16, 8, 0.86],
    [16, 16, 0.44],
    [18, 4, 2.49],
    [18, 8, 1.33],
    [18, 16, 0.69],
  ])("100 ft of gauge %s into %s ohm: within 5 % under the published %s dB", (number, ohm, published) => {
    const { lossDb } = lossOf(gauge(number), run(100 * FOOT_MM), ohm);
    expect(lossDb).toBeLessThan(published);
    expect(lossDb).toBeGreaterThan(0.95 * published);
  });

  test("two pairs side by side halve the resistance; bi-wire does not", () => {
    const single = loopOhm(gauge(14), run(10_000));
    expect(loopOhm(gauge(14), { ...run(10_000), wiring: "doubled" })).toBeCloseTo(single / 2, 12);
    expect(loopOhm(gauge(14), { ...run(10_000), wiring: "bi-wire" })).toBe(single);
  });

  test("warm copper loses more", () => {
    const warm = { ...run(10_000), temperatureC: 50 };
    expect(loopOhm(gauge(14), warm) / loopOhm(gauge(14), run(10_000))).toBeCloseTo(1.1179, 4);
  });
});

describe("the thinnest that does", () => {
  const wanted = (feet: number, impedanceOhm = 8, limitDb = USUAL_LIMIT_DB) => ({
    ...run(feet * FOOT_MM),
    impedanceOhm,
    limitDb,
  });

  test("changes where the exact table does", () => {
    const sizes = [12, 14, 16].map(gauge);
    expect(thinnestOf(sizes, wanted(49.8))).toEqual(gauge(16));
    expect(thinnestOf(sizes, wanted(49.9))).toEqual(gauge(14));
    expect(thinnestOf(sizes, wanted(79.1))).toEqual(gauge(14));
    expect(thinnestOf(sizes, wanted(79.3))).toEqual(gauge(12));
    expect(thinnestOf(sizes, wanted(126))).toBeNull();
    expect(thinnestOf(sizes, wanted(49.8, 4))).toEqual(gauge(12));
  });

  test("exactly at the limit passes", () => {
    const { lossDb } = lossOf(gauge(16), run(20_000), 8);
    expect(thinnestOf([gauge(16)], { ...run(20_000), impedanceOhm: 8, limitDb: lossDb })).toEqual(gauge(16));
  });

  test("gauges and cross-sections stand in one row by their resistance", () => {
    // 1.5 mm² has 13.3 ohm/km at most, gauge 16 has 13.17, 2.5 mm² 7.98, gauge 14 has 8.29.
    const sizes = [area(2.5), gauge(14), gauge(16), area(1.5)];
    expect(thinnestOf(sizes, { ...run(15_000), impedanceOhm: 8, limitDb: USUAL_LIMIT_DB })).toEqual(
      area(1.5),
    );
    expect(thinnestOf(sizes, { ...run(15_100), impedanceOhm: 8, limitDb: USUAL_LIMIT_DB })).toEqual(
      gauge(16),
    );
  });

  test("none thinner would have done, whatever the run", () => {
    const sizes = [22, 20, 18, 16, 14, 12, 10].map(gauge);
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 60_000, noNaN: true }),
        fc.constantFrom(2, 4, 6, 8),
        (lengthMm, impedanceOhm) => {
          const found = thinnestOf(sizes, { ...run(lengthMm), impedanceOhm, limitDb: USUAL_LIMIT_DB });
          const enough = [22, 20, 18, 16, 14, 12, 10].filter(
            (number) => lossOf(gauge(number), run(lengthMm), impedanceOhm).shareOfLoad <= 0.05,
          );
          expect(found).toEqual(enough[0] === undefined ? null : gauge(enough[0]));
        },
      ),
    );
  });
});
