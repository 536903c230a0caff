/*
 * What stands along an edge of a surface: a wall, the floor, or another surface. A tray has the same ceiling on all its
 * sides, and a tape must say which: such an edge is named by its neighbour and the wall that lies that way. Members at
 * an angle are measured from a corner or a mark, which is named by two walls. No name of a room file holds a dot or a
 * stroke.
 */

const BETWEEN = ".";
const CORNER = "/";
const MARK = "//";

export const sidedName = (name: string, side: string): string => `${name}${BETWEEN}${side}`;

export interface EdgeName {
  readonly name: string;
  /** The wall on whose side it is; null for an edge that is the only one with its neighbour. */
  readonly side: string | null;
}

export function edgeNameOf(along: string): EdgeName {
  const [name = along, side] = along.split(BETWEEN);
  return { name, side: side ?? null };
}

/** A point on a surface by the two walls that its tapes hook on: their corner, or a mark some way off it. */
export interface PointName {
  readonly walls: readonly [string, string];
  readonly isCorner: boolean;
}

export const pointName = ({ walls, isCorner }: PointName): string => walls.join(isCorner ? CORNER : MARK);

/** The walls that name a point; null for what is no name of a point. */
export function pointNameOf(name: string): PointName | null {
  const isCorner = !name.includes(MARK);
  const [first, second] = name.split(isCorner ? CORNER : MARK);
  return first === undefined || second === undefined ? null : { walls: [first, second], isCorner };
}
