import type { WrittenGap } from "../details.js";
import type { WrittenTape } from "../phrases.js";
import { findings } from "./findings.js";
import { frame } from "./frame.js";
import { ordinal } from "./ordinal.js";

/** Where a tape hooks: a wall by its name, the floor and the ceiling as themselves. */
const hook = (from: string): string => frame.hook(from).replace(/^the /u, "");

const tapeFrom = ({ length, from }: WrittenTape): string => `${length} from ${hook(from)}`;

function gapTo({ member, figure, isCut, toward }: WrittenGap): string {
  const side = toward === null ? "" : ` toward ${frame.wall(toward)}`;
  return `${isCut ? "CUTS IN " : ""}${figure} to ${findings.member(member)}${side}`;
}

/** Words on the opening templates and on the parts of a drawing that is larger than its paper. */
export const template = {
  stage: { bare: "BEFORE the walls are boarded", boarded: "AFTER the walls are boarded" },
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
    halves: "HALF OF EACH",
    diagonals: "BOTH DIAGONALS",
    tolerance: { round: "TOLERANCE on the diameter", rectangle: "TOLERANCE on each side" },
  },
  from: (from: string) => `FROM ${hook(from)}`,
  bay: (from: string) => `BAY from the ${hook(from)}`,
  bayNumber: ordinal,
  bayUnknown: "BAY",
  unknown: "unknown",
  assumed: "ASSUMED",
  gaps: (gaps: readonly WrittenGap[]) => `Gap: ${gaps.map(gapTo).join("; ")}.`,
  gapUnknown: "Gap to the framing: unknown",
  edge: {
    front: "↑ THIS EDGE TO THE FRONT WALL ↑",
    overhead: "HOLD OVERHEAD, PRINT DOWN, not on the floor",
    up: "↑ UP ↑",
  },
  label: {
    cut: (id: string) => `${id}: CUT LINE, waste inside`,
    flange: (size: string) => `flange ${size}`,
    aim: (target: string) => `AIM: ${target}`,
  },
  notes: {
    cut: (across: string) =>
      `CUT INSIDE THE LINE: finished edge on the centre of the line, blade on the waste side, inside. A tape over the line must read ${across}. Tolerance: common practice.`,
    look: "LOOK FIRST: open a small hole and look for cable, pipe and duct behind the board. Never cut a member: meet one, STOP.",
    rated: "RATED SURFACE: cut only for a listed enclosure; the local code prevails.",
    /** The opposite tapes, how far they may be off, and who is to be called: a line to write on where nobody is given. */
    check: (tapes: readonly WrittenTape[], within: string, who: string | null) =>
      `CHECK ONLY: ${tapes.map(tapeFrom).join(", ")}. Off by more than ${within}: STOP, call ${who ?? "____________________"}.`,
    done: "CUT, checked by ______________",
  },
  /** One template that serves many openings. */
  alike: {
    title: (area: string, model: string) => `Template for all openings of ${area}, ${model}`,
    count: (count: number) => `${count} openings, all alike`,
    tapes: "TAPES of each",
    inSchedule: "opening schedule",
    use: "The same hole for all of these. Take each one's tapes from the opening schedule or the ceiling sheet, lay the cross on its centre, and tick it off here. Framing near it is drawn on the ceiling sheet, not here.",
  },
  more: (count: number) => `and ${count} more on the sheet of the surface`,
};
