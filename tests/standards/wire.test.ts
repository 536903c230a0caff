import { describe, expect, test } from "vitest";
import {
  awgAreaMm2,
  awgDiameterMm,
  awgOhmPerKm,
  CROSS_SECTIONS_MM2,
  copperFactor,
  crossSectionOhmPerKm,
} from "../../src/standards/wire.js";

/*
 * Published wire tables, 20 °C: diameter in mm, area in mm², ohm per km; the even gauges' ohm per 1000 ft as a public
 * table of wire resistance prints them.
 */
const TABLE = [
  { gauge: 10, mm: 2.588, mm2: 5.261, ohm: 3.277, perThousandFeet: 0.9989 },
  { gauge: 12, mm: 2.053, mm2: 3.309, ohm: 5.211, perThousandFeet: 1.588 },
  { gauge: 14, mm: 1.628, mm2: 2.081, ohm: 8.285, perThousandFeet: 2.525 },
  { gauge: 16, mm: 1.291, mm2: 1.309, ohm: 13.174, perThousandFeet: 4.016 },
  { gauge: 18, mm: 1.024, mm2: 0.823, ohm: 20.948, perThousandFeet: 6.385 },
  { gauge: 20, mm: 0.812, mm2: 0.518, ohm: 33.308, perThousandFeet: 10.15 },
  { gauge: 22, mm: 0.644, mm2: 0.3255, ohm: 52.962, perThousandFeet: 16.14 },
];

describe("ASTM B258", () => {
  test.each(TABLE)("gauge $gauge", ({ gauge, mm, mm2, ohm, perThousandFeet }) => {
    expect(awgDiameterMm(gauge)).toBeCloseTo(mm, 3);
    expect(awgAreaMm2(gauge)).toBeCloseTo(mm2, 3);
    expect(Math.abs(awgOhmPerKm(gauge) / ohm - 1)).toBeLessThan(1e-4);
    expect(Math.abs((awgOhmPerKm(gauge) * 0.3048) / perThousandFeet - 1)).toBeLessThan(5e-4);
  });

  test("its two fixed gauges: 36 is 0.005 in and 0000 (-3) is 0.46 in", () => {
    expect(awgDiameterMm(36)).toBe(0.127);
    expect(awgDiameterMm(-3)).toBeCloseTo(11.684, 9);
  });
});

test("copper at 50 °C and at 75 °C has 1.1179 and 1.2162 times its resistance at 20 °C", () => {
  expect(copperFactor(20)).toBe(1);
  expect(copperFactor(50)).toBeCloseTo(1.1179, 4);
  expect(copperFactor(75)).toBeCloseTo(1.2162, 4);
});

/* IEC 60228's maxima lie 5 to 20 % over pure copper of the nominal area: lay, strands and tolerance. */
test("IEC 60228, class 5: every size lies a little over bare copper of its area", () => {
  expect(CROSS_SECTIONS_MM2).toEqual([0.5, 0.75, 1, 1.5, 2.5, 4, 6]);
  for (const area of CROSS_SECTIONS_MM2) {
    const over = crossSectionOhmPerKm(area) / (1000 / (58 * area));
    expect(over).toBeGreaterThan(1.05);
    expect(over).toBeLessThan(1.2);
  }
  expect(crossSectionOhmPerKm(2.5)).toBe(7.98);
  expect(() => crossSectionOhmPerKm(3)).toThrow(RangeError);
});
