import type { Area } from "../../geometry/shape.js";
import type { Path, Room, SurfaceSpot } from "../room.js";
import type { AvoidFile, ViaFile } from "../schema/cabling.js";
import type { RoomFile } from "../schema.js";
import { shown } from "../shown.js";
import { suggest } from "../suggest.js";
import { rectangleBetween } from "./obstructions.js";
import { all, andThen, type Resolved, refused, resolved, together } from "./resolved.js";
import type { Shell } from "./shell.js";
import { fixOn, type GroundSurface } from "./tapes.js";

export interface CablingPlace {
  readonly shell: Shell;
  readonly surfaces: readonly GroundSurface[];
}

/** Where the file lets no cable lie. */
export function avoidOf({ cable }: RoomFile, place: CablingPlace): Resolved<Room["cable"]["avoid"]> {
  return all((cable?.avoid ?? []).map((entry, index) => areaOn(entry, place, ["cable", "avoid", index])));
}

function areaOn(
  { on, corner, opposite }: AvoidFile,
  place: CablingPlace,
  path: Path,
): Resolved<{ readonly surface: string; readonly area: Area }> {
  const surface = surfaceNamed(on, place, path);
  if (!surface.ok) return surface;
  const corners = together({
    corner: fixOn(corner, surface.value, { shell: place.shell, path: [...path, "corner"] }),
    opposite: fixOn(opposite, surface.value, { shell: place.shell, path: [...path, "opposite"] }),
  });
  return andThen(corners, (found) => ({
    surface: on,
    area: rectangleBetween(found.corner.centre, found.opposite.centre),
  }));
}

/** Points that a cable goes by; `path` is that of their list. */
export function viaOf(
  entries: readonly ViaFile[],
  place: CablingPlace,
  path: Path,
): Resolved<readonly SurfaceSpot[]> {
  return all(
    entries.map(({ on, at }, index) => {
      const surface = surfaceNamed(on, place, [...path, index]);
      if (!surface.ok) return surface;
      const fixed = fixOn(at, surface.value, { shell: place.shell, path: [...path, index, "at"] });
      return andThen(fixed, ({ centre }) => ({ surface: on, at: centre }));
    }),
  );
}

function surfaceNamed(on: string, { surfaces }: CablingPlace, path: Path): Resolved<GroundSurface> {
  const surface = surfaces.find(({ name }) => name === on);
  if (surface !== undefined) return resolved(surface);
  const choices = surfaces.map(({ name }) => name);
  const figures = { of: "surface", typed: shown(on), suggestion: suggest(on, choices), choices } as const;
  return refused({ code: "unknown-name", path: [...path, "on"], at: "value", figures });
}
