import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { boxAbout } from "../../drawing/label-places.js";
import { outline, PEN, point } from "../../drawing/pen.js";
import { radians } from "../../geometry/vector.js";
import type { RangeDeg } from "../../standards/loudspeaker-layouts.js";
import { WINDOW_FILL } from "./lines.js";

/** Between two circles about a seat, in mm on the page. */
export interface Ring {
  readonly fromMm: number;
  readonly toMm: number;
}

/** A direction on the page by its angle. */
export type Turned = (deg: number) => PagePoint;

const STEP_DEG = 3;

export const away = ({ x, y }: PagePoint, way: PagePoint, mm: number): PagePoint =>
  point(x + way.x * mm, y + way.y * mm);

/** Angles from the first to the second, upward; past 180 where they go round the back. */
function anglesOf([from, to]: RangeDeg): number[] {
  const end = to < from ? to + 360 : to;
  const steps = Math.max(1, Math.ceil((end - from) / STEP_DEG));
  return Array.from({ length: steps + 1 }, (_, index) => from + ((end - from) * index) / steps);
}

/** The part of a ring about `centre` that lies between two angles: light, with a fine border. */
export function band(centre: PagePoint, ring: Ring, range: RangeDeg, turned: Turned): Item {
  const angles = anglesOf(range);
  const inner = angles.map((deg) => away(centre, turned(deg), ring.fromMm));
  const outer = angles.map((deg) => away(centre, turned(deg), ring.toMm));
  return outline([...inner, ...outer.reverse()], { stroke: PEN.fine, fill: WINDOW_FILL });
}

/** What the part of a ring takes, so that no words cover it. */
export function bandTaken(centre: PagePoint, ring: Ring, range: RangeDeg, turned: Turned): Window[] {
  const deepMm = ring.toMm - ring.fromMm;
  const size = { widthMm: deepMm, heightMm: deepMm };
  return anglesOf(range).map((deg) => boxAbout(away(centre, turned(deg), ring.fromMm + deepMm / 2), size));
}

/** An azimuth on a plan with the front wall up the page: positive to the left. */
export const azimuthOnPlan: Turned = (deg) => point(-Math.sin(radians(deg)), -Math.cos(radians(deg)));

/** An elevation from the side, ahead of the seat to the `ahead` side of the page. */
export const elevationOnSide =
  (ahead: 1 | -1): Turned =>
  (deg) =>
    point(ahead * Math.cos(radians(deg)), -Math.sin(radians(deg)));
