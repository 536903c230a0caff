import { MAIN_CEILING } from "../names.js";
import type { RoomFile } from "../schema.js";

/** From the framing of a wall to its finished face: board, and strapping where there is some. */
export const wallFaceMm = (file: RoomFile, name: string): number =>
  file.board.walls + strappingMm(file, name);

/** The same under a ceiling. */
export const ceilingFaceMm = (file: RoomFile, name: string = MAIN_CEILING): number =>
  file.board.ceiling + strappingMm(file, name);

function strappingMm({ framing }: RoomFile, name: string): number {
  const entry = Object.entries(framing ?? {}).find(([surface]) => surface === name)?.[1];
  const strapping = entry?.strapping ?? 0;
  return typeof strapping === "number" ? strapping : strapping.depth;
}
