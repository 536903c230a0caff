import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Area } from "../../geometry/shape.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Obstruction, Path } from "../room.js";
import type { ObstructionFile } from "../schema/obstructions.js";
import { andThen, type Resolved, refused, together } from "./resolved.js";
import type { Shell } from "./shell.js";
import { fixOn, type GroundSurface } from "./tapes.js";

export interface ObstructionPlace {
  readonly surface: GroundSurface;
  readonly shell: Shell;
  readonly path: Path;
}

/** An obstruction in the (u, v) of the surface that it stands in. */
export function obstructionOf(entry: ObstructionFile, place: ObstructionPlace): Resolved<Obstruction> {
  return andThen(areaOf(entry, place), (area) => ({
    name: entry.name,
    area,
    keepMm: entry.keep ?? 0,
    behindMm: entry.behind ?? null,
    path: place.path,
  }));
}

function areaOf(entry: ObstructionFile, { surface, shell, path }: ObstructionPlace): Resolved<Area> {
  if ("round" in entry) {
    const centre = fixOn(entry.at, surface, { shell, path: [...path, "at"] });
    return andThen(centre, (fixed) => ({ kind: "round", centre: fixed.centre, diameterMm: entry.round }));
  }
  const corners = together({
    corner: fixOn(entry.corner, surface, { shell, path: [...path, "corner"] }),
    opposite: fixOn(entry.opposite, surface, { shell, path: [...path, "opposite"] }),
  });
  return refusing(
    andThen(corners, ({ corner, opposite }) => rectangleBetween(corner.centre, opposite.centre)),
    [...path, "opposite"],
  );
}

/** A figure that was typed twice leaves a line of what has a width, and that would be in nobody's way. */
function refusing(area: Resolved<Area>, path: Path): Resolved<Area> {
  if (!area.ok || area.value.kind === "round") return area;
  const { min, max } = area.value;
  const isArea = max.u - min.u > EPSILON_MM && max.v - min.v > EPSILON_MM;
  return isArea ? area : refused({ code: "corners-in-line", path, at: "value", figures: {} });
}

/** The rectangle whose opposite corners these are. */
export const rectangleBetween = (a: SurfacePoint, b: SurfacePoint): Area => ({
  kind: "rectangle",
  min: { u: Math.min(a.u, b.u), v: Math.min(a.v, b.v) },
  max: { u: Math.max(a.u, b.u), v: Math.max(a.v, b.v) },
});
