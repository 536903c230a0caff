import { distanceToSegmentMm, isInside } from "../../geometry/distance.js";
import { crossingSides } from "../../geometry/ring.js";
import type { Polygon } from "../../geometry/shape.js";
import { distanceMm, plus, times } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Edge } from "../../room/room.js";

/** A straight line from one corner of an outline to another, inside it all the way. */
export interface Span {
  /** What stands along the two edges at each end. */
  readonly from: readonly [string, string];
  readonly to: readonly [string, string];
  readonly mm: number;
}

interface Corner {
  readonly at: SurfacePoint;
  readonly index: number;
  readonly between: readonly [string, string];
}

/** The two longest of an outline that share no corner; fewer where it has none. */
export function insideSpans(edges: readonly Edge[]): readonly Span[] {
  const outline = edges.map(({ from }) => from);
  const corners = edges.map(
    ({ from, along }, index): Corner => ({
      at: from,
      index,
      between: [edges.at(index - 1)?.along ?? along, along],
    }),
  );
  const pairs = corners
    .flatMap((from) => corners.slice(from.index + 2).map((to) => ({ from, to })))
    .filter(({ from, to }) => to.index - from.index < edges.length - 1 && runsInside(from, to, outline))
    .map((pair) => ({ ...pair, mm: distanceMm(pair.from.at, pair.to.at) }))
    .sort((a, b) => b.mm - a.mm);
  const [longest] = pairs;
  if (longest === undefined) return [];
  const apart = pairs.find(
    ({ from, to }) =>
      ![from.index, to.index].some((index) => index === longest.from.index || index === longest.to.index),
  );
  return [longest, ...(apart === undefined ? [] : [apart])].map(({ from, to, mm }) => ({
    from: from.between,
    to: to.between,
    mm,
  }));
}

/** Nearer to a corner than this a line touches it; a tape would be bent round it. */
const CLEAR_MM = 5;

/** Whether the line parts the outline in two without leaving it or touching another corner. */
function runsInside(from: Corner, to: Corner, outline: Polygon): boolean {
  const line = { from: from.at, to: to.at };
  const others = outline.filter((_, index) => index !== from.index && index !== to.index);
  const middle = times(plus(from.at, to.at), 0.5);
  const one = outline.slice(from.index, to.index + 1);
  const other = [...outline.slice(to.index), ...outline.slice(0, from.index + 1)];
  return (
    isInside(middle, outline) &&
    others.every((corner) => distanceToSegmentMm(corner, line) > CLEAR_MM) &&
    crossingSides(one) === null &&
    crossingSides(other) === null
  );
}
