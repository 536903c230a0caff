import { Clipper, EndType, FillRule, JoinType, type Path64, type Paths64, Rect64Utils } from "clipper2-ts";
import type { Polygon } from "./shape.js";
import type { SurfacePoint } from "./vector.js";

/*
 * Offsetting and boolean operations, by the clipping library. It reckons in whole numbers; a step of 1e-4 mm leaves
 * a hundred steps in the house's tolerance, and a room of 100 m is 1e9 of them, well within exact doubles.
 */
const STEPS_PER_MM = 10_000;

/** Areas with holes in them: outlines anticlockwise, holes clockwise. */
export type Region = readonly Polygon[];

const pathOf = (polygon: Polygon): Path64 =>
  polygon.map(({ u, v }) => ({ x: Math.round(u * STEPS_PER_MM), y: Math.round(v * STEPS_PER_MM) }));

const pathsOf = (region: Region): Paths64 => region.map(pathOf);

const polygonOf = (path: Path64): Polygon =>
  path.map(({ x, y }) => ({ u: x / STEPS_PER_MM, v: y / STEPS_PER_MM }));

const regionOf = (paths: Paths64): Region => paths.map(polygonOf);

/** What lies in `from` and in none of `taken`. */
export function difference(from: Region, taken: Region): Region {
  return regionOf(Clipper.difference(pathsOf(from), pathsOf(taken), FillRule.NonZero));
}

/** What lies in both. */
export function intersection(a: Region, b: Region): Region {
  return regionOf(Clipper.intersect(pathsOf(a), pathsOf(b), FillRule.NonZero));
}

/** What of it lies in the upright rectangle between two corners: as the intersection, in much less time. */
export function partBetween(region: Region, least: SurfacePoint, most: SurfacePoint): Region {
  const [low, high] = pathOf([least, most]);
  if (low === undefined || high === undefined) return [];
  const cut = Clipper.rectClip(Rect64Utils.create(low.x, low.y, high.x, high.y), pathsOf(region));
  // An outline and the hole in it were cut one by one: where both lie on the rectangle, they share a side.
  return regionOf(cut.every(Clipper.isPositive) ? cut : Clipper.union(cut, [], FillRule.NonZero));
}

/** What lies in any of them. */
export function union(...regions: readonly Region[]): Region {
  return regionOf(Clipper.union(regions.flatMap(pathsOf), [], FillRule.NonZero));
}

const FEW = 16;
/** Each step takes all that is left through the library once more; with two parts there are twice as many steps. */
const PARTS = 4;

/** The same of very many. Parts first: of what lies over one another in heaps, a few outlines are left after each step. */
export function unionOfMany(regions: readonly Region[]): Region {
  if (regions.length <= FEW) return union(...regions);
  const size = Math.ceil(regions.length / PARTS);
  const part = (index: number): Region => unionOfMany(regions.slice(index * size, (index + 1) * size));
  return union(...Array.from({ length: PARTS }, (_, index) => part(index)));
}

/** What lies in `from` and in none of many: as the difference, in much less time where they lie in heaps. */
export const withoutMany = (from: Region, taken: readonly Region[]): Region =>
  difference(from, taken.length <= FEW ? taken.flat() : unionOfMany(taken));

/**
 * Everything within `byMm` of the polygon (a single point and a segment too), its arcs as chords that lie inside the
 * true arc by `arcMm` at most.
 */
export function grow(polygon: Polygon, byMm: number, arcMm: number): Region {
  const [centre] = polygon;
  if (centre !== undefined && polygon.length === 1) return [disc(centre, byMm, arcMm)];
  const end = polygon.length > 2 ? EndType.Polygon : EndType.Round;
  const steps = { by: byMm * STEPS_PER_MM, arc: arcMm * STEPS_PER_MM };
  return regionOf(
    Clipper.inflatePaths([pathOf(polygon)], steps.by, JoinType.Round, end, MITRE_LIMIT, steps.arc),
  );
}

/** The library's own circle: to inflate a point would also look for where the outline crosses itself. */
function disc(centre: SurfacePoint, radiusMm: number, arcMm: number): Polygon {
  const chords = Math.ceil(Math.PI / Math.acos(1 - arcMm / radiusMm));
  const radius = radiusMm * STEPS_PER_MM;
  return polygonOf(pathOf([centre]).flatMap((at) => Clipper.ellipse(at, radius, radius, chords)));
}

/**
 * The same with corners that turn by 90 degrees or less left sharp, and a segment's ends square: a little more, with
 * far fewer corners.
 */
export function growMitred(polygon: Polygon, byMm: number): Region {
  const path = pathOf(polygon);
  if (byMm > 0 && isUprightRectangle(path)) return [polygonOf(rectangleAround(path, byMm * STEPS_PER_MM))];
  const end = polygon.length > 2 ? EndType.Polygon : EndType.Square;
  const paths = [path];
  return regionOf(Clipper.inflatePaths(paths, byMm * STEPS_PER_MM, JoinType.Miter, end, MITRE_LIMIT));
}

/** As nearly all members are. */
function isUprightRectangle(path: Path64): boolean {
  const [a, b, c, d] = path;
  if (a === undefined || b === undefined || c === undefined || d === undefined || path.length > 4)
    return false;
  return (
    (a.x === b.x && b.y === c.y && c.x === d.x && d.y === a.y) ||
    (a.y === b.y && b.x === c.x && c.y === d.y && d.x === a.x)
  );
}

function rectangleAround(path: Path64, by: number): Path64 {
  const xs = path.map(({ x }) => x);
  const ys = path.map(({ y }) => y);
  const [left, right] = [Math.round(Math.min(...xs) - by), Math.round(Math.max(...xs) + by)];
  const [low, high] = [Math.round(Math.min(...ys) - by), Math.round(Math.max(...ys) + by)];
  return [
    { x: left, y: low },
    { x: right, y: low },
    { x: right, y: high },
    { x: left, y: high },
  ];
}

/** Past this many times the growth a sharp corner is cut off; a right angle needs the square root of 2. */
const MITRE_LIMIT = 2;

/** Area in square millimetres, holes taken off. */
export function areaMm2(region: Region): number {
  return Clipper.areaPaths(pathsOf(region)) / STEPS_PER_MM ** 2;
}
