import { add, dot, scale, subtract, type Vector } from "../../geometry/vector.js";
import type { Face } from "./shell.js";

/*
 * Where a surface meets what stands beside it. Faces are not always square to each other (walls at an angle, slopes),
 * so a board's thickness is not what it takes off the surface next to it.
 */

/** A surface that ends at a face. */
export interface Ending {
  /** Its normal, into the room. */
  readonly normal: Vector;
  readonly boardMm: number;
}

/** The least sine of the angle between two planes that makes an edge; no real one comes near it. */
const SIDE_BY_SIDE = 1e-6;

/** How far the finished outline of a surface lies inside its edge, along the surface, once the face is boarded. */
export function insetMm(ending: Ending, inward: Vector, face: Face): number {
  const reach = dot(face.normal, inward);
  if (Math.abs(reach) < SIDE_BY_SIDE) return 0;
  return (face.boardMm - ending.boardMm * dot(face.normal, ending.normal)) / reach;
}

/** The part of it that the surface's own board makes, while the face is bare. */
export const slantMm = (ending: Ending, inward: Vector, face: Face): number =>
  insetMm(ending, inward, { ...face, boardMm: 0 }) + 0;

/** The direction along a plane away from a face, of the length that the plane leaves of the face's normal. */
export const alongPlane = (normal: Vector, of: Vector): Vector =>
  subtract(of, scale(normal, dot(of, normal)));

export const moved = (from: Vector, by: Vector, mm: number): Vector => add(from, scale(by, mm));
