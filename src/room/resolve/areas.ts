import type { Problem } from "../../findings/complaint.js";
import { InternalError } from "../../findings/internal-error.js";
import { areaMm2, difference, intersection, type Region, union } from "../../geometry/clip.js";
import { rectangle } from "../../geometry/convex.js";
import { toWorld } from "../../geometry/frame.js";
import { crossingSides, twiceAreaMm2 } from "../../geometry/ring.js";
import type { Polygon } from "../../geometry/shape.js";
import { coverageDiameterMm, type Overlap, spacingMm } from "../../standards/coverage-spacing.js";
import { AREAS_OVER_EACH_OTHER } from "../../standards/house-limits.js";
import type { CoveredArea, Model, Path } from "../room.js";
import type { AreaFile } from "../schema/areas.js";
import type { RoomFile } from "../schema.js";
import { all, andThen, type Resolved, refused, resolved, together } from "./resolved.js";
import type { Shell } from "./shell.js";
import type { BareSurface } from "./surfaces.js";
import { fixOn } from "./tapes.js";

export interface AreaPlace {
  readonly shell: Shell;
  readonly surfaces: readonly BareSurface[];
  readonly models: ReadonlyMap<string, Model>;
}

/** The areas that are filled evenly, or why one cannot be. */
export function areasOf(file: RoomFile, place: AreaPlace): Resolved<readonly CoveredArea[]> {
  const floorMm = file.floor?.build_up ?? 0;
  const areas = all(
    (file.areas ?? []).map((entry, index) => areaOf(entry, place, { floorMm, path: ["areas", index] })),
  );
  if (!areas.ok) return areas;
  const tooMany = laidOverTooMany(areas.value);
  return tooMany.length > 0 ? refused(...tooMany) : areas;
}

/** Those that lie, with some part of them, where so many lie already as may lie over each other. */
function laidOverTooMany(areas: readonly CoveredArea[]): readonly Problem[] {
  const known = new Map<string, Region[]>();
  return areas.flatMap(({ name, surface, region, path }): readonly Problem[] => {
    const layers = known.get(surface) ?? [];
    known.set(surface, layers);
    if (isLaidOn(layers, region)) return [];
    return [
      { code: "area-not-fillable", path, at: "value", figures: { area: name, because: "over-others" } },
    ];
  });
}

/**
 * Lays an area on those before it: the first layer is where any lies, the second where two lie over each other, and so
 * on. False where that makes more layers than there may be.
 */
function isLaidOn(layers: Region[], area: Region): boolean {
  let laid = area;
  for (let index = 0; index < AREAS_OVER_EACH_OTHER; index += 1) {
    const layer = layers[index];
    layers[index] = layer === undefined ? laid : union(layer, laid);
    if (layer === undefined) return true;
    laid = intersection(layer, laid);
    if (areaMm2(laid) < LEAST_AREA_MM2) return true;
  }
  return false;
}

interface At {
  /** What is laid on the floor later raises the ears. */
  readonly floorMm: number;
  readonly path: Path;
}

type Because = Extract<Problem, { code: "area-not-fillable" }>["figures"]["because"];

/** The usual spacing where the file says nothing. */
const USUAL_OVERLAP: Overlap = "no-gap";

function areaOf(entry: AreaFile, place: AreaPlace, at: At): Resolved<CoveredArea> {
  const surface = place.surfaces.find(({ name }) => name === entry.on);
  const model = place.models.get(entry.model);
  if (surface === undefined || model === undefined) throw new InternalError(`nothing for ${entry.name}`);
  const unfit = unfitness(entry, surface, model);
  if (unfit !== null) return refusal(entry, at, unfit);
  const outline = outlineOf(entry, surface, { shell: place.shell, path: at.path });
  return outline.ok ? within(outline.value, { entry, surface, model, at }) : outline;
}

/** The key that is at fault, and why; the whole entry where it is no single one. */
type Unfit = readonly [key: "on" | "model" | "ear" | null, because: Because];

function refusal(entry: AreaFile, { path }: At, [key, because]: Unfit): Resolved<never> {
  const figures = { area: entry.name, because };
  return refused({
    code: "area-not-fillable",
    path: key === null ? path : [...path, key],
    at: "value",
    figures,
  });
}

/** What keeps this model from filling anything there. */
function unfitness(entry: AreaFile, { kind }: BareSurface, model: Model): Unfit | null {
  const { baffleTiltDeg, coverageDeg } = model;
  if (kind !== "ceiling") return ["on", "not-a-ceiling"];
  if (baffleTiltDeg !== 0) return ["model", "tilted"];
  if (coverageDeg === null) return ["model", "no-coverage"];
  const isStated = typeof entry.spacing === "number";
  return !isStated && coverageDeg >= HALF_TURN_DEG ? ["model", "too-wide"] : null;
}

interface Found {
  readonly entry: AreaFile;
  readonly surface: BareSurface;
  readonly model: Model;
  readonly at: At;
}

/** The area that an outline takes of the ceiling. */
function within(outline: Polygon, { entry, surface, model, at }: Found): Resolved<CoveredArea> {
  if (!isOutline(outline)) return refusal(entry, at, [null, "no-area"]);
  const region = regionIn(outline, surface);
  if (areaMm2(region) < LEAST_AREA_MM2) return refusal(entry, at, [null, "off-ceiling"]);
  const earMm = at.floorMm + entry.ear;
  const dropMm = lowestMm(region, surface) - earMm;
  if (dropMm <= 0) return refusal(entry, at, ["ear", "ears-too-high"]);
  return resolved({
    name: entry.name,
    surface: surface.name,
    model,
    region,
    ...spacingOf(entry, model, dropMm),
    earMm,
    dropMm,
    prefix: entry.prefix ?? "S",
    path: at.path,
  });
}

type Spaced = Pick<CoveredArea, "pattern" | "overlap" | "spacingMm">;

function spacingOf(entry: AreaFile, { coverageDeg }: Model, dropMm: number): Spaced {
  const pattern = entry.pattern ?? "square";
  const typed = entry.spacing ?? USUAL_OVERLAP;
  if (typeof typed === "number") return { pattern, overlap: null, spacingMm: typed };
  const diameterMm = coverageDiameterMm(dropMm, coverageDeg ?? 0);
  return { pattern, overlap: typed, spacingMm: spacingMm(pattern, typed, diameterMm) };
}

/** What looks all round, or further, has no circle. */
const HALF_TURN_DEG = 180;
/** Less of a ceiling is none: what rounding leaves. */
const LEAST_AREA_MM2 = 100;

interface Where {
  readonly shell: Shell;
  readonly path: Path;
}

function outlineOf(entry: AreaFile, surface: BareSurface, { shell, path }: Where): Resolved<Polygon> {
  const fixed = (typed: Readonly<Record<string, number>>, key: readonly (string | number)[]) =>
    andThen(fixOn(typed, surface, { shell, path: [...path, ...key] }), ({ centre }) => centre);
  if ("corners" in entry) return all(entry.corners.map((corner, index) => fixed(corner, ["corners", index])));
  if (!("corner" in entry)) return resolved(surface.finished);
  const corners = together({
    corner: fixed(entry.corner, ["corner"]),
    opposite: fixed(entry.opposite, ["opposite"]),
  });
  return andThen(corners, ({ corner: a, opposite: b }) =>
    rectangle(
      { u: Math.min(a.u, b.u), v: Math.min(a.v, b.v) },
      { u: Math.max(a.u, b.u), v: Math.max(a.v, b.v) },
    ),
  );
}

const isOutline = (outline: Polygon): boolean =>
  Math.abs(twiceAreaMm2(outline)) > 2 * LEAST_AREA_MM2 && crossingSides(outline) === null;

function regionIn(outline: Polygon, { finished, voids }: BareSurface): Region {
  const inside = intersection([outline], [finished]);
  return voids.length === 0
    ? inside
    : difference(
        inside,
        voids.map((each) => each.finished),
      );
}

const lowestMm = (region: Region, { frame, boardMm }: BareSurface): number =>
  Math.min(...region.flat().map((corner) => toWorld(frame, corner, boardMm).z));
