/** From a seat's ear, as ITU-R BS.2051 counts: azimuth positive to the left in (-180, 180], elevation positive up. */
export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly distanceMm: number;
}
