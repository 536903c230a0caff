import { type CablesCompared, cablesCompared } from "./compare/cables.js";
import { type FindingsCompared, findingsCompared } from "./compare/findings.js";
import { type OpeningChange, openingChanges } from "./compare/openings.js";
import { type SeatChange, seatChanges } from "./compare/seats.js";
import { type SurfacesCompared, surfacesCompared } from "./compare/surfaces.js";
import type { Job } from "./job.js";

/** What is otherwise between two answers, by the names that people use; empty lists where nothing is. */
export interface Comparison extends SurfacesCompared, CablesCompared {
  readonly openings: readonly OpeningChange[];
  readonly seats: readonly SeatChange[];
  readonly findings: FindingsCompared;
}

/**
 * What moved, came, went or reads otherwise between two revisions of a room, lengths in mm. Places are compared as
 * tapes read them, so that a wall that moved does not move what is measured from the others.
 */
export function compareJobs(before: Job, after: Job): Comparison {
  return {
    openings: openingChanges(before, after),
    ...surfacesCompared(before.room, after.room),
    seats: seatChanges(before.room, after.room),
    ...cablesCompared(before, after),
    findings: findingsCompared(before.findings, after.findings),
  };
}

/** Whether anything at all is otherwise. */
export function isNothing({
  openings,
  surfaces,
  members,
  obstructions,
  seats,
  cables,
  holes,
  findings,
}: Comparison): boolean {
  const { added, gone, changed } = findings;
  return [openings, surfaces, members, obstructions, seats, cables, holes, added, gone, changed].every(
    (list) => list.length === 0,
  );
}
