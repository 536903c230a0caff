import { directionOf, inner, minus, quarterTurn, surfacePoint, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Edge, Framing, Member, Surface } from "../room/room.js";

type KnownFraming = Extract<Framing, { kind: "known" }>;

/** The direction across the members that leads away from the wall that they are measured from, of length 1. */
export function awayFromWall(surface: Surface, framing: KnownFraming): SurfacePoint {
  const across = quarterTurn(framing.direction);
  const edge = wallEdge(surface, framing);
  const leads = edge === undefined ? firstToLast(framing.members) : inward(edge);
  return inner(leads, across) < 0 ? times(across, -1) : across;
}

/** The edge along the wall that the framing is measured from; undefined where the surface does not meet it. */
export function wallEdge(surface: Surface, { layout }: KnownFraming): Edge | undefined {
  return surface.edges.find(({ along }) => along === layout.from);
}

export const inward = ({ from, to }: Edge): SurfacePoint => quarterTurn(directionOf(minus(to, from)));

/** A surface away from its wall counts its members from it all the same. */
function firstToLast(members: readonly Member[]): SurfacePoint {
  const [first, ...others] = members;
  const last = others.at(-1);
  return first === undefined || last === undefined ? surfacePoint(1, 0) : minus(last.from, first.from);
}

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
