import { degrees, length, subtract, type Vector } from "../geometry/vector.js";

/** From a seat's ear, as ITU-R BS.2051 counts: azimuth positive to the left in (-180, 180], elevation positive up. */
export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly distanceMm: number;
}

/** Which way a view goes, as ITU-R BS.2051 counts. */
export type Heading = Pick<Direction, "azimuthDeg" | "elevationDeg">;

/**
 * Where a person who faces the front wall (+y) sees something by the way to it: azimuth = atan2(-x, y),
 * elevation = atan2(z, hypot(x, y)), as ITU-R BS.2051 and BS.2076 count. Azimuth is 0 straight overhead.
 */
export function headingOf({ x, y, z }: Vector): Heading {
  const azimuthDeg = x === 0 && y === 0 ? 0 : degrees(Math.atan2(-x, y));
  return {
    azimuthDeg: azimuthDeg === -180 ? 180 : azimuthDeg + 0,
    elevationDeg: degrees(Math.atan2(z, Math.hypot(x, y))),
  };
}

/** Direction and distance of `position` from an ear that faces the front wall. */
export function directionFrom(ear: Vector, position: Vector): Direction {
  const way = subtract(position, ear);
  return { ...headingOf(way), distanceMm: length(way) };
}
