import type { Problem } from "../../findings/complaint.js";
import { InternalError } from "../../findings/internal-error.js";
import { type Frame, toSurface } from "../../geometry/frame.js";
import { type SurfacePoint, type Vector, vector } from "../../geometry/vector.js";
import type { Path, Tape } from "../room.js";
import { isParallel, meetingPoint, type Plane, planeThrough } from "./planes.js";
import { andThen, type Resolved, refused, resolved } from "./resolved.js";
import type { Shell } from "./shell.js";

/** Tapes by the key that each was typed under, in mm, in the order that they were typed. */
export type TapesFile = Readonly<Record<string, number>>;

const UP = vector(0, 0, 1);
const ON_FLOOR = vector(0, 0, 0);

/** Where the hook of a tape typed under this key rests. */
const hookOf = (key: string): string => (key === "up" ? "floor" : key === "down" ? "ceiling" : key);

/** The tapes as a person holds them. */
export const tapesOf = (typed: TapesFile): readonly Tape[] =>
  Object.entries(typed).map(([key, mm]) => ({ from: hookOf(key), mm }));

/** Everything at the tape's end: a plane along the face that it hooks on, as far from it as the tape says. */
function planeOf({ from, mm }: Tape, shell: Shell): Plane {
  const { normal, on, boardMm } = faceNamed(from, shell);
  const plane = planeThrough(on, normal);
  return { normal, offsetMm: plane.offsetMm + mm + (shell.measuredTo === "finish" ? boardMm : 0) };
}

interface Face {
  /** Into the room. */
  readonly normal: Vector;
  /** On the framing. */
  readonly on: Vector;
  readonly boardMm: number;
}

/** A wall, the floor (as it stands: nothing lies on it) or the ceiling. Names were looked up while reading. */
function faceNamed(name: string, { walls, ceiling }: Shell): Face {
  if (name === "floor") return { normal: UP, on: ON_FLOOR, boardMm: 0 };
  if (name === "ceiling")
    return { normal: ceiling.frame.n, on: ceiling.frame.origin, boardMm: ceiling.boardMm };
  const wall = walls.find((candidate) => candidate.name === name);
  if (wall === undefined) throw new InternalError(`no wall named ${name}`);
  return { normal: wall.frame.n, on: wall.frame.origin, boardMm: wall.boardMm };
}

/** What tapes lie on: a surface, or a level in the room. */
export interface Ground {
  readonly name: string;
  readonly plane: Plane;
}

export const groundOf = (name: string, frame: Frame): Ground => ({
  name,
  plane: planeThrough(frame.origin, frame.n),
});

/** Keys that say something about a point of the ground, of all that a tape may be typed under. */
function keysAlong({ plane }: Ground, shell: Shell): readonly string[] {
  const keys = [...shell.walls.map(({ name }) => name), "up", "down"];
  return keys.filter((key) => !isParallel(faceNamed(hookOf(key), shell).normal, plane.normal));
}

/** Complaints about tapes that say nothing about the ground; `path` is that of their map. */
export function strayTapes(typed: TapesFile, ground: Ground, { shell, path }: Where): readonly Problem[] {
  const choices = keysAlong(ground, shell);
  return Object.keys(typed)
    .filter((key) => !choices.includes(key))
    .map((tape) => ({
      code: "tape-not-here",
      path: [...path, tape],
      at: "key",
      figures: { tape, surface: ground.name, choices },
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
  const given = Object.keys(typed);
  const [first, second, ...more] = tapesOf(typed);
  if (first === undefined || second === undefined || more.length > 0) {
    return refused({ code: "tapes-count", path, at: "value", figures: { given, wanted: 2 } });
  }
  const point = meetingPoint([planeOf(first, shell), planeOf(second, shell), ground.plane]);
  return point === null
    ? refused({ code: "tapes-parallel", path, at: "value", figures: { given } })
    : resolved({ point, tapes: [first, second] });
}

/** The same on a surface, in its own (u, v). */
export function fixOn(
  typed: TapesFile,
  surface: { readonly name: string; readonly frame: Frame },
  where: Where,
): Resolved<{ readonly centre: SurfacePoint; readonly tapes: readonly [Tape, Tape] }> {
  const fixed = fix(typed, groundOf(surface.name, surface.frame), where);
  return andThen(fixed, ({ point, tapes }) => ({ centre: toSurface(surface.frame, point), tapes }));
}

/** A level in the room, so far above the floor as it stands. */
export const level = (heightMm: number): Ground => ({
  name: "floor",
  plane: planeThrough(vector(0, 0, heightMm), UP),
});

/** A point in the room, by two walls and a height. */
export const fixAtHeight = (typed: TapesFile, heightMm: number, where: Where): Resolved<Vector> =>
  andThen(fix(typed, level(heightMm), where), ({ point }) => point);

/** A point in the room by its tapes alone: two walls, and `up` or `down`. */
export function fixInRoom(typed: TapesFile, where: Where): Resolved<Vector> {
  const { up, down, ...plan } = typed;
  const given = Object.keys(typed);
  const key = up === undefined ? "down" : "up";
  const heightMm = up ?? down;
  if (heightMm === undefined || (up !== undefined && down !== undefined)) {
    return refused({ code: "tapes-count", path: where.path, at: "value", figures: { given, wanted: 3 } });
  }
  const plane = planeOf({ from: hookOf(key), mm: heightMm }, where.shell);
  return andThen(fix(plan, { name: "floor", plane }, where), ({ point }) => point);
}
