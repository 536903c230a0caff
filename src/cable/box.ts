import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Area, Shape } from "../geometry/shape.js";
import type { SurfacePoint } from "../geometry/vector.js";

/** An upright rectangle on a surface that cable goes round: square turns follow square corners. */
export interface Box {
  readonly min: SurfacePoint;
  readonly max: SurfacePoint;
}

const around = ({ u, v }: SurfacePoint, halfU: number, halfV: number): Box => ({
  min: { u: u - halfU, v: v - halfV },
  max: { u: u + halfU, v: v + halfV },
});

const grown = ({ min, max }: Box, byMm: number): Box => ({
  min: { u: min.u - byMm, v: min.v - byMm },
  max: { u: max.u + byMm, v: max.v + byMm },
});

export function boxOfArea(area: Area, keepMm = 0): Box {
  const box =
    area.kind === "rectangle" ? area : around(area.centre, area.diameterMm / 2, area.diameterMm / 2);
  return grown(box, keepMm);
}

export function boxOfShape(shape: Shape, centre: SurfacePoint, keepMm = 0): Box {
  const [width, height] =
    shape.kind === "round" ? [shape.diameterMm, shape.diameterMm] : [shape.widthMm, shape.heightMm];
  return grown(around(centre, width / 2, height / 2), keepMm);
}

/** Within the box; its border is outside: cable may lie along it. */
export const isIn = ({ min, max }: Box, { u, v }: SurfacePoint): boolean =>
  u > min.u + EPSILON_MM && u < max.u - EPSILON_MM && v > min.v + EPSILON_MM && v < max.v - EPSILON_MM;

/** Whether a stretch along an axis passes through the box. */
export const passesThrough = ({ min, max }: Box, from: SurfacePoint, to: SurfacePoint): boolean =>
  Math.max(from.u, to.u) > min.u + EPSILON_MM &&
  Math.min(from.u, to.u) < max.u - EPSILON_MM &&
  Math.max(from.v, to.v) > min.v + EPSILON_MM &&
  Math.min(from.v, to.v) < max.v - EPSILON_MM;
