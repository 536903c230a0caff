import {
  Clipper,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
  PointInPolygonResult,
} from "clipper2-ts";
import type { Region } from "../../src/geometry/clip.js";
import type { Polygon } from "../../src/geometry/shape.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";

/*
 * Offsetting and unions by the clipping library, to hold against the house's own distances what they take and leave.
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

/**
 * Everything within `byMm` of the polygon (a single point and a segment too), its arcs as chords that lie inside the
 * true arc by `arcMm` at most.
 */
export function grow(polygon: Polygon, byMm: number, arcMm: number): Region {
  const end = polygon.length > 2 ? EndType.Polygon : EndType.Round;
  const steps = { by: byMm * STEPS_PER_MM, arc: arcMm * STEPS_PER_MM };
  return regionOf(
    Clipper.inflatePaths([pathOf(polygon)], steps.by, JoinType.Round, end, MITRE_LIMIT, steps.arc),
  );
}

/**
 * The same with corners that turn by 90 degrees or less left sharp, and a segment's ends square: a little more, with
 * far fewer corners.
 */
export function growMitred(polygon: Polygon, byMm: number): Region {
  const end = polygon.length > 2 ? EndType.Polygon : EndType.Square;
  const paths = [pathOf(polygon)];
  return regionOf(Clipper.inflatePaths(paths, byMm * STEPS_PER_MM, JoinType.Miter, end, MITRE_LIMIT));
}

/** Past this many times the growth a sharp corner is cut off; a right angle needs the square root of 2. */
const MITRE_LIMIT = 2;

/** Whether the point lies in the region; on its border counts as in. */
export function contains(region: Region, point: SurfacePoint): boolean {
  const [at] = pathOf([point]);
  if (at === undefined) return false;
  const places = pathsOf(region).map((path) => Clipper.pointInPolygon(at, path));
  if (places.includes(PointInPolygonResult.IsOn)) return true;
  return places.filter((place) => place === PointInPolygonResult.IsInside).length % 2 === 1;
}
