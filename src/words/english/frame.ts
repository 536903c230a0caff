import { edgeNameOf, pointNameOf } from "../../findings/edge-name.js";

/** Words in the frame of every sheet, and names that many sheets share. */
export const frame = {
  number: (number: string) => `No. ${number}`,
  revision: (revision: string) => `Rev. ${revision}`,
  sheet: (number: number, of: number) => `Sheet ${number} of ${of}`,
  file: (digits: string) => `Room file ${digits}`,
  units: { imperial: "Inches first, millimetres beside", metric: "Millimetres first, inches beside" },
  front: "FRONT",
  facing: { away: "You face the FRONT wall", behind: "The FRONT wall is behind you" },
  up: "UP",
  printAtFull:
    "Print at 100 %, no fit to page. Before cutting hold a tape to BOTH rulers: 100 mm, 4 in. Over 0.5 mm off: cut by the figures.",
  trueScale: "TRUE SCALE 1:1",
  fitted: (ratio: string) => `SCALE ${ratio}`,
  notToScale: "NOT TO SCALE",
  lookingUp: "LOOKING UP",
  lookingDown: "LOOKING DOWN",
  facingWall: (wall: string) => `FACING the ${wall} wall`,
  holdOverhead: "HOLD OVERHEAD, PRINT DOWN, THIS EDGE TO THE FRONT WALL. Not to be laid on the floor.",
  faces: {
    framing: "Dimensions from FRAMING faces (bare studs)",
    finish: "Dimensions from FINISHED faces (board on)",
  },
  /** The walls of a box as capitals; other walls by their own names. */
  wall: (along: string) => sided(along, wall),
  /** A surface in a sentence; those with names of their own by these, since they may be walls or ceilings. */
  surface: (name: string) => (name === "ceiling" ? "ceiling" : isBoxWall(name) ? `${name} wall` : name),
  /** What a tape hooks on or an arrow points to. */
  hook: (along: string) => sided(along, hook),
  /** Layers that a reader of the PDF can switch. */
  layers: {
    cut: "Cut",
    clear: "Clear area",
    framing: "Framing",
    obstructions: "Obstructions",
    dimensions: "Dimensions",
    aim: "Aim",
    notes: "Notes",
  },
  cut: "CUT",
  doNotCut: "DO NOT CUT",
  computedNotFrozen: "COMPUTED, NOT FROZEN",
};

function wall(name: string): string {
  const point = pointNameOf(name);
  if (point === null) return ENGLISH_WALLS[name] ?? name.toUpperCase();
  return `${point.walls.map(wall).join("/")} ${point.isCorner ? "CORNER" : "MARK"}`;
}

function hook(name: string): string {
  if (pointNameOf(name) !== null) return `the ${wall(name)}`;
  if (isBoxWall(name)) return `the ${wall(name)} wall`;
  return ENGLISH_WALLS[name] === undefined ? wall(name) : `the ${wall(name)}`;
}

/** What stands along an edge, with the side where that alone would not tell which edge. */
function sided(along: string, said: (name: string) => string): string {
  const { name, side } = edgeNameOf(along);
  return side === null ? said(name) : `${said(name)}, ${wall(side)} SIDE`;
}

const isBoxWall = (name: string): boolean =>
  ENGLISH_WALLS[name] !== undefined && name !== "floor" && name !== "ceiling";

const ENGLISH_WALLS: Readonly<Record<string, string>> = {
  left: "LEFT",
  right: "RIGHT",
  front: "FRONT",
  back: "BACK",
  floor: "FLOOR",
  ceiling: "CEILING",
};
