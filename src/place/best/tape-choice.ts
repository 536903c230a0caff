import type { Polygon } from "../../geometry/shape.js";
import { outer, times } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { allEdgesOn, exitThrough } from "../../listen/edges.js";
import type { Room, Surface, Tape } from "../../room/room.js";
import { EXACT_WITHIN_MM } from "../../units/rounding.js";
import { type TapeLine, tapeLine, tapeMm } from "../tapes.js";
import type { Axis } from "./marks.js";

/** A tape that a position is to be given by: free, or held at what the file says. */
export interface ChosenTape {
  readonly line: TapeLine;
  readonly heldMm: number | null;
}

export type ChosenTapes = readonly [ChosenTape, ChosenTape];

/**
 * The two tapes that fix a point: those that are held, and the nearest walls that go with them; on a wall an end wall
 * and the floor. The one that runs across the room comes first, as people say it. Null where the surface has no two.
 */
export function tapesNear(
  room: Room,
  surface: Surface,
  { near, hold }: { readonly near: SurfacePoint; readonly hold: readonly Tape[] },
): ChosenTapes | null {
  const held = hold.map(({ from, mm }): ChosenTape => ({ line: tapeLine(room, surface, from), heldMm: mm }));
  const pair = firstTwo([...held, ...freeTapes(room, surface, near)], held.length);
  if (pair === null) return null;
  const [first, second] = pair;
  return runsAcross(surface, first.line) >= runsAcross(surface, second.line) ? pair : [second, first];
}

/**
 * The first tape and the first of the others that fixes a point with it; in a long room that tapers at its ends none may
 * go with the nearest wall, and then the next that finds one. What is held stays.
 */
function firstTwo(tapes: readonly ChosenTape[], held: number): ChosenTapes | null {
  for (const [index, first] of (held > 0 ? tapes.slice(0, 1) : tapes).entries()) {
    const second = tapes.slice(index + 1).find(({ line }) => crosses(line, first.line));
    if (second !== undefined) return [first, second];
  }
  return null;
}

/** Whether any two tapes fix a point of the surface: on a slope they may all run the same way. */
export function hasTwoTapes(room: Room, surface: Surface): boolean {
  const lines = linesOn(room, surface);
  return lines.some((line, index) => lines.slice(index + 1).some((other) => crosses(line, other)));
}

/** Sine of 30 degrees: tapes that meet at less fix a point badly. */
const LEAST_CROSSING = 0.5;

const crosses = (a: TapeLine, b: TapeLine): boolean =>
  Math.abs(outer(a.direction, b.direction)) >= LEAST_CROSSING;

/**
 * Tapes that may be hooked for a point of the surface: first those that reach it without passing round a corner, the
 * nearest first; of equal ones in the order of the walls.
 */
function freeTapes(room: Room, surface: Surface, near: SurfacePoint): readonly ChosenTape[] {
  const reaches = reachTest(surface);
  return linesOn(room, surface)
    .map((line) => ({ line, readMm: tapeMm(line, near), isReached: reaches(line, near) }))
    .sort((a, b) => rank(a) - rank(b) || differenceMm(Math.abs(a.readMm), Math.abs(b.readMm)))
    .map(({ line }) => ({ line, heldMm: null }));
}

const linesOn = (room: Room, surface: Surface): readonly TapeLine[] =>
  hooksOf(room, surface)
    .map((name) => tapeLine(room, surface, name))
    .filter(({ direction }) => Math.hypot(direction.u, direction.v) > LEAST_CROSSING);

/** Whether a tape reaches a point of the surface without passing round a corner. */
export function reachTest(surface: Surface): (line: TapeLine, point: SurfacePoint) => boolean {
  const edges = allEdgesOn(surface, "finish");
  return ({ from, direction }, point) =>
    from === "floor" ||
    exitThrough(edges, { from: point, direction: times(direction, -1) })?.edge.along === from;
}

/** A wall behind which the point lies cannot be taped from at all. */
const rank = ({ readMm, isReached }: { readonly readMm: number; readonly isReached: boolean }): number =>
  readMm < 0 ? 2 : isReached ? 0 : 1;

/** Walls that a tape over the surface can hook on, and the floor under one that stands up: on a slope only its own. */
function hooksOf({ walls }: Room, { kind, frame, edges }: Surface): readonly string[] {
  const isLevel = kind === "ceiling" && Math.abs(frame.n.z) > LEVEL;
  const own = walls.filter((wall) => edges.some(({ along }) => along === wall));
  if (kind === "wall") return [...walls, "floor"];
  return isLevel ? walls : [...own, "floor"];
}

/** Cosine of what counts as no slope at all. */
const LEVEL = 1 - 1e-9;

const differenceMm = (aMm: number, bMm: number): number =>
  Math.abs(aMm - bMm) <= EXACT_WITHIN_MM ? 0 : aMm - bMm;

/** How far a tape runs left or right in the room, and on a wall along it rather than up. */
function runsAcross({ frame, kind }: Surface, { direction }: TapeLine): number {
  if (kind === "wall") return Math.abs(direction.u);
  return Math.abs(direction.u * frame.u.x + direction.v * frame.v.x);
}

/** The marks of a tape that may lie on the outline. */
export function axisOver(outline: Polygon, { line, heldMm }: ChosenTape, stepMm: number): Axis {
  if (heldMm !== null) return { line, startMm: heldMm, stepMm, least: 0, most: 0 };
  const readings = outline.map((corner) => tapeMm(line, corner));
  const slack = EXACT_WITHIN_MM / stepMm;
  return {
    line,
    startMm: 0,
    stepMm,
    least: Math.max(0, Math.ceil(Math.min(...readings) / stepMm - slack)),
    most: Math.floor(Math.max(...readings) / stepMm + slack),
  };
}

/** Held tapes that the two do not hold themselves must read so there too. */
export function agreesWith(
  room: Room,
  surface: Surface,
  { hold, at }: { readonly hold: readonly Tape[]; readonly at: SurfacePoint },
): boolean {
  return hold.every(
    ({ from, mm }) => Math.abs(tapeMm(tapeLine(room, surface, from), at) - mm) <= EXACT_WITHIN_MM,
  );
}

export const sameTapes = (a: ChosenTapes, b: ChosenTapes): boolean =>
  a[0].line.from === b[0].line.from && a[1].line.from === b[1].line.from;
