import type { SurfacePoint } from "./vector.js";

/** A closed outline on a surface, corners in order, anticlockwise as seen facing it; the last joins the first. */
export type Polygon = readonly SurfacePoint[];

/** The outline of an opening or a flange about its own centre: width across the sheet (u), height up it (v), in mm. */
export type Shape =
  | { readonly kind: "round"; readonly diameterMm: number }
  | { readonly kind: "rectangle"; readonly widthMm: number; readonly heightMm: number };

/** Something fixed on a surface, in its own (u, v), in mm. */
export type Area =
  | { readonly kind: "round"; readonly centre: SurfacePoint; readonly diameterMm: number }
  | { readonly kind: "rectangle"; readonly min: SurfacePoint; readonly max: SurfacePoint };
