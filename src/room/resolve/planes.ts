import { add, cross, dot, scale, type Vector, vector } from "../../geometry/vector.js";

/** The points p with `normal` · p = `offsetMm`; the normal has length 1. */
export interface Plane {
  readonly normal: Vector;
  readonly offsetMm: number;
}

export const planeThrough = (point: Vector, normal: Vector): Plane => ({
  normal,
  offsetMm: dot(normal, point),
});

const ORIGIN = vector(0, 0, 0);

/** Volume of the box that three normals span, under which they are taken to fix no point; square walls give 1. */
const SIDE_BY_SIDE = 1e-6;

/** The one point on all three planes (Cramer's rule in vectors), or null where they fix none. */
export function meetingPoint([a, b, c]: readonly [Plane, Plane, Plane]): Vector | null {
  const volume = dot(a.normal, cross(b.normal, c.normal));
  if (Math.abs(volume) < SIDE_BY_SIDE) return null;
  const parts = [
    scale(cross(b.normal, c.normal), a.offsetMm),
    scale(cross(c.normal, a.normal), b.offsetMm),
    scale(cross(a.normal, b.normal), c.offsetMm),
  ];
  // Adding the origin turns a -0 into 0.
  return add(scale(parts.reduce(add), 1 / volume), ORIGIN);
}

/** True where a plane that is square to one normal says nothing about where on a plane of the other normal one is. */
export const isParallel = (a: Vector, b: Vector): boolean => {
  const { x, y, z } = cross(a, b);
  return Math.hypot(x, y, z) < SIDE_BY_SIDE;
};
