import type { Frame } from "../../geometry/frame.js";
import { toWorld } from "../../geometry/frame.js";
import { spansInside } from "../../geometry/ring.js";
import type { Polygon } from "../../geometry/shape.js";
import { type SurfacePoint, type Vector, vector } from "../../geometry/vector.js";
import { exitThrough } from "../../listen/edges.js";
import type { Edge, Room, Surface } from "../../room/room.js";

/*
 * The room cut from front to back by the upright plane through the reference seat.
 */

/** Which way one looks at the cut: at what is to the left of the seat, or to its right. */
export type Side = "left" | "right";

export interface Section {
  /** Of the upright plane through the reference seat: u toward the front wall, v up. */
  readonly plane: Frame;
  /** Floor, walls and ceilings as they are cut, u toward the front wall, v up from the floor. */
  readonly outline: Polygon;
  /** What stands at either end of the cut and ahead of a person at the seat who looks to either side. */
  readonly walls: Readonly<Record<"front" | "back" | Side, string>>;
}

/** One ceiling as it is cut: from the back to the front. */
interface CutCeiling {
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
}

export function sectionThrough(room: Room, plan: Polygon): Section {
  const { ear } = room.reference;
  const line = { origin: { u: ear.x, v: 0 }, direction: { u: 0, v: 1 } };
  const [back, front] = spansInside(plan, line).find(([from, to]) => from <= ear.y && ear.y <= to) ?? [
    Math.min(...plan.map(({ v }) => v)),
    Math.max(...plan.map(({ v }) => v)),
  ];
  const overhead = ceilingsOver(room, ear, [back, front]);
  const top = overhead.flatMap(({ from, to }) => [from, to]);
  return {
    plane: {
      origin: vector(ear.x, 0, 0),
      u: vector(0, 1, 0),
      v: vector(0, 0, 1),
      n: vector(1, 0, 0),
    },
    outline: withoutRepeats([{ u: back, v: 0 }, { u: front, v: 0 }, ...top.reverse()]),
    walls: wallsRound(room, plan, ear),
  };
}

/** Every ceiling over the cut, from the back to the front. */
function ceilingsOver(
  { surfaces }: Room,
  ear: Vector,
  [back, front]: readonly [number, number],
): CutCeiling[] {
  return surfaces
    .filter(({ kind }) => kind === "ceiling")
    .flatMap((ceiling) => cutOf(ceiling, ear))
    .map(([from, to]) => clipped({ from, to }, back, front))
    .filter(({ from, to }) => to.u - from.u > LEAST_MM)
    .sort((a, b) => a.from.u - b.from.u);
}

const LEAST_MM = 0.5;

function cutOf(ceiling: Surface, ear: Vector): [SurfacePoint, SurfacePoint][] {
  const lines = (edges: readonly Edge[]): Polygon =>
    edges.map(({ from }) => {
      const { x, y } = toWorld(ceiling.frame, from);
      return { u: x, v: y };
    });
  const along = { origin: { u: ear.x, v: 0 }, direction: { u: 0, v: 1 } };
  const taken = ceiling.voids.flatMap(({ edges }) => spansInside(lines(edges), along));
  const left = spansInside(lines(ceiling.edges), along).flatMap((span) => without(span, taken));
  const at = (y: number): SurfacePoint => ({ u: y, v: heightAt(ceiling.frame, ear.x, y) });
  return left.map(([from, to]) => [at(from), at(to)]);
}

type Span = readonly [number, number];

/** What is left of a stretch when others are taken out of it. */
const without = (span: Span, taken: readonly Span[]): Span[] =>
  taken.reduce<Span[]>(
    (left, [low, high]) =>
      left.flatMap(([from, to]): Span[] =>
        high <= from || low >= to
          ? [[from, to]]
          : [[from, low] as const, [high, to] as const].filter(([start, end]) => end > start),
      ),
    [span],
  );

/** Height of a plane that is not upright over a point of the floor. */
function heightAt({ origin, n }: Frame, x: number, y: number): number {
  return origin.z - (n.x * (x - origin.x) + n.y * (y - origin.y)) / n.z;
}

function clipped({ from, to }: CutCeiling, back: number, front: number): CutCeiling {
  const at = (u: number): SurfacePoint => ({
    u,
    v: from.v + ((to.v - from.v) * (u - from.u)) / (to.u - from.u),
  });
  return { from: from.u < back ? at(back) : from, to: to.u > front ? at(front) : to };
}

const withoutRepeats = (polygon: Polygon): Polygon =>
  polygon.filter((at, index) => {
    const before = polygon.at(index - 1);
    return before === undefined || Math.hypot(at.u - before.u, at.v - before.v) > LEAST_MM;
  });

function wallsRound({ walls }: Room, plan: Polygon, ear: Vector): Section["walls"] {
  const edges = walls.map((along, index): Edge => {
    const at = (place: number): SurfacePoint => plan[place % plan.length] ?? { u: 0, v: 0 };
    return { along, from: at(index), to: at(index + 1), boardMm: 0, slantMm: 0 };
  });
  const ahead = (u: number, v: number): string =>
    exitThrough(edges, { from: { u: ear.x, v: ear.y }, direction: { u, v } })?.edge.along ?? "";
  return { front: ahead(0, 1), back: ahead(0, -1), left: ahead(-1, 0), right: ahead(1, 0) };
}
