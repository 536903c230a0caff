import type { Problem } from "../../findings/complaint.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Shape } from "../../geometry/shape.js";
import type { Model, Path } from "../room.js";
import type { ModelFile, ShapeFile } from "../schema/models.js";
import type { RoomFile } from "../schema.js";
import { all, andThen, type Resolved, refused, resolved } from "./resolved.js";

/** Every model of the file by its name. */
export function modelsOf({ models }: RoomFile): Resolved<ReadonlyMap<string, Model>> {
  const entries = Object.entries(models ?? {}).map(([name, entry]) => modelOf(name, entry));
  return andThen(all(entries), (found) => new Map(found.map((model) => [model.name, model])));
}

function modelOf(name: string, entry: ModelFile): Resolved<Model> {
  const path: Path = ["models", name];
  const [opening, flange] = [shapeOf(entry.opening), shapeOf(entry.flange)];
  const problems = [...coverProblems(opening, flange, path), ...rangeProblems(entry, path)];
  if (problems.length > 0) return refused(...problems);
  return resolved({
    name,
    opening,
    flange,
    depthMm: entry.depth,
    clampReachMm: entry.clamp_reach,
    boardRangeMm: entry.board_range ?? null,
    baffleTiltDeg: entry.baffle_tilt ?? 0,
    coverageDeg: entry.coverage ?? null,
    sensitivityDb: entry.sensitivity ?? null,
    impedanceOhm: entry.impedance ?? null,
    minimumImpedanceOhm: entry.minimum_impedance ?? null,
    powerW: entry.power ?? null,
    weightKg: entry.weight ?? null,
    terminal: entry.terminal ?? null,
    conductors: entry.conductors ?? [],
    stripMm: entry.strip ?? null,
  });
}

const shapeOf = (shape: ShapeFile): Shape =>
  "round" in shape
    ? { kind: "round", diameterMm: shape.round }
    : { kind: "rectangle", widthMm: shape.width, heightMm: shape.height };

/** A flange that does not reach past the opening everywhere would fall through it: a figure is wrong. */
function coverProblems(opening: Shape, flange: Shape, path: Path): readonly Problem[] {
  const short = sidesToCompare(opening, flange).find(
    ({ flangeMm, openingMm }) => flangeMm < openingMm - EPSILON_MM,
  );
  if (short === undefined) return [];
  return [{ code: "smaller-than-opening", path: [...path, "flange"], at: "value", figures: short }];
}

interface Sides {
  readonly flangeMm: number;
  readonly openingMm: number;
}

function sidesToCompare(opening: Shape, flange: Shape): readonly Sides[] {
  if (flange.kind === "round") {
    // Only a circle through its corners covers a rectangle.
    const openingMm =
      opening.kind === "round" ? opening.diameterMm : Math.hypot(opening.widthMm, opening.heightMm);
    return [{ flangeMm: flange.diameterMm, openingMm }];
  }
  const [width, height] =
    opening.kind === "round" ? [opening.diameterMm, opening.diameterMm] : [opening.widthMm, opening.heightMm];
  return [
    { flangeMm: flange.widthMm, openingMm: width },
    { flangeMm: flange.heightMm, openingMm: height },
  ];
}

function rangeProblems({ board_range }: ModelFile, path: Path): readonly Problem[] {
  if (board_range === undefined || board_range[0] <= board_range[1]) return [];
  const [leastMm, mostMm] = board_range;
  return [
    { code: "range-upside-down", path: [...path, "board_range"], at: "value", figures: { leastMm, mostMm } },
  ];
}
