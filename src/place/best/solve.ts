import { plus, surfacePoint, times } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { allEdgesOn } from "../../listen/edges.js";
import type { Room, UnitSystem } from "../../room/room.js";
import { TAPE_STEP_MM } from "../nearest-clear.js";
import {
  areSame,
  askingsOf,
  type Decision,
  type DecisionTapes,
  fieldFor,
  tapesOfDecision,
} from "./decision.js";
import type { Field } from "./field.js";
import { type Found, searchOf } from "./search.js";
import type { Searches } from "./searches.js";
import { sightOn } from "./sight.js";
import { agreesWith } from "./tape-choice.js";

/** A decision and the best place that was found for it. */
export interface Solved {
  readonly decision: Decision;
  readonly tapes: DecisionTapes;
  readonly field: Field;
  readonly found: Found;
  /** For each loudspeaker the ids of all that share its line, itself too; none where it shares none. */
  readonly lines: readonly (readonly string[])[];
  /** What that line costs it. */
  readonly lineDeg: number;
}

/**
 * The best clear place on marks of the nearest tapes: whole ones where that costs next to nothing, else finer ones.
 * Null where nothing is clear.
 */
export function solve(room: Room, decision: Decision, searches: Searches = searchOf): Solved | null {
  const { effort, surface } = decision.leader.ground;
  effort.spend(LOOKS_FOR_A_HOOK * room.walls.length * allEdgesOn(surface, "finish").length);
  const [wholeMm, ...finerMm] = STEPS_MM[room.units];
  const start = startOf(decision);
  const onMarks = solveByTheNearest(room, decision, { near: start, stepMm: wholeMm, searches });
  const near = onMarks?.found.centres[0] ?? start;
  const belowDeg = (onMarks?.found.costDeg ?? Number.POSITIVE_INFINITY) - ROUNDING_DEG;
  const finest = solveNear(room, decision, { near, stepMm: FINEST_MM, belowDeg, searches });
  return finest === null ? onMarks : roundedTo(room, decision, { finest, finerMm, searches });
}

/** Which tapes reach a place takes a look past every edge from every wall, and places are looked for three times. */
const LOOKS_FOR_A_HOOK = 6;

/** Rounding to marks may cost this much; what is left of a twentieth of a degree is for the finest ones. */
const ROUNDING_DEG = 0.045;

const FINEST_MM = 0.1;

/** Marks of a tape, and the finer ones that a narrow place may want: halves and quarters, half and fifth parts. */
const STEPS_MM: Readonly<Record<UnitSystem, readonly [number, ...number[]]>> = {
  imperial: [TAPE_STEP_MM.imperial, TAPE_STEP_MM.imperial / 2, TAPE_STEP_MM.imperial / 4],
  metric: [TAPE_STEP_MM.metric, TAPE_STEP_MM.metric / 2, TAPE_STEP_MM.metric / 5],
};

interface Near {
  readonly near: SurfacePoint;
  readonly stepMm: number;
  readonly belowDeg?: number;
  readonly searches: Searches;
}

interface Finer extends Pick<Near, "searches"> {
  readonly finest: Solved;
  readonly finerMm: readonly number[];
}

/** Whole marks of the tapes cost more than they may: the coarsest that do not. */
function roundedTo(room: Room, decision: Decision, { finest, finerMm, searches }: Finer): Solved {
  const [near] = finest.found.centres;
  const belowDeg = finest.found.costDeg + ROUNDING_DEG;
  if (near === undefined) return finest;
  for (const stepMm of finerMm) {
    const finer = solveNear(room, decision, { near, stepMm, belowDeg, searches });
    if (finer !== null) return finer;
  }
  return finest;
}

/** On the tapes that are nearest to what is found by them. */
function solveByTheNearest(room: Room, decision: Decision, near: Near): Solved | null {
  const solved = solveNear(room, decision, near);
  const [centre] = solved?.found.centres ?? [];
  if (solved === null || centre === undefined) return null;
  const tapes = tapesOfDecision(room, decision, centre);
  if (tapes === null || areSame(tapes, solved.tapes)) return solved;
  return solveNear(room, decision, { ...near, near: centre }) ?? solved;
}

function solveNear(
  room: Room,
  decision: Decision,
  { near, belowDeg = Number.POSITIVE_INFINITY, ...on }: Near,
): Solved | null {
  const tapes = tapesOfDecision(room, decision, near);
  return tapes && solveOn(room, decision, { ...on, tapes, belowDeg });
}

export interface On {
  readonly tapes: DecisionTapes;
  readonly stepMm: number;
  readonly belowDeg: number;
  readonly searches?: Searches;
}

/** The best place on the marks of these tapes. */
export function solveOn(room: Room, decision: Decision, on: On): Solved | null {
  const { tapes, stepMm, belowDeg, searches = searchOf } = on;
  const field = fieldFor(decision, tapes, stepMm);
  const found = field && searches(field).best(field, belowDeg);
  if (field === null || found === null || !holdsAll(room, decision, found)) return null;
  return { decision, tapes, field, found, lines: [], lineDeg: 0 };
}

/** Two tapes place an opening; where the file holds more, they must read so too. */
function holdsAll(room: Room, decision: Decision, { centres }: Found): boolean {
  return askingsOf(decision).every(({ ground, hold }, index) => {
    const at = centres[index];
    return at !== undefined && agreesWith(room, ground.surface, { hold, at });
  });
}

/** Where to look first for the nearest walls: the preferred direction, or the middle where it meets no such point. */
function startOf({ leader }: Decision): SurfacePoint {
  const { surface } = leader.ground;
  const middle = times(surface.finished.reduce(plus, surfacePoint(0, 0)), 1 / surface.finished.length);
  return sightOn(surface, leader.wish).ideal ?? middle;
}
