import type { SurfacePoint } from "./vector.js";

export const surfacePoint = (u: number, v: number): SurfacePoint => ({ u, v });

export const plus = (a: SurfacePoint, b: SurfacePoint): SurfacePoint => surfacePoint(a.u + b.u, a.v + b.v);

export const minus = (a: SurfacePoint, b: SurfacePoint): SurfacePoint => surfacePoint(a.u - b.u, a.v - b.v);

export const times = (a: SurfacePoint, factor: number): SurfacePoint =>
  surfacePoint(a.u * factor, a.v * factor);

/** Scalar product. */
export const inner = (a: SurfacePoint, b: SurfacePoint): number => a.u * b.u + a.v * b.v;

/** Twice the area that `a` and `b` span: above 0 where `b` lies anticlockwise of `a`. */
export const outer = (a: SurfacePoint, b: SurfacePoint): number => a.u * b.v - a.v * b.u;

export const lengthMm = (a: SurfacePoint): number => Math.hypot(a.u, a.v);

export const distanceMm = (a: SurfacePoint, b: SurfacePoint): number => lengthMm(minus(b, a));

/** The direction of `a` with length 1; the null vector stays null. */
export function directionOf(a: SurfacePoint): SurfacePoint {
  const size = lengthMm(a);
  return size === 0 ? a : times(a, 1 / size);
}

/** A quarter turn anticlockwise, as seen facing the surface. */
export const quarterTurn = (a: SurfacePoint): SurfacePoint => surfacePoint(-a.v, a.u);
