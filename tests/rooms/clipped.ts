import { Clipper, FillRule, type Path64, type Paths64, PointInPolygonResult } from "clipper2-ts";
import type { Region } from "../../src/geometry/clip.js";
import type { Polygon } from "../../src/geometry/shape.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";

/*
 * Unions and insides by the clipping library, to hold against the house's own distances what they take and leave.
 */
const STEPS_PER_MM = 10_000;

const pathOf = (polygon: Polygon): Path64 =>
  polygon.map(({ u, v }) => ({ x: Math.round(u * STEPS_PER_MM), y: Math.round(v * STEPS_PER_MM) }));

const pathsOf = (region: Region): Paths64 => region.map(pathOf);

const regionOf = (paths: Paths64): Region =>
  paths.map((path) => path.map(({ x, y }) => ({ u: x / STEPS_PER_MM, v: y / STEPS_PER_MM })));

/** What lies in any of the polygons. */
export function union(region: Region): Region {
  return regionOf(Clipper.union(pathsOf(region), FillRule.NonZero));
}

/** Whether the point lies in the region; on its border counts as in. */
export function contains(region: Region, point: SurfacePoint): boolean {
  const [at] = pathOf([point]);
  if (at === undefined) return false;
  const places = pathsOf(region).map((path) => Clipper.pointInPolygon(at, path));
  if (places.includes(PointInPolygonResult.IsOn)) return true;
  return places.filter((place) => place === PointInPolygonResult.IsInside).length % 2 === 1;
}
