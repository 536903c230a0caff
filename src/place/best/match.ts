import { toWorld } from "../../geometry/frame.js";
import { surfacePoint } from "../../geometry/surface-point.js";
import { dot, type SurfacePoint, type Vector, vector } from "../../geometry/vector.js";
import type { Room, Surface } from "../../room/room.js";

/** The point of one surface that matches a point of another, left to right. */
export type Match = (point: SurfacePoint) => SurfacePoint;

const RIGHT = vector(1, 0, 0);
const FORWARD = vector(0, 1, 0);
const UP = vector(0, 0, 1);

/**
 * How a loudspeaker on `to` matches one on `from`: overhead and on walls that face front or back as its mirror image
 * about the plane x = reference seat, on side walls at the same way from the front and the same height. Null where two
 * surfaces have no such points: a wall and a ceiling, one side wall twice.
 */
export function matchBetween(room: Room, from: Surface, to: Surface): Match | null {
  const kept = keptBy(from, to);
  if (kept === null) return null;
  const seatMm = room.reference.ear.x;
  const [first, second] = kept;
  const reading = (axis: Vector, at: Vector): number => (axis === RIGHT ? 2 * seatMm - at.x : dot(axis, at));
  const pointWith = pointByCoordinates(to, kept);
  if (pointWith === null) return null;
  return (point) => {
    const at = toWorld(from.frame, point, from.boardMm);
    return pointWith(reading(first, at), reading(second, at));
  };
}

/** The two coordinates of the world that the match settles: x is mirrored, y and z are kept. */
function keptBy(from: Surface, to: Surface): readonly [Vector, Vector] | null {
  if (from.kind !== to.kind) return null;
  if (from.kind === "ceiling") return [RIGHT, FORWARD];
  const [fromSide, toSide] = [isSideWall(from), isSideWall(to)];
  if (fromSide !== toSide || (fromSide && from.name === to.name)) return null;
  return fromSide ? [FORWARD, UP] : [RIGHT, UP];
}

const isSideWall = ({ frame }: Surface): boolean => Math.abs(frame.n.x) >= Math.abs(frame.n.y);

/** Finds the point of a surface's finished face that has these two coordinates; null where they fix none on it. */
function pointByCoordinates(
  { frame, boardMm }: Surface,
  [first, second]: readonly [Vector, Vector],
): ((firstMm: number, secondMm: number) => SurfacePoint) | null {
  const origin = toWorld(frame, surfacePoint(0, 0), boardMm);
  const [a, b] = [dot(first, frame.u), dot(first, frame.v)];
  const [c, d] = [dot(second, frame.u), dot(second, frame.v)];
  const turn = a * d - b * c;
  if (Math.abs(turn) < LEAST_TURN) return null;
  return (firstMm, secondMm) => {
    const p = firstMm - dot(first, origin);
    const q = secondMm - dot(second, origin);
    return surfacePoint((p * d - q * b) / turn, (q * a - p * c) / turn);
  };
}

/** A surface that stands nearer than this to square on both coordinates shows too little of them. */
const LEAST_TURN = 1e-3;
