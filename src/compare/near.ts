import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint } from "../geometry/vector.js";

/** Whether two lengths are one, infinite ones too. */
export const isNear = (a: number, b: number): boolean => Math.abs(a - b) < EPSILON_MM || a === b;

export const isSamePoint = (a: SurfacePoint, b: SurfacePoint | undefined): boolean =>
  b !== undefined && isNear(a.u, b.u) && isNear(a.v, b.v);
