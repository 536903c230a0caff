/*
 * What stands along an edge of a surface: a wall, the floor, or another surface. A tray has the same ceiling on all its
 * sides, and a tape must say which: such an edge is named by its neighbour and the wall that lies that way. No name of
 * a room file holds a dot.
 */

const BETWEEN = ".";

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
