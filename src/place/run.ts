import { directionOf, inner, minus, quarterTurn } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Edge, Framing, Layout, Member } from "../room/room.js";

type KnownFraming = Extract<Framing, { kind: "known" }>;

/** How far a point lies from the line that a layout is measured from, square to its members, in mm. */
export const fromZeroMm = ({ zero }: Layout, point: SurfacePoint): number =>
  inner(zero.away, minus(point, zero.at));

export const inward = ({ from, to }: Edge): SurfacePoint => quarterTurn(directionOf(minus(to, from)));

/** Whether a member lies along the run, as plates and blocking do not. */
export function runsWithFraming({ from, to }: Member, { direction: run }: KnownFraming): boolean {
  const direction = directionOf(minus(to, from));
  return Math.abs(inner(direction, run)) > ALONG;
}

/** Cosine of 45 degrees: nearer to the run than to its square. */
const ALONG = Math.SQRT1_2;

/** Joists and studs: what a person counts from the wall. */
export function repeats({ kind }: Member): boolean {
  return kind === "joist" || kind === "stud";
}
