import fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, test } from "vitest";
import { parseAngle, parseQuantity, type Quantity } from "../../src/units/quantity.js";

function amountOf(text: string, quantity: Quantity): number {
  const result = parseQuantity(text, quantity);
  if (!result.ok) throw new Error(`${text}: ${result.problem.kind}`);
  return result.value;
}

test.each<[string, Quantity, number]>([
  ["20 deg", "deg", 20],
  ["20deg", "deg", 20],
  ["20°", "deg", 20],
  ["20 °", "deg", 20],
  ["20 degrees", "deg", 20],
  ["-22.5 deg", "deg", -22.5],
  ["−22.5°", "deg", -22.5],
  ["0", "deg", 0],
  ["88 dB", "dB", 88],
  ["0.5 dB", "dB", 0.5],
  ["88 db", "dB", 88],
  ["8 ohm", "ohm", 8],
  ["8 ohms", "ohm", 8],
  ["8 \u03a9", "ohm", 8],
  ["8 \u2126", "ohm", 8],
  ["120 W", "W", 120],
  ["120 watts", "W", 120],
  ["3.2 kg", "kg", 3.2],
  ["850 g", "kg", 0.85],
  // NIST SP 811, B.8: 1 lb = 0.453 592 37 kg exactly.
  ["1 lb", "kg", 0.45359237],
  ["7 lb", "kg", 3.17514659],
  ["7 1/2 lbs", "kg", 3.401942775],
  ["5%", "percent", 5],
  ["12.5 %", "percent", 12.5],
  ["30 C", "C", 30],
  ["30 °C", "C", 30],
  ["86 F", "F", 86],
  ["86°F", "F", 86],
  ["2.5 mm2", "mm2", 2.5],
  ["2.5 mm²", "mm2", 2.5],
  ["1000000 W", "W", 1_000_000],
  // Nothing is plain 0, whatever stands before it.
  ["-0 dB", "dB", 0],
])("%s in %s", (text, quantity, value) => expect(amountOf(text, quantity)).toBe(value));

test("masses agree with a general unit library (mathjs)", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1_000_000 }),
      fc.constantFrom("lb", "kg", "g"),
      (hundredths, name) => {
        const expected = unit(hundredths / 100, name).toNumber("kg");
        expect(Math.abs(amountOf(`${hundredths / 100} ${name}`, "kg") - expected)).toBeLessThanOrEqual(
          1e-12 * expected,
        );
      },
    ),
  );
});

describe("refusals", () => {
  test.each<[string, Quantity, object]>([
    ["20", "deg", { kind: "no-unit", figure: "20" }],
    ["8", "ohm", { kind: "no-unit", figure: "8" }],
    ["8 W", "ohm", { kind: "unknown-unit", figure: "8", unit: "w" }],
    ["20 rad", "deg", { kind: "unknown-unit", figure: "20", unit: "rad" }],
    ["2,5 kg", "kg", { kind: "comma" }],
    ["2000000 W", "W", { kind: "too-large", limit: 1_000_000 }],
    ["", "W", { kind: "not-a-quantity" }],
    ["NaN dB", "dB", { kind: "not-a-quantity" }],
    ["1e2 W", "W", { kind: "not-a-quantity" }],
    ["Infinity W", "W", { kind: "not-a-quantity" }],
    ["twenty deg", "deg", { kind: "not-a-quantity" }],
    ["8 ohm 4 ohm", "ohm", { kind: "not-a-quantity" }],
  ])("%j in %s", (text, quantity, problem) =>
    expect(parseQuantity(text, quantity)).toEqual({ ok: false, problem }),
  );

  test("no length, angle or level is taken for another quantity", () => {
    const wrong: [string, Quantity][] = [
      ["9'", "deg"],
      ['9"', "kg"],
      ["5 mm", "W"],
      ["5 deg", "dB"],
      ["5 %", "deg"],
    ];
    for (const [text, quantity] of wrong)
      expect(parseQuantity(text, quantity).ok, `${text} ${quantity}`).toBe(false);
  });

  test("never throws", () => {
    fc.assert(fc.property(fc.string(), (text) => typeof parseQuantity(text, "kg").ok === "boolean"));
  });
});

test("parseAngle gives degrees", () => expect(parseAngle("20 deg")).toEqual({ ok: true, value: 20 }));
