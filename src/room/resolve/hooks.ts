import { EPSILON_MM } from "../../geometry/epsilon.js";
import { toSurface } from "../../geometry/frame.js";
import { add, scale } from "../../geometry/vector.js";
import type { Edge } from "../room.js";
import { isParallel } from "./planes.js";
import type { Shell, Wall } from "./shell.js";
import type { BareSurface } from "./surfaces.js";

/**
 * The lines along which members or joints of a surface may be measured: its own edges along walls and the floor, and on
 * a level ceiling the other walls too, since a tape passes below what is between.
 */
export function linesToMeasureFrom(surface: BareSurface, { walls }: Shell): readonly Edge[] {
  const own = surface.edges.filter(
    ({ along }) => along === "floor" || walls.some(({ name }) => name === along),
  );
  if (!isLevel(surface)) return own;
  const others = walls.filter(({ name }) => !own.some(({ along }) => along === name));
  return [...own, ...others.map((wall) => lineOf(wall, surface))];
}

const isLevel = ({ kind, frame }: BareSurface): boolean =>
  kind === "ceiling" && isParallel(frame.n, { x: 0, y: 0, z: 1 });

function lineOf({ name, frame, lengthMm, boardMm }: Wall, surface: BareSurface): Edge {
  const end = add(frame.origin, scale(frame.u, lengthMm));
  return {
    along: name,
    from: toSurface(surface.frame, frame.origin),
    to: toSurface(surface.frame, end),
    boardMm,
    slantMm: 0,
  };
}

/** Whether the line runs along an axis of its surface. */
export const runsAlong = ({ from, to }: Edge, axis: "u" | "v"): boolean => {
  const across = axis === "u" ? "v" : "u";
  return Math.abs(from[across] - to[across]) <= EPSILON_MM;
};
