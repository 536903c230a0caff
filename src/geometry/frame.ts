import { cross, dot, type SurfacePoint, scale, subtract, unit, type Vector, vector } from "./vector.js";

/**
 * A surface's frame as seen by a person in the room facing it: `u` to the right, `v` up the sheet,
 * `n = u x v` out of the surface, at the person. All three have length 1; the origin is on the framing plane.
 */
export interface Frame {
  readonly origin: Vector;
  readonly u: Vector;
  readonly v: Vector;
  readonly n: Vector;
}

const UP = vector(0, 0, 1);
const TO_FRONT = vector(0, 1, 0);

/** The frame of a wall whose left end, as one faces it, is `leftEnd` on the floor and whose right end is `rightEnd`. */
export function wallFrame(leftEnd: Vector, rightEnd: Vector): Frame {
  const u = unit(subtract(rightEnd, leftEnd));
  return { origin: leftEnd, u, v: UP, n: cross(u, UP) };
}

/** The frame of a ceiling plane through `origin` with its normal `n` pointing into the room; v is toward the front wall. */
export function ceilingFrame(origin: Vector, n: Vector): Frame {
  const normal = unit(n);
  const v = unit(subtract(TO_FRONT, scale(normal, dot(TO_FRONT, normal))));
  return { origin, u: cross(v, normal), v, n: normal };
}

/** World point of a surface point, `heightMm` off the framing plane along n (the board's thickness, usually). */
export function toWorld(frame: Frame, point: SurfacePoint, heightMm = 0): Vector {
  // Asked of every step of every cable's way: no vectors are made between.
  const { origin, u, v, n } = frame;
  return vector(
    origin.x + (u.x * point.u + v.x * point.v + n.x * heightMm),
    origin.y + (u.y * point.u + v.y * point.v + n.y * heightMm),
    origin.z + (u.z * point.u + v.z * point.v + n.z * heightMm),
  );
}

/** The surface point that a world point has when it is dropped square onto the plane. */
export function toSurface(frame: Frame, point: Vector): SurfacePoint {
  const from = subtract(point, frame.origin);
  return { u: dot(from, frame.u), v: dot(from, frame.v) };
}
