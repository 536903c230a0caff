import fc from "fast-check";
import { cross, dot, norm } from "mathjs";
import { describe, expect, test } from "vitest";
import { vector } from "../../src/geometry/vector.js";
import { directionFrom } from "../../src/listen/direction.js";

const EAR = vector(2000, 3000, 1200);
const from = (dx: number, dy: number, dz: number) =>
  directionFrom(EAR, vector(EAR.x + dx, EAR.y + dy, EAR.z + dz));

describe("as ITU-R BS.2051 and BS.2076 count", () => {
  // The examples of the open reference renderer of ITU-R BS.2127 (ebu/ebu_adm_renderer, ear/common.py):
  // azimuth 0 is +y, azimuth 90 is -x, elevation 90 is +z.
  test("front, left and overhead", () => {
    expect(from(0, 1, 0)).toMatchObject({ azimuthDeg: 0, elevationDeg: 0 });
    expect(from(-1, 0, 0)).toMatchObject({ azimuthDeg: 90, elevationDeg: 0 });
    expect(from(0, 0, 1)).toMatchObject({ azimuthDeg: 0, elevationDeg: 90 });
  });

  test("straight behind is 180, never -180", () => {
    expect(from(0, -1, 0).azimuthDeg).toBe(180);
    expect(from(-0, -1, 0).azimuthDeg).toBe(180);
  });

  // Ceiling at 1.2 m over the ear: rho = dz / tan(el), X = -rho sin(az), Y = rho cos(az), slant = dz / sin(el).
  // az 45 el 30: rho = 1200 / tan 30 = 2078.461, so X = -1469.694, Y = 1469.694; slant 2400.
  test.each([
    { azimuth: 45, elevation: 30, x: -1469.694, y: 1469.694, slant: 2400 },
    { azimuth: 135, elevation: 30, x: -1469.694, y: -1469.694, slant: 2400 },
    { azimuth: 30, elevation: 30, x: -1039.23, y: 1800, slant: 2400 },
    { azimuth: 110, elevation: 30, x: -1953.116, y: -710.876, slant: 2400 },
    { azimuth: -45, elevation: 45, x: 848.528, y: 848.528, slant: 1697.056 },
  ])("azimuth $azimuth, elevation $elevation in a ceiling 1.2 m over the ear", (expected) => {
    const direction = from(expected.x, expected.y, 1200);
    expect(direction.azimuthDeg).toBeCloseTo(expected.azimuth, 4);
    expect(direction.elevationDeg).toBeCloseTo(expected.elevation, 4);
    expect(direction.distanceMm).toBeCloseTo(expected.slant, 2);
  });
});

test("by vectors of a general library: angles from the front and from the level, left by the cross product", () => {
  const part = fc.integer({ min: -5000, max: 5000 });
  fc.assert(
    fc.property(part, part, part, (dx, dy, dz) => {
      fc.pre(dx !== 0 || dy !== 0);
      const { azimuthDeg, elevationDeg, distanceMm } = from(dx, dy, dz);
      const flat = [dx, dy, 0];
      const size = Number(norm([dx, dy, dz]));
      const fromFront = Math.acos(dot([0, 1, 0], flat) / Number(norm(flat)));
      const [, , turn = 0] = cross([0, 1, 0], flat) as number[];
      expect(distanceMm).toBeCloseTo(size, 6);
      expect(Math.abs(azimuthDeg)).toBeCloseTo((fromFront * 180) / Math.PI, 5);
      if (turn !== 0) expect(Math.sign(azimuthDeg)).toBe(Math.sign(turn));
      expect(elevationDeg).toBeCloseTo((Math.asin(dz / size) * 180) / Math.PI, 5);
      expect(azimuthDeg).toBeGreaterThan(-180);
      expect(azimuthDeg).toBeLessThanOrEqual(180);
    }),
  );
});
