import type { Problem } from "../../findings/complaint.js";
import { pointName } from "../../findings/edge-name.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import { minus, outer, surfacePoint } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Edge, Path } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import { linesToMeasureFrom } from "./hooks.js";
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

interface Asked extends Place {
  /** The way that they run where the file says nothing of it. */
  readonly usual: SurfacePoint;
}

/** Measured from a wall that they run along, or square to themselves from a corner or a mark. */
export function runOf({ run, from }: RunFile, asked: Asked): Resolved<Run> {
  const { surface, shell, path, usual } = asked;
  const direction = run === undefined ? usual : directionOfRun(run);
  const walls = edgesToMeasureFrom(surface, direction, shell);
  if (typeof from !== "string") {
    if (direction !== null && surface.kind === "ceiling") return fromPoint(from, direction, asked);
    return refused(wrongFrom(Object.keys(from).join(", "), walls, path));
  }
  const edge = walls.find(({ along }) => along === from);
  if (edge === undefined)
    return refused(walls.length === 0 ? noPoint(from, path) : wrongFrom(from, walls, path));
  const shiftMm = shell.measuredTo === "finish" ? edge.boardMm : 0;
  return resolved({ strip: stripOf(surface, edge), from, shiftMm });
}

/** Along a ceiling's u, toward the left, and v, toward the front: an angle turns the left end toward the front. */
function directionOfRun(run: NonNullable<RunFile["run"]>): SurfacePoint | null {
  if (run === "along") return null;
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

/** Walls, or the floor, that lie along the direction; any wall where it is not given. */
function edgesToMeasureFrom(
  surface: BareSurface,
  direction: SurfacePoint | null,
  shell: Shell,
): readonly Edge[] {
  const lines = linesToMeasureFrom(surface, shell);
  if (direction === null) return lines.filter(({ along }) => along !== "floor");
  return lines.filter(({ from, to }) => Math.abs(outer(minus(to, from), direction)) <= EPSILON_MM);
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
