import type { Problem } from "../findings/complaint.js";

/*
 * One message a cause: what only follows from another problem is left out.
 */

/** Those of the problems that do not follow from one of them, or from what was already found. */
export function ownProblems(problems: readonly Problem[], already: readonly Problem[]): readonly Problem[] {
  const outline = problems.find(({ code }) => code === "not-yet-outline");
  const found = new Set(already.map(({ path }) => JSON.stringify(path)));
  return problems.filter(
    (problem) =>
      !(problem.code === "nothing-written" && found.has(JSON.stringify(problem.path))) &&
      (outline === undefined || problem === outline || !followsFromOutline(problem)),
  );
}

/** A room that is not a box has neither a box's sizes nor its names. */
function followsFromOutline({ code, path: [block, key] }: Problem): boolean {
  if (code === "not-yet-outline") return true;
  if (code === "missing-key") return block === "room" && key !== "measured_to";
  return code === "unknown-key" && (block === "framing" || block === "surfaces");
}
