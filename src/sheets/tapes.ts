import { InternalError } from "../findings/internal-error.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Opening } from "../job.js";
import type { Edge, Faces, Room, Surface, Tape } from "../room/room.js";

/** State of the neighbouring walls when an opening is cut: it decides what the tape touches. */
export type Stage = "bare" | "boarded";

/** The tapes that place one opening at one stage, and the opposite ones that only check it. */
export interface Tapes {
  readonly governing: readonly [Tape, Tape];
  /** From the opposite edge on the same axis, in the same order. */
  readonly checks: readonly [Tape, Tape];
  readonly touches: Faces;
}

/** Stages that a surface's marking sheets are printed for: ceilings are often cut while walls are bare, walls are boarded together. */
export function stagesOf(room: Room, surface: Surface): readonly Stage[] {
  if (room.stage === "both") return ["bare", "boarded"];
  return [room.stage ?? (surface.kind === "ceiling" ? "bare" : "boarded")];
}

export const facesAt = (stage: Stage): Faces => (stage === "bare" ? "framing" : "finish");

/** Distance of a point from an edge's line, in mm, positive inside. */
export function distanceFromEdgeMm(edge: Edge, point: SurfacePoint): number {
  const along = { u: edge.to.u - edge.from.u, v: edge.to.v - edge.from.v };
  const cross = along.u * (point.v - edge.from.v) - along.v * (point.u - edge.from.u);
  return cross / Math.hypot(along.u, along.v);
}

/** Tape from an edge's face at a stage to a point. The floor is touched as it stands; every other face gains its board. */
export function tapeFromEdge(edge: Edge, point: SurfacePoint, stage: Stage): Tape {
  return { from: edge.along, mm: distanceFromEdgeMm(edge, point) - boardOn(edge, stage) };
}

const boardOn = (edge: Edge, stage: Stage): number => (stage === "boarded" ? edge.boardMm : 0);

export function edgeAlong(surface: Surface, name: string): Edge {
  const found = surface.edges.find((edge) => edge.along === name);
  if (found === undefined) throw new InternalError(`${surface.name} has no edge along ${name}`);
  return found;
}

/** The edge that faces this one: its direction is the most opposite. */
export function edgeFacing(surface: Surface, edge: Edge): Edge {
  const alongOf = (e: Edge) => ({ u: e.to.u - e.from.u, v: e.to.v - e.from.v });
  const along = alongOf(edge);
  const turnOf = (e: Edge): number => {
    const other = alongOf(e);
    return (along.u * other.u + along.v * other.v) / Math.hypot(other.u, other.v);
  };
  return surface.edges.reduce((best, other) => (turnOf(other) < turnOf(best) ? other : best));
}

/**
 * The tapes of an opening at a stage. The two that were typed govern, as typed where they touch the same faces; they
 * are shifted by the neighbour's board where the faces differ.
 */
export function tapesOf(room: Room, opening: Opening, stage: Stage): Tapes {
  const { surface, centre } = opening;
  const [first, second] = governingTapes(room, opening, stage);
  const check = (tape: Tape): Tape =>
    tapeFromEdge(edgeFacing(surface, edgeAlong(surface, tape.from)), centre, stage);
  return { governing: [first, second], checks: [check(first), check(second)], touches: facesAt(stage) };
}

function governingTapes(room: Room, opening: Opening, stage: Stage): [Tape, Tape] {
  const { surface, centre, speaker } = opening;
  if (speaker.position.kind === "given") {
    const asHeld = (tape: Tape): Tape =>
      facesAt(stage) === room.measuredTo ? tape : tapeFromEdge(edgeAlong(surface, tape.from), centre, stage);
    const [first, second] = speaker.position.tapes;
    return [asHeld(first), asHeld(second)];
  }
  const [bottom, right] = surface.edges;
  if (bottom === undefined || right === undefined) throw new InternalError(`${surface.name} has no outline`);
  return [tapeFromEdge(right, centre, stage), tapeFromEdge(bottom, centre, stage)];
}
