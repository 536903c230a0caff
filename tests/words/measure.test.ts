import fc from "fast-check";
import { expect, test } from "vitest";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import { parseLength } from "../../src/units/length.js";
import { measureIn } from "../../src/words/measure.js";

const inches = measureIn("imperial");
const millimetres = measureIn("metric");

test("the room's own units first, the other in brackets", () => {
  expect(inches.length(12.7)).toBe('1/2" (13 mm)');
  expect(millimetres.length(12)).toBe('12 mm (1/2")');
  expect(inches.length(406.4)).toBe('16" (406 mm)');
  expect(inches.length(2743.2)).toBe("9' 0\" (2743 mm)");
});

test("a board of 12.5 mm is not called 13", () => {
  expect(millimetres.length(12.5)).toBe('12.5 mm (1/2")');
  expect(millimetres.length(20.35)).toBe('20 mm (13/16")');
});

test("what is there is not called nothing", () => {
  expect(inches.length(0.3)).toBe('< 1/16" (0.3 mm)');
  expect(millimetres.length(0.02)).toBe('0.02 mm (< 1/16")');
  expect(millimetres.length(0)).toBe('0 mm (0")');
});

test("two lengths that differ by more than the tolerance never read the same", () => {
  const length = fc.double({ min: 0, max: 3000, noNaN: true });
  fc.assert(
    fc.property(length, length, fc.constantFrom("imperial", "metric"), (a, apart, units) => {
      const b = a + EPSILON_MM + (apart % 1);
      const [first, second] = measureIn(units).lengths(a, b);
      expect(first).not.toBe(second);
    }),
  );
  expect(millimetres.lengths(11.98, 12)).toEqual(['11.98 mm (1/2")', '12 mm (1/2")']);
});

test("a tape can be typed into the file again", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 6000 }), (count) => {
      const sixteenths = (count * 25.4) / 16;
      const read = parseLength(inches.tape(sixteenths));
      expect(read.ok && Math.abs(read.mm - sixteenths)).toBeLessThan(1e-9);
      expect(parseLength(millimetres.tape(count))).toEqual({ ok: true, mm: count });
    }),
  );
});

test("weights and angles", () => {
  // 1 lb = 0.453 592 37 kg (NIST SP 811, B.8).
  expect(inches.weight(7 * 0.45359237)).toBe("7 lb (3.2 kg)");
  expect(millimetres.weight(5)).toBe("5 kg (11 lb)");
  expect(inches.angle(45.04)).toBe("45°");
  expect(inches.angle(-0.01)).toBe("0°");
  expect(inches.angles(45.004, 45)).toEqual(["45°", "45°"]);
  expect(inches.angles(45.01, 45)).toEqual(["45.01°", "45°"]);
});
