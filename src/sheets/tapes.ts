import { InternalError } from "../findings/internal-error.js";
import { nearestOnSegment } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { distanceMm, inner, minus, plus, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Opening } from "../job.js";
import { allEdgesOn, exitThrough } from "../listen/edges.js";
import { inward } from "../place/run.js";
import { tapeLine } from "../place/tapes.js";
import type { Edge, Faces, Room, Surface, Tape } from "../room/room.js";

/** State of the neighbouring walls when an opening is cut: it decides what the tape touches. */
export type Stage = "bare" | "boarded";

/** A tape that a person can hold: over the surface, square to the edge, and nowhere out of the room. */
export interface HeldTape extends Tape {
  /** Where it hooks, on the faces that are touched. */
  readonly foot: SurfacePoint;
  /** Of length 1, away from what it hooks on. */
  readonly direction: SurfacePoint;
}

/** The tapes that place one opening at one stage, and the opposite ones that only check it. */
export interface Tapes {
  readonly governing: readonly [HeldTape, HeldTape];
  /** From the opposite edge on the same axis, in the same order; null where none can be held. */
  readonly checks: readonly [HeldTape | null, HeldTape | null];
  readonly touches: Faces;
}

/** Stages that a surface's marking sheets are printed for: ceilings are often cut while walls are bare, walls are boarded together. */
export function stagesOf(room: Room, surface: Surface): readonly Stage[] {
  if (room.stage === "both") return ["bare", "boarded"];
  return [room.stage ?? (surface.kind === "ceiling" ? "bare" : "boarded")];
}

export const facesAt = (stage: Stage): Faces => (stage === "bare" ? "framing" : "finish");

/** Tape from an edge, as it stands at a stage, to a point: square to the edge's line, wherever that is met. */
export function tapeFromEdge(edge: Edge, point: SurfacePoint, stage: Stage): Tape {
  const boardMm = stage === "boarded" ? edge.boardMm : 0;
  return { from: edge.along, mm: inner(inward(edge), minus(point, edge.from)) - boardMm };
}

/**
 * The tapes of an opening at a stage. The two that were typed govern: as typed where they touch the same faces, by the
 * neighbour's board more or less where those differ. A wall that no straight tape reaches over the surface (round a
 * corner, past a soffit) gives way to the edge before it that faces the same way.
 */
export function tapesOf(room: Room, opening: Opening, stage: Stage): Tapes {
  const found = known.get(opening) ?? new Map<Stage, Tapes>();
  known.set(opening, found);
  const tapes = found.get(stage) ?? heldTo(room, opening, stage);
  found.set(stage, tapes);
  return tapes;
}

/** An opening is of one room, and every sheet that shows it asks for them. */
const known = new WeakMap<Opening, Map<Stage, Tapes>>();

function heldTo(room: Room, opening: Opening, stage: Stage): Tapes {
  const { surface, centre } = opening;
  const held = tapesHeldOn(surface, centre, stage);
  const governing = governingTapes(room, opening, held);
  const [first, second] = governing;
  const check = (tape: HeldTape): HeldTape | null => facing(tape, held);
  return { governing, checks: [check(first), check(second)], touches: facesAt(stage) };
}

/** Every tape that can be held to a point of the surface, in the order of its edges. */
export function tapesHeldOn(surface: Surface, point: SurfacePoint, stage: Stage): readonly HeldTape[] {
  const faces = facesAt(stage);
  return tapesHeld(allEdgesOn(surface, faces), point, surface.kind);
}

/** Every tape that can be held to a point inside some edges; on walls the ones from the ceiling are plumb. */
export function tapesHeld(
  edges: readonly Edge[],
  point: SurfacePoint,
  kind: Surface["kind"],
): readonly HeldTape[] {
  return edges.flatMap((edge) => {
    const direction = kind === "wall" && isOverhead(edge) ? DOWN : inward(edge);
    const exit = exitThrough(edges, { from: point, direction: times(direction, -1) });
    if (exit === null || exit.edge !== edge) return [];
    return [{ from: edge.along, mm: distanceMm(exit.at, point), foot: exit.at, direction }];
  });
}

const DOWN: SurfacePoint = { u: 0, v: -1 };

/** An edge of a wall that is neither upright nor the floor. */
const isOverhead = ({ along, from, to }: Edge): boolean =>
  along !== "floor" && Math.abs(to.u - from.u) > EPSILON_MM;

function governingTapes(
  room: Room,
  opening: Opening,
  held: readonly HeldTape[],
): readonly [HeldTape, HeldTape] {
  const [first, second] = opening.tapes.map((tape) => asHeld(tape, room, opening, held));
  if (first === undefined || second === undefined)
    throw new InternalError(`${opening.speaker.id} lacks a tape`);
  return isApart(first, second) ? [first, second] : usualTapes(opening, held);
}

/** Of what was typed or chosen and what can be held in its place. */
function asHeld(typed: Tape, room: Room, { surface, centre }: Opening, held: readonly HeldTape[]): HeldTape {
  const isHanging = typed.from === "ceiling" && surface.kind === "wall";
  const own = held.find(({ from, direction }) =>
    isHanging ? direction.v < -ALONGSIDE && from !== "floor" : from === typed.from,
  );
  const line = tapeLine(room, surface, isHanging ? "floor" : typed.from);
  const instead = held.find(({ direction }) => inner(direction, line.direction) > ALONGSIDE);
  const found = own ?? instead;
  if (found === undefined) {
    // Nothing that faces this way can be reached: the opening lies outside, and is not one to cut.
    const foot = plus(centre, times(line.direction, -typed.mm));
    return { ...typed, foot, direction: line.direction };
  }
  const isAsTyped = found === own && Math.abs(found.mm - typed.mm) < EPSILON_MM;
  return isAsTyped ? { ...found, mm: typed.mm } : found;
}

/** Cosine of the angle under which two tapes lie along each other. */
const ALONGSIDE = 1 - 1e-6;

/** Whether two tapes fix a point well enough: 30 degrees and more between them. Our own choice. */
const isApart = (a: HeldTape, b: HeldTape): boolean => Math.abs(inner(a.direction, b.direction)) < 0.87;

/** The second edge and the first, floor and wall as one faces a wall, where both can be held; else the shortest two. */
function usualTapes({ surface, centre }: Opening, held: readonly HeldTape[]): readonly [HeldTape, HeldTape] {
  const order = [surface.edges[1]?.along, surface.edges[0]?.along];
  const rank = ({ from }: HeldTape): number => (order.includes(from) ? order.indexOf(from) : order.length);
  const sorted = [...held].sort((a, b) => rank(a) - rank(b) || a.mm - b.mm);
  const first = sorted[0];
  const second = sorted.find((tape) => first !== undefined && isApart(first, tape));
  if (first !== undefined && second !== undefined) return [first, second];
  // No two tapes can be held: the opening lies outside, and is not one to cut.
  const [a, b] = [...surface.edges].sort((one, other) => awayMm(one, centre) - awayMm(other, centre));
  if (a === undefined || b === undefined) throw new InternalError(`${surface.name} has no outline`);
  return [stretched(a, centre), stretched(b, centre)];
}

const awayMm = (edge: Edge, point: SurfacePoint): number => distanceMm(nearestOnSegment(point, edge), point);

function stretched(edge: Edge, centre: SurfacePoint): HeldTape {
  const direction = inward(edge);
  const mm = inner(direction, minus(centre, edge.from));
  return { from: edge.along, mm, direction, foot: plus(centre, times(direction, -mm)) };
}

/** The tape from what is across: of those that face this one, the squarest. */
function facing(tape: HeldTape, held: readonly HeldTape[]): HeldTape | null {
  const against = held
    .map((other) => ({ other, turned: inner(other.direction, tape.direction) }))
    .filter(({ turned }) => turned < -FACES)
    .sort((a, b) => a.turned - b.turned);
  return against[0]?.other ?? null;
}

/** Cosine of the angle that an opposite wall may stand at, 30 degrees: past that it checks the other axis more. Our own choice. */
const FACES = 0.866;
