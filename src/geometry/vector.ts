/** A point or direction in the room's world: millimetres, x right, y forward, z up. */
export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A point on a surface in its own frame: millimetres, u to the viewer's right, v up the sheet. */
export interface SurfacePoint {
  readonly u: number;
  readonly v: number;
}

export const vector = (x: number, y: number, z: number): Vector => ({ x, y, z });

export const add = (a: Vector, b: Vector): Vector => vector(a.x + b.x, a.y + b.y, a.z + b.z);

export const subtract = (a: Vector, b: Vector): Vector => vector(a.x - b.x, a.y - b.y, a.z - b.z);

export const scale = (a: Vector, factor: number): Vector => vector(a.x * factor, a.y * factor, a.z * factor);

export const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y + a.z * b.z;

export const cross = (a: Vector, b: Vector): Vector =>
  vector(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);

export const length = (a: Vector): number => Math.hypot(a.x, a.y, a.z);

/** The direction of `a` with length 1; the null vector stays null. */
export function unit(a: Vector): Vector {
  const size = length(a);
  return size === 0 ? a : scale(a, 1 / size);
}

export const degrees = (radians: number): number => (radians * 180) / Math.PI;

export const radians = (degreesValue: number): number => (degreesValue * Math.PI) / 180;

/** Angle between two directions in degrees, 0 to 180; steady near 0 and 180 where acos is not. */
export function angleBetweenDeg(a: Vector, b: Vector): number {
  return degrees(Math.atan2(length(cross(a, b)), dot(a, b)));
}
