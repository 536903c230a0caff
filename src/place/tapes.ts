import { InternalError } from "../findings/internal-error.js";
import { directionOf, inner, minus, outer, quarterTurn, surfacePoint } from "../geometry/surface-point.js";
import { dot, type SurfacePoint, subtract, type Vector, vector } from "../geometry/vector.js";
import { type Faces, type Room, type Surface, surfaceNamed } from "../room/room.js";

/** A tape over a surface: what it reads at a point, `inner(direction, point) + offsetMm`. */
export interface TapeLine {
  readonly from: string;
  readonly direction: SurfacePoint;
  readonly offsetMm: number;
}

const UP = vector(0, 0, 1);
const ON_FLOOR = vector(0, 0, 0);

/**
 * The tape that hooks on a named wall, the floor or the ceiling, square to it, on the faces that the file's tapes
 * hook on unless said otherwise. Throws `InternalError` where there is no such wall.
 */
export function tapeLine(
  room: Room,
  surface: Surface,
  from: string,
  faces: Faces = room.measuredTo,
): TapeLine {
  if (from === "floor") return squareTo(surface, { from, normal: UP, on: ON_FLOOR, boardMm: 0 });
  if (from === "ceiling") return fromCeiling(surface, faces);
  const wall = surfaceNamed(room, from);
  const boardMm = faces === "finish" ? wall.boardMm : 0;
  return squareTo(surface, { from, normal: wall.frame.n, on: wall.frame.origin, boardMm });
}

interface Face {
  readonly from: string;
  /** Into the room, of length 1. */
  readonly normal: Vector;
  readonly on: Vector;
  readonly boardMm: number;
}

function squareTo({ frame }: Surface, { from, normal, on, boardMm }: Face): TapeLine {
  return {
    from,
    direction: { u: dot(frame.u, normal), v: dot(frame.v, normal) },
    offsetMm: dot(subtract(frame.origin, on), normal) - boardMm,
  };
}

function fromCeiling(surface: Surface, faces: Faces): TapeLine {
  const edge = surface.edges.find(({ along }) => along === "ceiling");
  if (edge === undefined) throw new InternalError(`${surface.name} does not meet the ceiling`);
  const inward = quarterTurn(directionOf(minus(edge.to, edge.from)));
  const boardMm = faces === "finish" ? edge.boardMm : 0;
  return { from: "ceiling", direction: inward, offsetMm: -inner(inward, edge.from) - boardMm };
}

/** What the tape reads at a point, in mm. */
export function tapeMm({ direction, offsetMm }: TapeLine, point: SurfacePoint): number {
  return inner(direction, point) + offsetMm;
}

/** The point at which two tapes read `mm`; null where they run side by side and fix none. */
export function pointAt(
  [first, second]: readonly [TapeLine, TapeLine],
  [firstMm, secondMm]: readonly [number, number],
): SurfacePoint | null {
  const turn = outer(first.direction, second.direction);
  if (Math.abs(turn) < SIDE_BY_SIDE) return null;
  const a = firstMm - first.offsetMm;
  const b = secondMm - second.offsetMm;
  return surfacePoint(
    (a * second.direction.v - b * first.direction.v) / turn,
    (b * first.direction.u - a * second.direction.u) / turn,
  );
}

/** Sine of the least angle between two tapes that is taken to fix a point: no real pair of walls comes near it. */
const SIDE_BY_SIDE = 1e-6;
