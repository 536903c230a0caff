import { describe, expect, test } from "vitest";
import {
  ADVISED_GAP_MM,
  USUAL_CLAMP_RANGE_MM,
  USUAL_CLEARANCE_MM,
  USUAL_PLATES,
  USUAL_SPACINGS_MM,
} from "../../src/standards/framing-practice.js";
import { LEAST_LETTERING_MM, LETTERING_HEIGHTS_MM, LINE_WIDTHS_MM } from "../../src/standards/lettering.js";
import { LUMBER } from "../../src/standards/lumber.js";
import {
  BOXES_SHARE_OF_AREA,
  LARGEST_BOX_GAP_MM,
  LARGEST_BOX_MM2,
} from "../../src/standards/rated-membranes.js";
import { feetInches } from "../../src/units/format.js";

describe("framing, common practice, no source", () => {
  test("spacings and what a tape calls them", () => {
    expect(USUAL_SPACINGS_MM).toEqual([...USUAL_SPACINGS_MM].sort((a, b) => a - b));
    // A tape marks every fifth of 8 ft, 19.2 in, with a sign of its own: it lies between two sixteenths.
    expect(USUAL_SPACINGS_MM.map((mm) => feetInches(mm).text)).toEqual([
      `1' 0"`,
      `≈1' 3 3/4"`,
      `1' 4"`,
      `≈1' 7 3/16"`,
      `≈1' 11 5/8"`,
      `2' 0"`,
    ]);
    expect((USUAL_SPACINGS_MM[3] ?? 0) * 5).toBeCloseTo(8 * 304.8, 9);
  });

  // Worked from PS 20 and the spacing: clear bays between 1 1/2 in members, in mm.
  test.each([
    [0, 266.7],
    [2, 368.3],
    [3, 449.58],
    [5, 571.5],
  ])("clear bay at spacing %i", (index, clearMm) => {
    expect((USUAL_SPACINGS_MM[index] ?? 0) - LUMBER["2x10"].widthMm).toBeCloseTo(clearMm, 9);
  });

  test("plates, clearance, clamps and the advised gap, in inches", () => {
    expect(USUAL_PLATES).toEqual({ below: 1, above: 2, thicknessMm: 38.1 });
    expect(
      [USUAL_CLEARANCE_MM, ...USUAL_CLAMP_RANGE_MM, ADVISED_GAP_MM].map((mm) => feetInches(mm).text),
    ).toEqual(['1/4"', '3/8"', '1 1/4"', '1"']);
  });
});

describe("rated membranes, IRC R302.4.2", () => {
  // The largest circle under 16 square inches is 4.514 in, 114.64 mm, across (worked from the clause).
  test("a loudspeaker's opening is never a box", () => {
    const acrossMm = 2 * Math.sqrt(LARGEST_BOX_MM2 / Math.PI);
    expect(acrossMm).toBeCloseTo(114.64, 2);
    expect(acrossMm / 25.4).toBeCloseTo(4.514, 3);
  });

  test("100 square inches in 100 square feet, 1/8 in of gap", () => {
    expect(BOXES_SHARE_OF_AREA * 100 * 304.8 ** 2).toBeCloseTo(100 * 645.16, 6);
    expect(LARGEST_BOX_GAP_MM).toBe(3.175);
  });
});

// ISO 3098 and ISO 128 (from memory): sizes go up by √2, rounded.
test.each([
  ["lettering", LETTERING_HEIGHTS_MM],
  ["lines", LINE_WIDTHS_MM],
])("%s go up by √2", (_name, sizes) => {
  const steps = sizes.slice(1).map((size, index) => size / (sizes[index] ?? Number.NaN));
  for (const step of steps) expect(Math.abs(step - Math.SQRT2)).toBeLessThan(0.04);
});

test("no lettering is under 2.5 mm", () =>
  expect(Math.min(...LETTERING_HEIGHTS_MM)).toBe(LEAST_LETTERING_MM));
