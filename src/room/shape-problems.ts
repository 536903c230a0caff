import type { Problem } from "../findings/complaint.js";
import type { Locate } from "./complaint.js";
import { valueAt } from "./issues.js";
import { indices, isOutlined, namePaths, textAt } from "./names.js";
import type { Path } from "./room.js";
import { shown } from "./shown.js";
import type { Tree } from "./tree.js";

/** What is wrong with how the file tells the room's form: a box by two sizes, or an outline with its walls' names. */
export function shapeProblems(tree: Tree, locate: Locate): readonly Problem[] {
  if (valueAt(tree, ["room"]) === undefined) return [];
  return [
    ...sizeProblems(tree),
    ...wallProblems(tree),
    ...heightProblems(tree),
    ...nameProblems(tree, locate),
  ];
}

function sizeProblems(tree: Tree): readonly Problem[] {
  const given = (key: string): boolean => valueAt(tree, ["room", key]) !== undefined;
  const sizes = ["width", "length"];
  if (!isOutlined(tree)) return [...sizes.filter((key) => !given(key)).map(missing), ...strayWalls(tree)];
  const stray = sizes
    .filter(given)
    .map((key): Problem => ({ code: "outline-with-size", path: ["room", key], at: "key", figures: { key } }));
  return given("walls") ? stray : [...stray, missing("walls")];
}

const missing = (key: string): Problem => ({
  code: "missing-key",
  path: ["room", key],
  at: "value",
  figures: { key },
});

/** Walls of a box have their names. */
function strayWalls(tree: Tree): readonly Problem[] {
  if (valueAt(tree, ["room", "walls"]) === undefined) return [];
  return [{ code: "walls-without-outline", path: ["room", "walls"], at: "key", figures: {} }];
}

function wallProblems(tree: Tree): readonly Problem[] {
  const corners = indices(tree, ["room", "outline"]).length;
  const walls = indices(tree, ["room", "walls"]).length;
  if (corners === 0 || walls === 0 || corners === walls) return [];
  return [{ code: "walls-count", path: ["room", "walls"], at: "value", figures: { corners, walls } }];
}

function heightProblems(tree: Tree): readonly Problem[] {
  return indices(tree, ["room", "ceilings"]).flatMap((index): Problem[] => {
    const path: Path = ["room", "ceilings", index];
    const corners = indices(tree, [...path, "corners"]).length;
    const heights = indices(tree, [...path, "heights"]).length;
    if (heights === 0 || corners === heights) return [];
    return [
      { code: "heights-count", path: [...path, "heights"], at: "value", figures: { corners, heights } },
    ];
  });
}

/** Words with a meaning of their own where names of surfaces stand, and names of the packet's own sheets. */
const KEPT =
  /^(?:ceiling|floor|up|down|best|cover|poles?|ruler|drywall|installer|labels|.*-(?:full|after)|(?:wall|opening|aim|pole|marker|bracket|terminal|cable|label|story)-.*)$/iu;

function nameProblems(tree: Tree, locate: Locate): readonly Problem[] {
  const first = new Map<string, Path>();
  return namePaths(tree).flatMap((path): Problem[] => {
    const typed = textAt(tree, path);
    if (typed === null) return [];
    if (KEPT.test(typed))
      return [{ code: "name-reserved", path, at: "value", figures: { typed: shown(typed) } }];
    const earlier = first.get(typed.toLowerCase());
    if (earlier === undefined) first.set(typed.toLowerCase(), path);
    if (earlier === undefined) return [];
    const figures = { typed: shown(typed), firstLine: locate(earlier).line };
    return [{ code: "name-taken", path, at: "value", figures }];
  });
}
