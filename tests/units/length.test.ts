import fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, test } from "vitest";
import { KG_PER_POUND, MM_PER_FOOT, MM_PER_INCH } from "../../src/units/definitions.js";
import { type LengthProblem, MAX_LENGTH_MM, parseLength } from "../../src/units/length.js";
import { NOTATIONS } from "./notations.js";

/** From a general unit library (mathjs), as the outside judge. */
const FOOT = unit(1, "ft").toNumber("mm");
const INCH = unit(1, "in").toNumber("mm");

function mmOf(text: string): number {
  const result = parseLength(text);
  if (!result.ok) throw new Error(`${text}: ${result.problem.kind}`);
  return result.mm;
}

function problemOf(text: string): LengthProblem | "accepted" {
  const result = parseLength(text);
  return result.ok ? "accepted" : result.problem;
}

// NIST SP 811 (2008), Appendix B.8: all three are exact.
test("an inch is 25.4 mm, a foot 304.8 mm, a pound 0.45359237 kg", () => {
  expect([mmOf("1 in"), mmOf("1 ft")]).toEqual([25.4, 304.8]);
  expect([MM_PER_INCH, MM_PER_FOOT, KG_PER_POUND]).toEqual([25.4, 304.8, 0.45359237]);
});

describe("notations", () => {
  test("there are at least 40 of them", () => expect(NOTATIONS.length).toBeGreaterThanOrEqual(40));
  test.each(NOTATIONS)("%s", (text, mm) => expect(mmOf(text)).toBe(mm));
});

// A general unit library (mathjs) as the outside judge; it computes in doubles, so its last digits may differ.
describe("agrees with a general unit library", () => {
  const figure = fc.integer({ min: 0, max: 99_999_999 }).map((thousandths) => thousandths / 1000);
  test.each(["ft", "in", "mm", "cm", "m"])("%s", (name) => {
    fc.assert(
      fc.property(figure, (value) => {
        const expected = unit(value, name).toNumber("mm");
        if (expected > MAX_LENGTH_MM) return problemOf(`${value} ${name}`) !== "accepted";
        return Math.abs(mmOf(`${value} ${name}`) - expected) <= 1e-12 * expected;
      }),
    );
  });

  test("feet with inches and sixteenths", () => {
    const part = (max: number) => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(part(500), part(11), part(15), (feet, whole, sixteenths) => {
        const expected = feet * FOOT + (whole + sixteenths / 16) * INCH;
        expect(mmOf(`${feet}' ${whole} ${sixteenths}/16"`)).toBeCloseTo(expected, 9);
      }),
    );
  });
});

test("every notation of one length is one double", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 999 }),
      fc.integer({ min: 0, max: 11 * 16 + 15 }),
      (feet, sixteenths) => {
        const whole = Math.floor(sixteenths / 16);
        const part = sixteenths % 16;
        const inAll = feet * 12 + whole;
        // Sixteenths have at most four decimals in inches; 25.4/16 mm = 1.5875 mm has four too.
        const tenThousandths = (feet * 192 + sixteenths) * 15_875;
        const mm = `${Math.floor(tenThousandths / 10_000)}.${String(tenThousandths % 10_000).padStart(4, "0")}`;
        const texts = [
          `${feet}' ${whole} ${part}/16"`,
          `${feet}'-${whole}-${part * 2}/32"`,
          `${feet} ft ${whole} ${part}/16 in`,
          `${feet}′ ${whole} ${part}⁄16″`,
          `${inAll} ${part}/16"`,
          `${inAll + part / 16} in`,
          `${feet}' ${whole + part / 16}"`,
          `${inAll * 16 + part}/16 in`,
          `${mm} mm`,
        ];
        expect(new Set(texts.map(mmOf)).size, texts.join(" | ")).toBe(1);
        expect(mmOf(`-${texts[0]}`)).toBe(inAll + part === 0 ? 0 : -mmOf(texts[0] ?? ""));
      },
    ),
  );
});

// ECMA-262: a decimal literal is the double nearest to it. So must be the same digits in mm.
test("a decimal in mm is the double that the same digits are", () => {
  const digits = fc.stringMatching(/^\d{1,6}\.\d{1,25}$/u);
  fc.assert(fc.property(digits, (text) => mmOf(`${text} mm`) === Number(text)));
});

describe("refusals", () => {
  test.each([
    ["5", "5"],
    ["2780", "2780"],
    ["-5", "5"],
    ["9.125", "9.125"],
    ["1 1/4", "1 1/4"],
    ["9' 1", "1"],
    ["9 ft 1 1/2", "1 1/2"],
    ["1/2", "1/2"],
  ])("%s has no unit", (text, figure) => expect(problemOf(text)).toEqual({ kind: "no-unit", figure }));

  test.each([
    ["3 yd", "yd"],
    ["3 km", "km"],
    ["3 deg", "deg"],
    ["20°", "°"],
    ["9' 3 mm", "mm"],
    ["100%", "%"],
    ["3 píes", "píes"],
  ])("%s has no unit of length", (text, name) =>
    expect(problemOf(text)).toMatchObject({ kind: "unknown-unit", unit: name }),
  );

  test.each([
    [`9' 12"`, "9", '12"'],
    [`9' 14"`, "9", '14"'],
    [`0' 12.0001"`, "0", '12.0001"'],
    ["9 ft 109 1/2 in", "9", "109 1/2 in"],
  ])("%s is no reading of a tape", (text, feet, inches) => {
    expect(problemOf(text)).toEqual({ kind: "inches-over-twelve", feet, inches });
  });

  test.each(["2,78 m", "2,780 mm", `9' 1,5"`])("%s has a comma", (text) => {
    expect(problemOf(text)).toEqual({ kind: "comma" });
  });

  test.each(["10000.001 m", "1e9 m".replace("e9", "0".repeat(9)), `${"9".repeat(60)} mm`, "32809 ft"])(
    "%s is too large",
    (text) => expect(problemOf(text)).toEqual({ kind: "too-large", limitMm: MAX_LENGTH_MM }),
  );
  test("the limit itself passes", () => expect(mmOf("10000 m")).toBe(MAX_LENGTH_MM));

  test.each([
    "",
    "   ",
    "-",
    "mm",
    '"',
    "'",
    "NaN",
    "NaN mm",
    "Infinity",
    "Infinity mm",
    ".inf",
    "1e3 mm",
    "1E3",
    "0x10 mm",
    "0b1 mm",
    "1_000 mm",
    "+5 mm",
    "--5 mm",
    "5. mm",
    ". mm",
    "1.2.3 mm",
    `1/0"`,
    `1 1/0"`,
    `1 5/4"`,
    `1 4/4"`,
    `1/2/3"`,
    `1.5/2"`,
    `1 2"`,
    `9.5' 3"`,
    `9' 1" 2`,
    `9' 1" mm`,
    `9' -- 1"`,
    `9' 1' 2"`,
    `9'''`,
    `1" 9'`,
    "9² mm",
    "２ mm",
    "٣ mm",
    "5 mm x",
    "5 mm; 6 mm",
    "null",
    "constructor",
    "five mm",
    "±5 mm",
    "5 mm\u0000",
    "5 m.m",
    "9 f.t",
    `9' 1" 2"`,
  ])("%j is no length", (text) => expect(problemOf(text)).toEqual({ kind: "not-a-length" }));

  test("a figure with its unit is 64 characters long at most, however much space stands round it", () => {
    const long = (length: number): string => `5 mm`.padStart(length, "0");
    expect(mmOf(long(64))).toBe(5);
    expect(problemOf(long(65))).toEqual({ kind: "not-a-length" });
    expect(mmOf(`5 mm`.padStart(130).padEnd(256))).toBe(5);
    expect(problemOf(`5 mm`.padStart(130).padEnd(257))).toEqual({ kind: "not-a-length" });
  });

  test("never throws, never gives what is not a finite number within the limit", () => {
    const pieces = fc.constantFrom(
      "9",
      "1/2",
      " ",
      "'",
      '"',
      "ft",
      "in",
      "mm",
      "m",
      "-",
      ".",
      "/",
      "½",
      "″",
      "0",
      "e",
      ",",
    );
    const texts = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 30 }).map((parts) => parts.join("")),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const result = parseLength(text);
        return !result.ok || (Number.isFinite(result.mm) && Math.abs(result.mm) <= MAX_LENGTH_MM);
      }),
      { numRuns: 2000 },
    );
  });

  test.each(["9", " ", "'", "1/", "-", "½", "9 ", "\u00a0", `9' 1" `])(
    "a megabyte of %j is refused at once",
    (piece) => {
      const text = piece.repeat(Math.ceil(2 ** 20 / piece.length));
      const begun = performance.now();
      expect(problemOf(`${text}mm`)).toEqual({ kind: "not-a-length" });
      expect(performance.now() - begun).toBeLessThan(100);
    },
  );
});
