import { valueAt } from "./issues.js";
import type { Path } from "./room.js";
import type { Tree } from "./tree.js";

/*
 * Names of walls and surfaces as they stand in the file's tree, whether or not the rest of it can be read.
 */

export const BOX_WALLS: readonly string[] = ["left", "front", "right", "back"];
export const MAIN_CEILING = "ceiling";

/** How many entries the list at the path has; 0 where it is no list. */
export function indices(tree: Tree, path: Path): readonly number[] {
  const list = valueAt(tree, path);
  return Array.isArray(list) ? [...list.keys()] : [];
}

export function keysAt(tree: Tree, path: Path): readonly string[] {
  const map = valueAt(tree, path);
  return typeof map === "object" && map !== null && !Array.isArray(map) ? Object.keys(map) : [];
}

export function textAt(tree: Tree, path: Path): string | null {
  const value = valueAt(tree, path);
  return typeof value === "string" ? value : null;
}

export const isOutlined = (tree: Tree): boolean => valueAt(tree, ["room", "outline"]) !== undefined;

/** Paths of the names that a room gives its own walls and ceilings. */
export const namePaths = (tree: Tree): readonly Path[] => [
  ...indices(tree, ["room", "walls"]).map((index) => ["room", "walls", index]),
  ...ceilingPaths(tree),
];

const ceilingPaths = (tree: Tree): readonly Path[] =>
  indices(tree, ["room", "ceilings"]).map((index) => ["room", "ceilings", index, "name"]);

const textsAt = (tree: Tree, paths: readonly Path[]): readonly string[] =>
  paths.flatMap((path) => textAt(tree, path) ?? []);

/** What a tape may hook on: the walls of the room. */
export const wallNames = (tree: Tree): readonly string[] =>
  isOutlined(tree)
    ? textsAt(
        tree,
        indices(tree, ["room", "walls"]).map((index) => ["room", "walls", index]),
      )
    : BOX_WALLS;

/** What `on` may say. */
export const surfaceNames = (tree: Tree): readonly string[] => [
  MAIN_CEILING,
  ...textsAt(tree, ceilingPaths(tree)),
  ...wallNames(tree),
];
