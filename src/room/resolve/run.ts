import type { Problem } from "../../findings/complaint.js";
import { pointName } from "../../findings/edge-name.js";
import { surfacePoint } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Edge, Path } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import { linesToMeasureFrom, runsAlong } from "./hooks.js";
import { andThen, type Resolved, refused, resolved } from "./resolved.js";
import type { Shell } from "./shell.js";
import { type Strip, stripOf, stripThrough } from "./strip.js";
import type { BareSurface } from "./surfaces.js";
import { fixOn, type TapesFile } from "./tapes.js";

/** Which way members run, and the line that their figures are measured from. */
export interface Run {
  readonly strip: Strip;
  /** A wall's name, or that of a corner or a mark. */
  readonly from: string;
  /** From the framing face of what is measured from to the face that its tapes hook on. */
  readonly shiftMm: number;
}

/** What tells how members run and what they are measured from. */
export type RunFile = Pick<FramingFile, "run" | "from">;

interface Place {
  readonly surface: BareSurface;
  readonly shell: Shell;
  readonly path: Path;
}

/** Measured from a wall that they run along, or square to themselves from a corner or a mark. */
export function runOf({ run, from }: RunFile, place: Place): Resolved<Run> {
  const { surface, shell } = place;
  const walls = edgesToMeasureFrom(surface, run, shell);
  const direction = surface.kind === "ceiling" ? directionOfRun(run) : null;
  if (typeof from !== "string") {
    if (direction !== null) return fromPoint(from, direction, place);
    return refused(wrongFrom(Object.keys(from).join(", "), walls, place.path));
  }
  if (typeof run === "number") return refused(noPoint(from, place.path));
  const edge = walls.find(({ along }) => along === from);
  if (edge === undefined) return refused(wrongFrom(from, walls, place.path));
  const shiftMm = shell.measuredTo === "finish" ? edge.boardMm : 0;
  return resolved({ strip: stripOf(surface, edge), from, shiftMm });
}

/** Along a ceiling's u, toward the left, and v, toward the front: an angle turns the left end toward the front. */
function directionOfRun(run: RunFile["run"]): SurfacePoint | null {
  if (run === undefined || run === "along") return null;
  if (run === "left-right") return surfacePoint(1, 0);
  if (run === "front-back") return surfacePoint(0, 1);
  const radians = (run * Math.PI) / 180;
  return surfacePoint(Math.cos(radians), Math.sin(radians));
}

/** A point that two tapes fix lies where they end, on whichever faces they hook. */
function fromPoint(
  tapes: TapesFile,
  direction: SurfacePoint,
  { surface, shell, path }: Place,
): Resolved<Run> {
  const fixed = fixOn(tapes, surface, { shell, path: [...path, "from"] });
  return andThen(fixed, ({ centre, tapes: [first, second] }) => ({
    strip: stripThrough(surface, centre, direction),
    from: pointName({ walls: [first.from, second.from], isCorner: first.mm === 0 && second.mm === 0 }),
    shiftMm: 0,
  }));
}

/** Walls that the members can be measured from: the ones that they run along. */
function edgesToMeasureFrom(surface: BareSurface, run: RunFile["run"], shell: Shell): readonly Edge[] {
  const lines = linesToMeasureFrom(surface, shell).filter(({ along }) => along !== "floor");
  if (surface.kind === "wall") return lines.filter((line) => runsAlong(line, "v"));
  if (run === "along") return lines;
  return lines.filter((line) => runsAlong(line, run === "left-right" ? "u" : "v"));
}

function wrongFrom(from: string, lines: readonly Edge[], path: Path): Problem {
  const choices = [...new Set(lines.map(({ along }) => along))];
  return { code: "framing-from", path: [...path, "from"], at: "value", figures: { from, choices } };
}

const noPoint = (from: string, path: Path): Problem => ({
  code: "framing-from-point",
  path: [...path, "from"],
  at: "value",
  figures: { from },
});
