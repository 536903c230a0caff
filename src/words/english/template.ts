import { frame } from "./frame.js";

/** Where a tape hooks: a wall by its name, the floor and the ceiling as themselves. */
const hook = (from: string): string =>
  from === "floor" || from === "ceiling" ? frame.wall(from) : `${frame.wall(from)} wall`;

/** Words on the opening templates and on the parts of a drawing that is larger than its paper. */
export const template = {
  title: (id: string) => `Opening ${id}`,
  tiles: {
    part: (name: string, of: number) => `Part ${name} of ${of}`,
    join: "Trim ONE of two neighbours on the dashed line, lay it on the other so that equal letters meet, tape.",
  },
  tooLarge: (columns: number, rows: number) =>
    `TOO LARGE for this paper: ${columns} x ${rows} sheets. Cut by the figures, or print on larger paper or a roll.`,
  noRoom: "This paper has no room for a template. Cut by the figures, or print on larger paper.",
  size: {
    round: (diameter: string) => `round opening, ${diameter} across`,
    rectangle: (width: string, height: string) => `rectangular opening, ${width} wide, ${height} high`,
    diameter: "DIAMETER",
    radius: "COMPASS RADIUS",
    sides: "WIDTH × HEIGHT",
    halves: "HALF WIDTH × HALF HEIGHT",
    diagonals: "BOTH DIAGONALS",
    tolerance: { round: "TOLERANCE on the diameter", rectangle: "TOLERANCE on each side" },
  },
  from: (from: string) => `FROM ${hook(from)}`,
  toCentre: "to the centre",
  bay: (from: string) => `BAY from the ${hook(from)}`,
  bayNumber: (count: number) => ordinal(count),
  bayUnknown: "BAY",
  unknown: "unknown",
  assumed: "ASSUMED",
  gaps: (sides: string) => `Gap at the ${sides}`,
  gapTo: (member: string, figure: string) => `${member}: ${figure}`,
  cutsInto: (member: string, figure: string) => `${member}: CUTS IN ${figure}`,
  gapUnknown: "Gap to the framing: unknown",
  wall: (name: string) => hook(name),
  edge: {
    front: "↑ THIS EDGE TO THE FRONT WALL ↑",
    up: "↑ UP ↑",
  },
  label: {
    cut: (id: string) => `${id}: CUT LINE, waste inside`,
    short: (id: string) => id,
    flange: (size: string) => `flange ${size}, do not cut`,
    aim: (target: string) => `AIM: ${target}`,
  },
  notes: {
    cut: (across: string) =>
      `CUT INSIDE THE LINE: the finished edge is the centre of the line, the blade on the waste side, which is inside. Prove the hole before cutting: over the line a tape must read ${across}. Tolerance is common practice.`,
    look: "LOOK FIRST: open a small hole and look for cable, pipe and duct behind the board. Never cut a member: meet one, STOP.",
    rated: "RATED SURFACE: cut only for a listed enclosure; the local code prevails.",
    support: "HEAVY: needs a second support to the framing.",
    check: (tapes: string, within: string) => `CHECK ONLY: ${tapes}. Off by more than ${within}: STOP.`,
    call: (who: string) => `Call ${who}.`,
    callBlank: "Call ____________________",
    done: "CUT, checked by ______________",
  },
  more: (count: number) => `and ${count} more on the sheet of the surface`,
};

function ordinal(count: number): string {
  const ending = { 1: "st", 2: "nd", 3: "rd" }[count % 10] ?? "th";
  return `${count}${count % 100 > 10 && count % 100 < 14 ? "th" : ending}`;
}
