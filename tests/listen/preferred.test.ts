import fc from "fast-check";
import { expect, test } from "vitest";
import { headingOf } from "../../src/listen/direction.js";
import { preferredHeading, toward } from "../../src/listen/preferred.js";

test("the way toward a direction is seen in that direction", () => {
  const azimuths = fc.double({ min: -179.9, max: 180, noNaN: true });
  const elevations = fc.double({ min: -89, max: 89, noNaN: true });
  fc.assert(
    fc.property(azimuths, elevations, (azimuthDeg, elevationDeg) => {
      const heading = headingOf(toward({ azimuthDeg, elevationDeg }));
      const turn = Math.abs(heading.azimuthDeg - azimuthDeg);
      expect(Math.min(turn, 360 - turn)).toBeLessThan(1e-6);
      expect(heading.elevationDeg).toBeCloseTo(elevationDeg, 6);
    }),
  );
});

test("is the layout's, or the label's own where the layout has none, and none for low-frequency effects", () => {
  // ITU-R BS.2051: M+030 at 30 and 0; U+045 at 45 and 30; LFE1 has a placeholder only.
  expect(preferredHeading({ layout: "4+7+0" }, "M+030")).toEqual({ azimuthDeg: 30, elevationDeg: 0 });
  expect(preferredHeading({ layout: "0+2+0" }, "U+045")).toEqual({ azimuthDeg: 45, elevationDeg: 30 });
  expect(preferredHeading({ layout: null }, "U-135")).toEqual({ azimuthDeg: -135, elevationDeg: 30 });
  for (const layout of [null, "3+7+0", "0+5+0"]) expect(preferredHeading({ layout }, "LFE1")).toBeNull();
});
