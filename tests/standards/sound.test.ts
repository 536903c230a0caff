import { expect, test } from "vitest";
import { speedOfSoundMPerS } from "../../src/standards/sound.js";

/* Values of ISO 9613-1's formula as published tables give them, to a millimetre a second. */
test.each([
  [0, 331.286],
  [10, 337.296],
  [15, 340.261],
  [20, 343.2],
  [25, 346.114],
  [30, 349.005],
])("sound at %s °C goes %s m/s", (celsius, speed) => {
  expect(speedOfSoundMPerS(celsius)).toBeCloseTo(speed, 3);
});

test("the moist air of IEC 61094-2, Table F.1, is within half a per cent", () => {
  // 345.86652 m/s at 23 °C, 101 325 Pa and 50 % RH: what leaving moisture out costs.
  expect(Math.abs(speedOfSoundMPerS(23) / 345.86652 - 1)).toBeLessThan(0.005);
});
