import type { Complaint, Problem } from "../findings/complaint.js";
import type { Position } from "./position.js";
import type { Path } from "./room.js";

/** Line and column of a value of the file, or of its key. */
export type Locate = (path: Path, at?: "key" | "value") => Position;

/** Past these a file is not one that a person typed; the last one says how many were left out. Our own choice. */
const MOST_COMPLAINTS = 100;

/** Problems with their places, in the file's order. */
export function complaintsOf(problems: readonly Problem[], locate: Locate): readonly Complaint[] {
  return inOrder(problems.map((problem) => placedBy(locate, problem)));
}

export const placedBy = (locate: Locate, problem: Problem): Complaint => ({
  ...problem,
  ...locate(problem.path, problem.at),
});

/** Complaints in the file's order, not more than a person reads. */
export function inOrder(complaints: readonly Complaint[]): readonly Complaint[] {
  const sorted = [...complaints].sort((a, b) => a.line - b.line || a.column - b.column);
  const last = sorted[MOST_COMPLAINTS - 1];
  if (last === undefined || sorted.length === MOST_COMPLAINTS) return sorted;
  const figures = { count: sorted.length - MOST_COMPLAINTS };
  const { path, line, column } = last;
  const more: Complaint = { code: "more-complaints", path, at: "value", figures, line, column };
  return [...sorted.slice(0, MOST_COMPLAINTS), more];
}
