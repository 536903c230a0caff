import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Figure, feetInches, inches, millimetres, ROUNDED_MARK } from "../../src/units/format.js";
import { parseLength } from "../../src/units/length.js";

const INCH = 25.4;
const DENOMINATORS = [2, 4, 8, 16, 32, 64] as const;

function readBack(figure: Figure): number {
  const result = parseLength(figure.plain);
  if (!result.ok) throw new Error(`${figure.plain}: ${result.problem.kind}`);
  return result.mm;
}

// Worked by hand from 1 in = 25.4 mm and 1 ft = 12 in (NIST SP 811, B.8).
describe("feetInches", () => {
  test.each([
    [0, '0"'],
    [12.7, '1/2"'],
    [38.1, '1 1/2"'],
    [304.8, `1' 0"`],
    [317.5, `1' 0 1/2"`],
    [2743.2, `9' 0"`],
    [2768.6, `9' 1"`],
    [2781.3, `9' 1 1/2"`],
    [26.9875, '1 1/16"'],
    [3.175, '1/8"'],
    [25.4 * 11.9375, '11 15/16"'],
    [-2781.3, `-9' 1 1/2"`],
    [-12.7, '-1/2"'],
  ])("%f mm is exactly %s", (mm, text) => {
    expect(feetInches(mm)).toEqual({ text, plain: text, rounded: false });
  });

  test.each([
    [2780, `9' 1 7/16"`],
    [25.4 * (11 + 31 / 32), `1' 0"`],
    [25.4 * (23 + 63 / 64), `2' 0"`],
    [25.4 * (11 + 30.9 / 32), '11 15/16"'],
    [25.4 / 32, '1/16"'],
    [25.4 / 33, '0"'],
    [25.4 * (3 / 32), '1/8"'],
    [-25.4 / 32, '-1/16"'],
    [-25.4 / 33, '0"'],
    [-25.4 * (11 + 31 / 32), `-1' 0"`],
    [0.001, '0"'],
  ])("%f mm is rounded to %s, and says so once", (mm, plain) => {
    expect(feetInches(mm)).toEqual({ text: `${ROUNDED_MARK}${plain}`, plain, rounded: true });
  });

  test("finer divisions and one-sided rounding on request", () => {
    expect(feetInches(25.4 / 32, { denominator: 32 })).toMatchObject({ text: '1/32"' });
    expect(feetInches(117.475, { denominator: 32 })).toMatchObject({ text: '4 5/8"' });
    expect(feetInches(100, { denominator: 16, rounding: "up" }).plain).toBe('3 15/16"');
    expect(feetInches(101, { rounding: "up" }).plain).toBe('4"');
    expect(feetInches(101, { rounding: "down" }).plain).toBe('3 15/16"');
    expect(feetInches(-101, { rounding: "up" }).plain).toBe('-3 15/16"');
    expect(feetInches(-101, { rounding: "down" }).plain).toBe('-4"');
    expect(feetInches(-0.1, { rounding: "up" }).plain).toBe('0"');
  });
});

describe("inches and millimetres", () => {
  test("inches go on past twelve", () => {
    expect(inches(2781.3)).toEqual({ text: '109 1/2"', plain: '109 1/2"', rounded: false });
    expect(inches(2780).text).toBe('≈109 7/16"');
    expect(inches(304.8).text).toBe('12"');
    expect(inches(0).text).toBe('0"');
    expect(inches(12.7).text).toBe('1/2"');
  });

  test.each([
    [2780, {}, "2780 mm"],
    [2781.3, {}, "≈2781 mm"],
    [2780.5, {}, "≈2781 mm"],
    [-2780.5, {}, "≈-2781 mm"],
    [-0.4, {}, "≈0 mm"],
    [2781.3, { decimals: 1 }, "2781.3 mm"],
    [26.9875, { decimals: 1 }, "≈27.0 mm"],
    [0.25, { decimals: 1 }, "≈0.3 mm"],
    [2780.1, { rounding: "up" }, "≈2781 mm"],
    [2780.9, { rounding: "down" }, "≈2780 mm"],
    [2780, { rounding: "up" }, "2780 mm"],
    // Half a millionth of a millimetre past the figure is the noise of doubles, in whatever steps it is read.
    [1.2340005, { decimals: 3, rounding: "up" }, "1.234 mm"],
    [1.2339995, { decimals: 3, rounding: "down" }, "1.234 mm"],
  ] as const)("%f mm with %j is %s", (mm, options, text) => expect(millimetres(mm, options).text).toBe(text));
});

describe("round trips", () => {
  const sixteenths = fc.integer({ min: -40_000, max: 40_000 });
  const anyMm = fc.double({ min: -120_000, max: 120_000, noNaN: true });

  test("every sixteenth is written exactly and read back as the same double", () => {
    fc.assert(
      fc.property(sixteenths, (count) => {
        const result = parseLength(`${count}/16"`);
        const mm = result.ok ? result.mm : Number.NaN;
        for (const figure of [feetInches(mm), inches(mm), feetInches(mm, { denominator: 64 })]) {
          expect(figure.rounded, figure.text).toBe(false);
          expect(figure.text).toBe(figure.plain);
          expect(readBack(figure)).toBe(mm);
        }
      }),
    );
  });

  test("the noise of doubles is not called rounding", () => {
    fc.assert(
      fc.property(sixteenths, fc.double({ min: -5e-7, max: 5e-7, noNaN: true }), (count, noise) => {
        for (const rounding of ["nearest", "up", "down"] as const) {
          const figure = feetInches((INCH * count) / 16 + noise, { rounding });
          expect(figure.rounded).toBe(false);
          expect(readBack(figure)).toBeCloseTo((INCH * count) / 16, 9);
        }
      }),
    );
  });

  test("no length is off by more than half a division, and a rounded one says so", () => {
    fc.assert(
      fc.property(anyMm, fc.constantFrom(...DENOMINATORS), (mm, denominator) => {
        for (const figure of [feetInches(mm, { denominator }), inches(mm, { denominator })]) {
          const off = Math.abs(readBack(figure) - mm);
          expect(off).toBeLessThanOrEqual(INCH / denominator / 2 + 1e-6);
          expect(figure.rounded).toBe(figure.text.startsWith(ROUNDED_MARK));
          if (!figure.rounded) expect(off).toBeLessThanOrEqual(1e-6 + 1e-9);
          if (off > 1e-6 + 1e-9) expect(figure.rounded).toBe(true);
        }
      }),
    );
  });

  test("up is never less, down never more, and neither by a whole division", () => {
    fc.assert(
      fc.property(anyMm, (mm) => {
        const up = readBack(feetInches(mm, { rounding: "up" })) - mm;
        const down = mm - readBack(feetInches(mm, { rounding: "down" }));
        for (const off of [up, down]) {
          expect(off).toBeGreaterThanOrEqual(-1.001e-6);
          expect(off).toBeLessThan(INCH / 16 + 1e-6);
        }
      }),
    );
  });

  test("millimetres read back within half a place", () => {
    fc.assert(
      fc.property(anyMm, fc.integer({ min: 0, max: 3 }), (mm, decimals) => {
        expect(Math.abs(readBack(millimetres(mm, { decimals })) - mm)).toBeLessThanOrEqual(
          0.5 * 10 ** -decimals + 1e-6,
        );
      }),
    );
  });

  test("fractions stand in lowest terms and below one", () => {
    fc.assert(
      fc.property(anyMm, (mm) => {
        const [, over, under] = /(\d+)\/(\d+)"$/u.exec(feetInches(mm).plain) ?? [];
        if (over === undefined) return;
        expect(Number(over) % 2).toBe(1);
        expect(Number(over)).toBeLessThan(Number(under));
        expect([2, 4, 8, 16]).toContain(Number(under));
      }),
    );
  });
});

test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("%f is refused", (mm) => {
  for (const write of [feetInches, inches, millimetres])
    expect(() => write(mm)).toThrow(new RangeError(`not a length: ${mm}`));
});
