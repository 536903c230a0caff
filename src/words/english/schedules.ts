import { frame } from "./frame.js";
import { template } from "./template.js";

/** Words of the opening schedule and the bracket schedule. */
export const schedules = {
  opening: {
    title: "Opening schedule",
    use: {
      bare: "Use while the walls are BARE: tape to the studs",
      boarded: "Use when the walls are BOARDED: tape to the board",
    },
    columns: {
      done: "Cut",
      speaker: "Opening",
      size: "Cut this size",
      first: "Centre: first tape",
      second: "Centre: second tape",
      behind: "Behind the board",
      aim: "Arrow",
    },
    count: {
      surface: (surface: string, openings: number, toCut: number, stopped: number) =>
        `${frame.surface(surface).toUpperCase()}: ${counted(openings)}. To cut: ${toCut}. DO NOT CUT: ${stopped}.`,
      room: (openings: number, toCut: number, stopped: number) =>
        `IN THE ROOM: ${counted(openings)}. To cut: ${toCut}. DO NOT CUT: ${stopped}.`,
    },
    after: "Cut and counted:",
  },
  bracket: {
    title: "Bracket schedule",
    use: "Use at ROUGH-IN, on bare framing",
    columns: {
      done: "Fixed",
      speaker: "Bracket for",
      size: "Opening in the bracket",
      first: "Centre: first tape",
      second: "Centre: second tape",
      behind: "Framing",
      depth: "Depth",
    },
    count: {
      surface: (surface: string, openings: number, toFix: number, stopped: number) =>
        `${frame.surface(surface).toUpperCase()}: ${brackets(openings)}. To fix: ${toFix}. DO NOT FIX: ${stopped}.`,
      room: (openings: number, toFix: number, stopped: number) =>
        `IN THE ROOM: ${brackets(openings)}. To fix: ${toFix}. DO NOT FIX: ${stopped}.`,
    },
    after: "Fixed and counted:",
    doNotFix: "DO NOT FIX",
  },
  tapesOf: "The tapes go to the CENTRE of the opening, square to the wall named. Pencil only.",
  tolerance: (under: string, over: string) => `Allowed on the size: −${under} / +${over}`,
  initials: "Initials",
  notPlaced: "NO POSITION YET",
  diameter: (size: string) => `⌀ ${size}`,
  sides: (width: string, height: string) => `${width} × ${height}`,
  acrossAndUp: "across × up",
  radius: (radius: string) => `radius ${radius}`,
  tape: (wall: string) => `from ${frame.wall(wall)}`,
  check: (tape: string, wall: string) => `check: ${tape} from ${frame.wall(wall)}`,
  bay: (number: number, from: string) => `${template.bayNumber(number)} bay from ${frame.wall(from)}`,
  noBay: "bay not known",
  gap: (gap: string) => `gap ${gap}`,
  gapUnknown: "gap not known",
  cutsBy: (depth: string) => `cuts framing by ${depth}`,
  gapBefore: (gap: string) => `one side ${gap}`,
  gapAfter: (gap: string) => `other side ${gap}`,
  depth: (depth: string) => `depth needed ${depth}`,
  depthBehindBoard: (depth: string) => `${depth} behind the finished face`,
  straight: "none: straight",
  noAim: "none",
  aimUndefined: "none: target straight ahead",
  arrow: (end: string, degrees: string, toward: string) =>
    `from the member's ${frame.wall(end)} end, ${degrees} toward ${frame.wall(toward)}`,
  arrowOnSheet: (degrees: string) => `${degrees} anticlockwise from the top, facing it`,
  model: (model: string) => `model ${model}`,
};

const counted = (openings: number): string => (openings === 1 ? "1 opening" : `${openings} openings`);
const brackets = (openings: number): string => (openings === 1 ? "1 bracket" : `${openings} brackets`);
