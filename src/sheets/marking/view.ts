import type { PagePoint, Window } from "../../drawing/drawing.js";
import { point } from "../../drawing/pen.js";
import type { Side } from "../../drawing/running-chain.js";
import type { Polygon } from "../../geometry/shape.js";
import type { SurfacePoint } from "../../geometry/vector.js";

/** Heights of capitals on one kind of marking sheet, in mm. */
export interface Heights {
  readonly smallMm: number;
  readonly wallMm: number;
  readonly idMm: number;
}

/** Where the points of a surface come to lie on the page; made once for each drawing. */
export interface View {
  /** One to how many. */
  readonly ratio: number;
  readonly heights: Heights;
  /** The box around the outline on the page. */
  readonly box: Window;
  readonly place: (at: SurfacePoint) => PagePoint;
  /** A length of the surface as it is on the page. */
  readonly shrunk: (mm: number) => number;
}

/** A ratio, one to so many, and the heights of what is written at it. */
export interface Scaled {
  readonly ratio: number;
  readonly heights: Heights;
}

/** Millimetres outward from each side of the outline's box. */
export type Margins = Readonly<Record<Side, number>>;

interface Extent {
  readonly left: number;
  readonly top: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export function extentOf(outline: Polygon): Extent {
  const us = outline.map(({ u }) => u);
  const vs = outline.map(({ v }) => v);
  const left = Math.min(...us);
  const top = Math.max(...vs);
  return { left, top, widthMm: Math.max(...us) - left, heightMm: top - Math.min(...vs) };
}

/** An outline at a ratio with the corner of its box at `corner`: u to the right, v up the page. */
export function viewOf(outline: Polygon, { ratio, heights, corner }: Scaled & { corner: PagePoint }): View {
  const extent = extentOf(outline);
  const shrunk = (mm: number): number => mm / ratio;
  return {
    ratio,
    heights,
    shrunk,
    box: { ...corner, widthMm: shrunk(extent.widthMm), heightMm: shrunk(extent.heightMm) },
    place: ({ u, v }) => point(corner.x + shrunk(u - extent.left), corner.y + shrunk(extent.top - v)),
  };
}

/** The upright box around points on the page. */
export function boxOf(points: readonly PagePoint[]): Window {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, widthMm: Math.max(...xs) - x, heightMm: Math.max(...ys) - y };
}

export const boxBetween = (a: PagePoint, b: PagePoint): Window => boxOf([a, b]);
