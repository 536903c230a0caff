import type { SurfacePoint } from "../../geometry/vector.js";
import type { Edge } from "../room.js";
import type { BareSurface } from "./surfaces.js";

export type Axis = "u" | "v";

export const crossing = (axis: Axis): Axis => (axis === "u" ? "v" : "u");

/** A surface as a strip of members: `along` is the axis that they run on, `across` the one that they are counted on. */
export interface Strip {
  readonly along: Axis;
  readonly across: Axis;
  /** Ends of the surface across the members: the edge that is measured from, and the way into the surface. */
  readonly startMm: number;
  readonly sign: 1 | -1;
  readonly extentMm: number;
  /** Ends of the surface along the members. */
  readonly alongMm: readonly [number, number];
}

/** The surface as members of that run see it, measured from the edge. */
export function stripOf({ edges }: BareSurface, edge: Edge, along: Axis): Strip {
  const across = crossing(along);
  const ends = (axis: Axis): readonly [number, number] => {
    const places = edges.map(({ from }) => from[axis]);
    return [Math.min(...places), Math.max(...places)];
  };
  const [low, high] = ends(across);
  const isLow = edge.from[across] - low <= high - edge.from[across];
  return {
    along,
    across,
    startMm: isLow ? low : high,
    sign: isLow ? 1 : -1,
    extentMm: high - low,
    alongMm: ends(along),
  };
}

/** The surface point so far from the wall that is measured from, and so far along the members. */
export function pointIn({ along, startMm, sign }: Strip, fromMm: number, alongMm: number): SurfacePoint {
  const across = startMm + sign * fromMm;
  return along === "u" ? { u: alongMm, v: across } : { u: across, v: alongMm };
}
