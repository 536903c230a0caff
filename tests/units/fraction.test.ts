import { expect, test } from "vitest";
import { nearestDouble } from "../../src/units/fraction.js";

// IEEE 754: 2^-52 is the step above 1; a half of it goes to the even neighbour, anything more goes up.
test.each([
  ["a half, to even", 0n, 1],
  ["a half and the least bit more", 1n, 1 + 2 ** -52],
  ["a half less that bit", -1n, 1],
])("nearestDouble: one and %s", (_name, bit, expected) => {
  const under = 2n ** 400n;
  const over = under + 2n ** (400n - 53n) + bit;
  expect(nearestDouble({ over, under })).toBe(expected);
  expect(nearestDouble({ over: -over, under })).toBe(-expected);
});

test("nearestDouble: a third is the third that the language itself writes", () => {
  expect(nearestDouble({ over: 1n, under: 3n })).toBe(1 / 3);
});
