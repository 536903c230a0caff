import { Clipper, EndType, FillRule, JoinType, type Path64, type Paths64 } from "clipper2-ts";
import type { Polygon } from "./shape.js";

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

const regionOf = (paths: Paths64): Region =>
  paths.map((path) => path.map(({ x, y }) => ({ u: x / STEPS_PER_MM, v: y / STEPS_PER_MM })));

/** What lies in `from` and in none of `taken`. */
export function difference(from: Region, taken: Region): Region {
  return regionOf(Clipper.difference(pathsOf(from), pathsOf(taken), FillRule.NonZero));
}

/** What lies in both. */
export function intersection(a: Region, b: Region): Region {
  return regionOf(Clipper.intersect(pathsOf(a), pathsOf(b), FillRule.NonZero));
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

/** Area in square millimetres, holes taken off. */
export function areaMm2(region: Region): number {
  return Clipper.areaPaths(pathsOf(region)) / STEPS_PER_MM ** 2;
}
