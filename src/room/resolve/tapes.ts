import type { Problem } from "../../findings/complaint.js";
import { InternalError } from "../../findings/internal-error.js";
import { toSurface } from "../../geometry/frame.js";
import { dot, length, type SurfacePoint, type Vector, vector } from "../../geometry/vector.js";
import type { Edge, Path, Surface, Tape } from "../room.js";
import { shown } from "../shown.js";
import { alongPlane, moved } from "./meeting.js";
import { isParallel, meetingPoint, type Plane, planeThrough } from "./planes.js";
import { andThen, type Resolved, refused, resolved } from "./resolved.js";
import {
  type Ceiling,
  ceilingOver,
  type Face,
  faceOfWall,
  heightUnder,
  type Shell,
  type Wall,
} from "./shell.js";

/** Tapes by the key that each was typed under, in mm, in the order that they were typed. */
export type TapesFile = Readonly<Record<string, number>>;

const UP = vector(0, 0, 1);
const FLOOR = "floor";
const CEILING = "ceiling";

/** Where the hook of a tape typed under this key rests. */
const hookOf = (key: string): string => (key === "up" ? FLOOR : key === "down" ? CEILING : key);

/** The tapes as a person holds them. */
export const tapesOf = (typed: TapesFile): readonly Tape[] =>
  Object.entries(typed).map(([key, mm]) => ({ from: hookOf(key), mm }));

/**
 * Everything at the tape's end. From a wall the tape lies on the ground, square to the line in which the ground meets
 * that wall's face, on the faces that tapes hook on; from the floor it is plumb.
 */
function planeOf({ from, mm }: Tape, ground: Ground, shell: Shell): Plane {
  if (from === FLOOR) return { normal: UP, offsetMm: mm };
  const { normal, on, boardMm } = faceNamed(from, shell);
  const { plane, boardMm: ownMm } = ground;
  const faces = shell.measuredTo === "finish" ? boardMm - ownMm * dot(normal, plane.normal) : 0;
  const along = length(alongPlane(plane.normal, normal));
  return { normal, offsetMm: dot(normal, on) + faces + mm * along };
}

/** A wall's face. Names were looked up while reading. */
function faceNamed(name: string, { walls }: Shell): Face {
  const wall = walls.find((candidate) => candidate.name === name);
  if (wall === undefined) throw new InternalError(`no wall named ${name}`);
  return faceOfWall(wall);
}

/** What tapes lie on: a surface, or a level in the room. */
export interface Ground {
  readonly name: string;
  readonly plane: Plane;
  readonly boardMm: number;
  /** What the surface meets; null for a level. */
  readonly edges: readonly Edge[] | null;
}

export type GroundSurface = Pick<Surface, "name" | "kind" | "frame" | "boardMm" | "edges">;

export const groundOf = ({ name, frame, boardMm, edges }: GroundSurface): Ground => ({
  name,
  plane: planeThrough(frame.origin, frame.n),
  boardMm,
  edges,
});

/** Keys that say something about a point of the ground, of all that a tape may be typed under. */
function keysAlong(ground: Ground, shell: Shell): readonly string[] {
  const walls = shell.walls.filter((wall) => canHook(wall, ground)).map(({ name }) => name);
  const isLevel = isParallel(UP, ground.plane.normal);
  const isWall = Math.abs(ground.plane.normal.z) < SQUARE;
  return [...walls, ...(isLevel ? [] : ["up"]), ...(isWall ? ["down"] : [])];
}

/** On a slope a tape can only hook where the slope meets the wall; over a level it may pass above what is between. */
function canHook({ name, frame }: Wall, { plane, edges }: Ground): boolean {
  if (isParallel(frame.n, plane.normal)) return false;
  const isSlope = Math.abs(plane.normal.z) > SQUARE && !isParallel(UP, plane.normal);
  return !isSlope || (edges ?? []).some(({ along }) => along === name);
}

/** Cosine of an angle that is a right one. */
const SQUARE = 1e-6;

/** Complaints about tapes that say nothing about the ground; `path` is that of their map. */
export function strayTapes(typed: TapesFile, ground: Ground, { shell, path }: Where): readonly Problem[] {
  const choices = keysAlong(ground, shell);
  return Object.keys(typed)
    .filter((key) => !choices.includes(key))
    .map((tape) => ({
      code: "tape-not-here",
      path: [...path, tape],
      at: "key",
      figures: { tape: shown(tape), surface: ground.name, choices },
    }));
}

export interface Where {
  readonly shell: Shell;
  readonly path: Path;
}

export interface Fixed {
  readonly point: Vector;
  readonly tapes: readonly [Tape, Tape];
}

/** The point of the ground that two tapes fix. */
export function fix(typed: TapesFile, ground: Ground, where: Where): Resolved<Fixed> {
  const { shell, path } = where;
  const stray = strayTapes(typed, ground, where);
  if (stray.length > 0) return refused(...stray);
  const given = Object.keys(typed).map(shown);
  const [first, second, ...more] = tapesOf(typed);
  if (first === undefined || second === undefined || more.length > 0) {
    return refused({ code: "tapes-count", path, at: "value", figures: { given, wanted: 2 } });
  }
  const point = meetingPoint([
    endOf(first, second, ground, shell),
    endOf(second, first, ground, shell),
    ground.plane,
  ]);
  return point === null
    ? refused({ code: "tapes-parallel", path, at: "value", figures: { given } })
    : resolved({ point, tapes: [first, second] });
}

/** A tape's end; one that hangs from the ceiling hangs from the ceiling that is there, which the other tape tells. */
function endOf(tape: Tape, other: Tape, ground: Ground, shell: Shell): Plane {
  if (tape.from !== CEILING) return planeOf(tape, ground, shell);
  const { normal } = ground.plane;
  const below = meetingPoint([
    other.from === CEILING ? FLOOR_PLANE : planeOf(other, ground, shell),
    ground.plane,
    FLOOR_PLANE,
  ]);
  const under = below === null ? null : ceilingOver(shell, moved(below, normal, INTO_ROOM_MM));
  return { normal: UP, offsetMm: hangingMm(under, below ?? ground.plane.normal, shell) - tape.mm };
}

/** A wall stands under the edge of its ceiling: what hangs over it is asked for this far inside. */
const INTO_ROOM_MM = 1;
const FLOOR_PLANE: Plane = { normal: UP, offsetMm: 0 };

/** Height that a tape from the ceiling over a point hangs from; where nothing is over it, from the first one. */
function hangingMm(ceiling: Ceiling | null, point: Vector, shell: Shell): number {
  const over = ceiling ?? shell.ceilings[0];
  if (over === undefined) throw new InternalError("a room without a ceiling");
  const boardMm = shell.measuredTo === "finish" ? over.boardMm / Math.abs(over.frame.n.z) : 0;
  return heightUnder(over, point) - boardMm;
}

/** The same on a surface, in its own (u, v). */
export function fixOn(
  typed: TapesFile,
  surface: GroundSurface,
  where: Where,
): Resolved<{ readonly centre: SurfacePoint; readonly tapes: readonly [Tape, Tape] }> {
  const fixed = fix(typed, groundOf(surface), where);
  return andThen(fixed, ({ point, tapes }) => ({ centre: toSurface(surface.frame, point), tapes }));
}

/** A level in the room, so far above the floor as it stands. */
export const level = (heightMm: number): Ground => ({
  name: FLOOR,
  plane: planeThrough(vector(0, 0, heightMm), UP),
  boardMm: 0,
  edges: null,
});

/** A point in the room, by two walls and a height. */
export const fixAtHeight = (typed: TapesFile, heightMm: number, where: Where): Resolved<Vector> =>
  andThen(fix(typed, level(heightMm), where), ({ point }) => point);

/** A point in the room by its tapes alone: two walls, and `up` or `down`. */
export function fixInRoom(typed: TapesFile, where: Where): Resolved<Vector> {
  const { up, down, ...plan } = typed;
  const given = Object.keys(typed).map(shown);
  if ((up === undefined) === (down === undefined)) {
    return refused({ code: "tapes-count", path: where.path, at: "value", figures: { given, wanted: 3 } });
  }
  return andThen(fixAtHeight(plan, up ?? 0, where), (point) =>
    down === undefined
      ? point
      : { ...point, z: hangingMm(ceilingOver(where.shell, point), point, where.shell) - down },
  );
}
