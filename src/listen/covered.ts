import type { Region } from "../geometry/clip.js";
import { toWorld } from "../geometry/frame.js";
import { extentOf, holdsTest } from "../geometry/region.js";
import { surfacePoint } from "../geometry/surface-point.js";
import type { SurfacePoint, Vector } from "../geometry/vector.js";
import { type CoveredArea, type Room, type Surface, surfaceNamed } from "../room/room.js";
import { type Spread, sourceOf, spreadOver } from "./level-together.js";
import type { Mounted } from "./mounted.js";
import { type Drive, driveOf } from "./power.js";

/**
 * Ears all over an area: the middles of about so many equal cells that lie in it, plumb under the ceiling at the ears'
 * height. Cells are counted from the middle of the area, so that an area and its mirror image are listened to alike.
 */
export function earsOver(area: CoveredArea, surface: Surface, about: number): readonly Vector[] {
  return gridOver(area.region, about).map((at) => ({
    ...toWorld(surface.frame, at, surface.boardMm),
    z: area.earMm,
  }));
}

function gridOver(region: Region, about: number): readonly SurfacePoint[] {
  const { least, most } = extentOf(region);
  const [across, up] = [most.u - least.u, most.v - least.v];
  const sideMm = Math.sqrt((across * up) / about);
  const columns = Math.max(1, Math.round(across / sideMm));
  const rows = Math.max(1, Math.round(up / sideMm));
  const holds = holdsTest(region);
  return Array.from({ length: rows * columns }, (_, index) => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    return surfacePoint(least.u + ((column + 0.5) / columns) * across, least.v + ((row + 0.5) / rows) * up);
  }).filter(holds);
}

/** Points that a spread is told from. Our own choice: more change no figure that is shown. */
const EARS = 4000;

/** How even the level of these loudspeakers is over an area. */
export const spreadIn = (area: CoveredArea, surface: Surface, mounted: readonly Mounted[]): Spread =>
  spreadOver(mounted.map(sourceOf), earsOver(area, surface, EARS));

/** An area with the loudspeakers that fill it. */
export interface Coverage {
  readonly area: CoveredArea;
  readonly mounted: readonly Mounted[];
  /** Null while none does. */
  readonly spread: Spread | null;
  /** Of each, for the target as the mean over the area; null where sensitivity or impedance is not stated. */
  readonly drive: Drive | null;
}

/** Every area of a room with those of its loudspeakers that have a position. */
export function coverageOf(room: Room, all: readonly Mounted[]): readonly Coverage[] {
  return room.areas.map((area) => {
    const mounted = all.filter(({ speaker }) => speaker.area === area.name);
    const surface = surfaceNamed(room, area.surface);
    const spread = mounted.length === 0 ? null : spreadIn(area, surface, mounted);
    return { area, mounted, spread, drive: spread && driveOver(area, spread, room.listening) };
  });
}

/** What each of an area's loudspeakers needs, all driven alike, for the target as the mean over the area. */
export const driveOver = (
  { model }: CoveredArea,
  { meanDb }: Spread,
  listening: Room["listening"],
): Drive | null => driveOf(model, meanDb - (model.sensitivityDb ?? 0), listening);
