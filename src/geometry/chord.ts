import type { Body } from "./body.js";
import { type Segment, sidesOf } from "./distance.js";
import { EPSILON_MM } from "./epsilon.js";
import type { Polygon } from "./shape.js";
import { directionOf, inner, minus, outer, plus, quarterTurn, times } from "./surface-point.js";
import type { SurfacePoint } from "./vector.js";

/** A straight line; distances along it are from `origin`, in mm. */
export interface Line {
  readonly origin: SurfacePoint;
  /** Of length 1. */
  readonly direction: SurfacePoint;
}

/** From where to where along a line, in mm. */
export type Chord = readonly [fromMm: number, toMm: number];

/** What of a line lies inside a body; null where it passes by. */
export function chordOf({ core, radiusMm }: Body, line: Line): Chord | null {
  // Most of what a surface holds lies wholly to one side.
  if (isAside(core, Math.max(radiusMm, 0) + EPSILON_MM, line)) return null;
  if (radiusMm < 0) return inShrunk(core, -radiusMm, line);
  const crossings = [
    ...core.flatMap((corner) => inDisc(corner, radiusMm, line)),
    ...sidesOf(core).flatMap((side) => throughSide(movedOut(side, radiusMm), line)),
  ];
  return crossings.length === 0 ? null : [Math.min(...crossings), Math.max(...crossings)];
}

/** Whether all of it is further from a line than this, on one side. */
function isAside(core: Polygon, byMm: number, line: Line): boolean {
  const asides = core.map((corner) => asideMm(line, corner));
  return Math.min(...asides) > byMm || Math.max(...asides) < -byMm;
}

/**
 * The same for one body and very many lines of one direction, each told by how far aside it lies (`outer` of the
 * direction and any point of it); along such a line it is measured from where that is square to the surface's zero.
 */
export function chordsOf(body: Body, direction: SurfacePoint): (asideMm: number) => Chord | null {
  const { core, radiusMm } = body;
  if (radiusMm < 0) {
    const aside = quarterTurn(direction);
    return (mm) => chordOf(body, { origin: times(aside, mm), direction });
  }
  const flat = (point: SurfacePoint): Flat => ({
    at: inner(direction, point),
    aside: outer(direction, point),
  });
  const corners = core.map(flat);
  const sides = sidesOf(core).map((side) => {
    const moved = movedOut(side, radiusMm);
    return { from: flat(moved.from), to: flat(moved.to) };
  });
  return (asideMm) => {
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (const { at, aside } of corners) {
      const square = radiusMm * radiusMm - (aside - asideMm) * (aside - asideMm);
      if (square <= 0) continue;
      const half = Math.sqrt(square);
      least = Math.min(least, at - half);
      most = Math.max(most, at + half);
    }
    for (const { from, to } of sides) {
      const a = from.aside - asideMm;
      const b = to.aside - asideMm;
      if (a > 0 === b > 0) continue;
      const at = from.at + (to.at - from.at) * (a / (a - b));
      least = Math.min(least, at);
      most = Math.max(most, at);
    }
    return least <= most ? [least, most] : null;
  };
}

/** A point as lines of one direction see it: how far along them, and how far aside. */
interface Flat {
  readonly at: number;
  readonly aside: number;
}

const asideMm = ({ origin, direction }: Line, point: SurfacePoint): number =>
  outer(direction, minus(point, origin));

const alongMm = ({ origin, direction }: Line, point: SurfacePoint): number =>
  inner(direction, minus(point, origin));

/** Where the line goes into a disc and out of it. */
function inDisc(centre: SurfacePoint, radiusMm: number, line: Line): readonly number[] {
  const square = radiusMm ** 2 - asideMm(line, centre) ** 2;
  if (square <= 0) return [];
  const at = alongMm(line, centre);
  return [at - Math.sqrt(square), at + Math.sqrt(square)];
}

/** The side of an anticlockwise polygon, moved out of it. */
function movedOut({ from, to }: Segment, byMm: number): Segment {
  const out = times(quarterTurn(directionOf(minus(to, from))), -byMm);
  return { from: plus(from, out), to: plus(to, out) };
}

function throughSide({ from, to }: Segment, line: Line): readonly number[] {
  const [a, b] = [asideMm(line, from), asideMm(line, to)];
  if (a > 0 === b > 0) return [];
  return [alongMm(line, plus(from, times(minus(to, from), a / (a - b))))];
}

/** Of a polygon whose sides are moved in; what spans no area has no inside. */
function inShrunk(core: Polygon, byMm: number, { origin, direction }: Line): Chord | null {
  if (core.length < 3) return null;
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const side of sidesOf(core)) {
    const inward = quarterTurn(directionOf(minus(side.to, side.from)));
    const shortMm = byMm - inner(inward, minus(origin, side.from));
    const rise = inner(inward, direction);
    if (rise > 0) from = Math.max(from, shortMm / rise);
    else if (rise < 0) to = Math.min(to, shortMm / rise);
    else if (shortMm >= 0) return null;
  }
  return from < to ? [from, to] : null;
}
