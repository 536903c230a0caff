import type { Item, PagePoint } from "../../drawing/drawing.js";
import { label } from "../../drawing/label.js";
import { middlesWithin } from "../../drawing/label-places.js";
import { arrow, line, PEN, point, polyline } from "../../drawing/pen.js";
import { grown } from "../../drawing/touches.js";
import { type Cone, pierced, sectionOf } from "../../geometry/cone.js";
import { type Frame, toWorld } from "../../geometry/frame.js";
import type { Polygon } from "../../geometry/shape.js";
import { isInSight } from "../../geometry/sight-line.js";
import { add, type SurfacePoint, scale } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { coneOf } from "../../listen/coverage.js";
import type { Piece, WordsWish } from "../marking/piece.js";
import { boxBetween, type View } from "../marking/view.js";
import { LINES } from "./lines.js";
import type { Projected } from "./places.js";

/** A plane that coverage is cut by, and the part of it that lies in the room. */
export interface Cut {
  readonly plane: Frame;
  readonly holds: (at: SurfacePoint) => boolean;
  /** From a point of the plane's own axes to those of the drawing. */
  readonly drawn: (at: SurfacePoint) => SurfacePoint;
  /** The room looking down: coverage ends where its walls hide the loudspeaker. */
  readonly outline: Polygon;
  /** No two points of the room are further apart. */
  readonly mostMm: number;
}

export interface Covered {
  readonly opening: Opening;
  readonly cone: Cone;
  /** Lines on the plane's own axes. */
  readonly pieces: readonly (readonly SurfacePoint[])[];
}

/** Where each loudspeaker's coverage ends on the plane, in sight of it; those without stated coverage are left out. */
export function coveredOn(
  openings: readonly Opening[],
  { plane, holds, outline, mostMm }: Cut,
): readonly Covered[] {
  return openings.flatMap((opening) => {
    const cone = coneOf(opening);
    if (cone === null) return [];
    const from = { u: cone.apex.x, v: cone.apex.y };
    const keeps = (at: SurfacePoint): boolean => {
      const { x, y } = toWorld(plane, at);
      return holds(at) && isInSight(outline, from, { u: x, v: y });
    };
    return [{ opening, cone, pieces: sectionOf(cone, plane, { mostMm, keeps }) }];
  });
}

/** The borders of coverage, each with its loudspeaker's id on it. */
export function curvesPiece(covered: readonly Covered[], { drawn }: Cut, view: View): Piece {
  const curves = covered.map(({ opening, pieces }) => ({
    opening,
    lines: pieces.map((piece) => piece.map((at) => view.place(drawn(at)))),
  }));
  return {
    layer: "aim",
    rank: 3,
    items: curves.flatMap(({ opening, lines }) =>
      lines.map((points) =>
        polyline(points, opening.surface.kind === "ceiling" ? LINES.overhead : LINES.wall),
      ),
    ),
    wishes: curves.flatMap(({ opening, lines }, index) =>
      lines.map((points) => idOn(opening, points, { view, index })),
    ),
  };
}

/** An id on its curve, as a contour line bears its height: where the curve is free. */
function idOn(
  { speaker }: Opening,
  points: readonly PagePoint[],
  { view, index }: { view: View; index: number },
): WordsWish {
  const said = label([{ words: speaker.id, capMm: view.heights.smallMm, face: "bold" }]);
  const places = placesOn(points, index);
  // With air beside it, so that it is not read together with another's name.
  const size = { widthMm: said.widthMm + AIR_MM, heightMm: said.heightMm + AIR_MM / 2 };
  const middles = [...middlesWithin(places, size, view.box), ...places];
  return { ...size, draw: said.draw, middles, optional: true };
}

const AIR_MM = 4;
const BETWEEN_MM = 3;

/** Points of a curve to write at, begun elsewhere for each so that alike curves are not all written on in one corner. */
function placesOn(points: readonly PagePoint[], index: number): PagePoint[] {
  const some = points.flatMap((from, place) => {
    const to = points[place + 1] ?? from;
    const steps = Math.max(1, Math.floor(Math.hypot(to.x - from.x, to.y - from.y) / BETWEEN_MM));
    return Array.from({ length: steps }, (_, step) =>
      point(from.x + ((to.x - from.x) * step) / steps, from.y + ((to.y - from.y) * step) / steps),
    );
  });
  const start = Math.floor(some.length * (0.5 + 0.13 * index)) % some.length;
  return [...some.slice(start), ...some.slice(0, start)];
}

const SHORT_MM = 9;
const CROSS_MM = 1.3;

/** The axis of each: to a cross where it meets the plane, or a short arrow where it does not within the room. */
export function axesPiece(
  covered: readonly Covered[],
  { plane, drawn, holds }: Cut,
  { view, projected }: { view: View; projected: Projected },
): Piece {
  const crosses = covered.flatMap(({ cone }): Item[] => {
    const foot = pierced(cone, plane);
    if (foot === null || !holds(foot)) return [];
    return toCross(view.place(projected(cone.apex)), view.place(drawn(foot)));
  });
  const arrows = covered.flatMap(({ cone }) => {
    const foot = pierced(cone, plane);
    if (foot !== null && holds(foot)) return [];
    const from = view.place(projected(cone.apex));
    const tip = view.place(projected(add(cone.apex, scale(cone.axis, SHORT_MM * view.ratio))));
    return Math.hypot(tip.x - from.x, tip.y - from.y) < 1 ? [] : [{ from, tip }];
  });
  return {
    layer: "aim",
    rank: 9,
    items: [...crosses, ...arrows.flatMap(({ from, tip }) => arrow(from, tip, PEN.fine))],
    taken: arrows.map(({ from, tip }) => grown(boxBetween(from, tip), 1)),
  };
}

const toCross = (from: PagePoint, at: PagePoint): Item[] => [
  line(from, at, LINES.axis),
  line(point(at.x - CROSS_MM, at.y - CROSS_MM), point(at.x + CROSS_MM, at.y + CROSS_MM)),
  line(point(at.x - CROSS_MM, at.y + CROSS_MM), point(at.x + CROSS_MM, at.y - CROSS_MM)),
];
