import { degrees, length, subtract, type Vector } from "../geometry/vector.js";

/** From a seat's ear, as ITU-R BS.2051 counts: azimuth positive to the left in (-180, 180], elevation positive up. */
export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly distanceMm: number;
}

/**
 * Direction and distance of `position` from an ear that faces the front wall (+y): azimuth = atan2(-dx, dy),
 * elevation = atan2(dz, hypot(dx, dy)), as ITU-R BS.2051 and BS.2076 count. Azimuth is 0 straight overhead.
 */
export function directionFrom(ear: Vector, position: Vector): Direction {
  const { x, y, z } = subtract(position, ear);
  const azimuthDeg = x === 0 && y === 0 ? 0 : degrees(Math.atan2(-x, y));
  return {
    azimuthDeg: azimuthDeg === -180 ? 180 : azimuthDeg + 0,
    elevationDeg: degrees(Math.atan2(z, Math.hypot(x, y))),
    distanceMm: length(subtract(position, ear)),
  };
}
