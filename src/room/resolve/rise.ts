import type { Polygon } from "../../geometry/shape.js";
import { inner, minus, outer } from "../../geometry/surface-point.js";
import { type SurfacePoint, unit, type Vector, vector } from "../../geometry/vector.js";

/** A plane over the plan seen from below (u to the left, v to the front): its height is mm + du u + dv v. */
export interface Rise {
  readonly mm: number;
  readonly du: number;
  readonly dv: number;
}

export const riseAt = ({ mm, du, dv }: Rise, at: SurfacePoint): number => mm + inner({ u: du, v: dv }, at);

/** The plane so far behind, square to it: a board on a slope is thicker when it is measured plumb. */
export const raised = (rise: Rise, byMm: number): Rise => ({
  ...rise,
  mm: rise.mm + byMm * Math.hypot(1, rise.du, rise.dv),
});

/** Its normal in the world, down into the room; u of the plan is -x. */
export const normalOf = ({ du, dv }: Rise): Vector => unit(vector(-du, dv, -1));

interface Over {
  readonly at: SurfacePoint;
  readonly mm: number;
}

interface Fit {
  readonly rise: Rise;
  /** The corner that stands furthest out of the plane, by its place, and by how much in height. */
  readonly corner: number;
  readonly outMm: number;
}

/** The plane through heights over points by least squares, about their middle; three points fix it exactly. */
export function planeOver(points: readonly Over[]): Fit {
  const middle = middleOf(points.map(({ at }) => at));
  const meanMm = points.reduce((sum, { mm }) => sum + mm, 0) / points.length;
  const apart = points.map(({ at, mm }) => ({ ...minus(at, middle), mm: mm - meanMm }));
  const sum = (of: (point: (typeof apart)[number]) => number): number =>
    apart.reduce((total, point) => total + of(point), 0);
  const [uu, uv, vv] = [sum(({ u }) => u * u), sum(({ u, v }) => u * v), sum(({ v }) => v * v)];
  const [um, vm] = [sum(({ u, mm }) => u * mm), sum(({ v, mm }) => v * mm)];
  const spread = outer({ u: uu, v: uv }, { u: uv, v: vv });
  const [du, dv] = [(um * vv - vm * uv) / spread, (uu * vm - uv * um) / spread];
  const rise = { mm: meanMm - inner({ u: du, v: dv }, middle), du, dv };
  const outs = points.map(({ at, mm }) => Math.abs(riseAt(rise, at) - mm));
  const outMm = Math.max(...outs);
  return { rise, corner: outs.indexOf(outMm), outMm };
}

function middleOf(points: Polygon): SurfacePoint {
  const of = (axis: "u" | "v"): number => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  return { u: of("u"), v: of("v") };
}
