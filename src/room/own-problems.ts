import type { NameOf, Problem } from "../findings/complaint.js";

/*
 * One message a cause: what only follows from another problem is left out.
 */

/** Those of the problems that do not follow from one of them, or from what was already found. */
export function ownProblems(problems: readonly Problem[], already: readonly Problem[]): readonly Problem[] {
  const found = new Set(already.map(({ path }) => told(path)));
  const meant = new Set(problems.map(keyMeant));
  return problems.filter((problem) => {
    const place = told(problem.path);
    if (problem.code === "nothing-written" && found.has(place)) return false;
    if (problem.code === "missing-key" && meant.has(place)) return false;
    if (problem.code === "unknown-name" && meant.has(told([LISTS[problem.figures.of] ?? ""]))) return false;
    return true;
  });
}

/** Where names of a kind are given; where that key is misspelt, none of them is known. */
const LISTS: Readonly<Partial<Record<NameOf, string>>> = {
  model: "models",
  seat: "seats",
  speaker: "speakers",
  area: "areas",
};

const told = (path: Problem["path"]): string => JSON.stringify(path);

/** The path of the key that was misspelt, where one is likely: that key is not missing. */
function keyMeant(problem: Problem): string | null {
  if (problem.code !== "unknown-key" || problem.figures.suggestion === null) return null;
  return told([...problem.path.slice(0, -1), problem.figures.suggestion]);
}
