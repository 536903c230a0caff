import type { SurfacePoint } from "../geometry/vector.js";
import { tapeLine, tapeMm } from "../place/tapes.js";
import type { Faces, Room, Surface } from "../room/room.js";

/** What a tape from a wall (or the floor, or a ceiling) reads at a point, in mm; null where the surface has no such tape. */
export function readingMm(
  room: Room,
  surface: Surface,
  { from, point, faces }: { from: string; point: SurfacePoint; faces: Faces },
): number | null {
  return hasTape(room, surface, from) ? tapeMm(tapeLine(room, surface, from, faces), point) : null;
}

function hasTape({ walls }: Room, { kind, edges }: Surface, from: string): boolean {
  if (from === "floor") return true;
  const hangsOnWall = from === "ceiling" && kind === "wall";
  return hangsOnWall || walls.includes(from) || edges.some(({ along }) => along === from);
}
