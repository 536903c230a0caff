import { convexSum, mirrored, rectangle } from "./convex.js";
import { distanceToConvexMm, type Segment } from "./distance.js";
import type { Area, Polygon, Shape } from "./shape.js";
import { directionOf, inner, minus, plus, quarterTurn, surfacePoint, times } from "./surface-point.js";
import type { SurfacePoint } from "./vector.js";

/**
 * A convex figure on a surface: everything within `radiusMm` of its core, a convex polygon or a single point.
 * Discs, rectangles, members' bands and edges are all of this one kind, so that one rule measures between any two.
 */
export interface Body {
  readonly core: Polygon;
  readonly radiusMm: number;
}

const ORIGIN = surfacePoint(0, 0);

/** An opening or a flange with its centre at `centre`. */
export function bodyOfShape(shape: Shape, centre: SurfacePoint = ORIGIN): Body {
  if (shape.kind === "round") return { core: [centre], radiusMm: shape.diameterMm / 2 };
  const half = surfacePoint(shape.widthMm / 2, shape.heightMm / 2);
  return { core: rectangle(minus(centre, half), plus(centre, half)), radiusMm: 0 };
}

export function bodyOfArea(area: Area): Body {
  if (area.kind === "round") return { core: [area.centre], radiusMm: area.diameterMm / 2 };
  return { core: rectangle(area.min, area.max), radiusMm: 0 };
}

export const bodyOfSegment = ({ from, to }: Segment): Body => ({ core: [from, to], radiusMm: 0 });

/** A length of framing as it covers the surface: its centre line, half its width to either side, square ends. */
export function bandOf({ from, to, widthMm }: Segment & { readonly widthMm: number }): Polygon {
  const aside = times(quarterTurn(directionOf(minus(to, from))), widthMm / 2);
  return [minus(from, aside), minus(to, aside), plus(to, aside), plus(from, aside)];
}

export const bodyOfBand = (member: Segment & { readonly widthMm: number }): Body => ({
  core: bandOf(member),
  radiusMm: 0,
});

/**
 * The centres at which a body, given about its own centre, lies on `fixed` or touches it: grown by the moving body.
 */
export function reachOf(fixed: Body, moving: Body): Body {
  return { core: convexSum(fixed.core, mirrored(moving.core)), radiusMm: fixed.radiusMm + moving.radiusMm };
}

/** Distance from a point to the edge of a body, in mm; negative inside, where it is the shortest way out. */
export function distanceToBodyMm(point: SurfacePoint, body: Body): number {
  return distanceToConvexMm(point, body.core) - body.radiusMm;
}

/**
 * Whether a body lies wholly inside another, everywhere so far from its border. The distance to a convex figure has no
 * peak between two points, so that the corners of the core tell for all of it.
 */
export const isHeldBy = ({ core, radiusMm }: Body, holder: Body, spareMm: number): boolean =>
  core.every((corner) => distanceToBodyMm(corner, holder) + radiusMm <= -spareMm);

/**
 * Those bodies that no other holds with so much to spare: a flange's disc often lies well within its opening's. More than
 * none is to be spared, or of two that are alike each would hold the other and both go.
 */
export const unheld = (bodies: readonly Body[], spareMm: number): Body[] =>
  bodies.filter((body) => !bodies.some((other) => isHeldBy(body, other, spareMm)));

/**
 * Distance from edge to edge, in mm: exact where the bodies are apart; where they overlap, minus the shortest way
 * that one must move to come free.
 */
export function separationMm(fixed: Body, moving: Body): number {
  return distanceToBodyMm(ORIGIN, reachOf(fixed, moving));
}

/** How far the body reaches from the origin in a direction of length 1, in mm. */
export function supportMm(body: Body, direction: SurfacePoint): number {
  return body.radiusMm + Math.max(...body.core.map((corner) => inner(corner, direction)));
}
