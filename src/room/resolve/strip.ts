import { EPSILON_MM } from "../../geometry/epsilon.js";
import { cutOff, spansInside } from "../../geometry/ring.js";
import type { Polygon } from "../../geometry/shape.js";
import {
  directionOf,
  inner,
  minus,
  plus,
  quarterTurn,
  surfacePoint,
  times,
} from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Edge } from "../room.js";
import type { BareSurface } from "./surfaces.js";

/** A surface as a strip of members that run along the line that they are measured from: an edge, or one through a point. */
export interface Strip {
  /** Directions of length 1: as the members run, up or to the right; and away from the edge, into the surface. */
  readonly along: SurfacePoint;
  readonly away: SurfacePoint;
  /** The line that is measured from. */
  readonly zero: { readonly at: SurfacePoint; readonly away: SurfacePoint };
  /** `away` · p on the edge that is measured from. */
  readonly startMm: number;
  /** From that edge to the furthest corner. */
  readonly extentMm: number;
  readonly outline: Polygon;
}

/** The surface as members along that edge see it. */
export function stripOf(surface: BareSurface, edge: Edge): Strip {
  const run = directionOf(minus(edge.to, edge.from));
  return strip(surface, { at: edge.from, away: quarterTurn(run) });
}

/** The surface as members see it that run so and are measured from a point: to the side where most of it lies. */
export function stripThrough(surface: BareSurface, at: SurfacePoint, run: SurfacePoint): Strip {
  const away = quarterTurn(run);
  const reachMm = (side: SurfacePoint): number =>
    Math.max(...surface.edges.map(({ from }) => inner(side, minus(from, at))));
  const back = times(away, -1);
  return strip(surface, { at, away: reachMm(back) > reachMm(away) ? back : away });
}

function strip({ edges }: BareSurface, { at, away }: Strip["zero"]): Strip {
  const startMm = inner(away, at);
  const outline = edges.map(({ from }) => from);
  const run = surfacePoint(away.v, -away.u);
  return {
    along: run.u + run.v < 0 ? times(run, -1) : run,
    away,
    // Adding 0 turns a -0 into 0.
    zero: { at, away: surfacePoint(away.u + 0, away.v + 0) },
    startMm,
    extentMm: Math.max(...outline.map((corner) => inner(away, corner))) - startMm,
    outline,
  };
}

/** The surface point so far from the edge that is measured from, and at that place along the members. */
export function pointIn({ along, away, startMm }: Strip, fromMm: number, alongMm: number): SurfacePoint {
  const { u, v } = plus(times(away, startMm + fromMm), times(along, alongMm));
  // Adding 0 turns a -0 into 0.
  return surfacePoint(u + 0, v + 0);
}

/**
 * The stretches of a member in an outline of its surface, by their places along it: of its centre line and both its
 * sides together, so that one that stands half in the surface is there too.
 */
export function stretchesOf(
  strip: Strip,
  { fromMm, widthMm }: { readonly fromMm: number; readonly widthMm: number },
  outline: Polygon = strip.outline,
): readonly (readonly [number, number])[] {
  const { along, away, startMm, extentMm } = strip;
  const spans = [-0.5, 0, 0.5].flatMap((part) => {
    const inside = Math.min(Math.max(fromMm + part * widthMm, EPSILON_MM), extentMm - EPSILON_MM);
    return spansInside(outline, { origin: times(away, startMm + inside), direction: along });
  });
  return joined(spans);
}

/** Stretches that overlap are one. */
function joined(spans: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  for (const [from, to] of [...spans].sort(([a], [b]) => a - b)) {
    const last = found.at(-1);
    if (last === undefined || from > last[1]) found.push([from, to]);
    else found.splice(-1, 1, [last[0], Math.max(last[1], to)]);
  }
  return found;
}

/** What of the surface lies further from the edge than that; none where nothing does. */
export function beyond({ away, startMm, outline }: Strip, fromMm: number): readonly Polygon[] {
  return someOf(cutOff(outline, away, startMm + fromMm));
}

/** What lies behind the edge that is measured from, as a leg of an L may. */
export function behind({ away, startMm, outline }: Strip): readonly Polygon[] {
  return someOf(cutOff(outline, times(away, -1), -startMm + EPSILON_MM));
}

/** The outline from its lowest corner on, the leftmost of several; none where it has no area. */
function someOf(outline: Polygon): readonly Polygon[] {
  const polygon = outline.map(({ u, v }) => surfacePoint(u + 0, v + 0));
  const lowest = [...polygon].sort((a, b) => a.v - b.v || a.u - b.u)[0];
  if (polygon.length < 3 || lowest === undefined) return [];
  const first = polygon.indexOf(lowest);
  return [[...polygon.slice(first), ...polygon.slice(0, first)]];
}
