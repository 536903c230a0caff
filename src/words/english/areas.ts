import { frame } from "./frame.js";

/** What `place` and `report` say of areas that are filled evenly. */
export const areas = {
  title: "How evenly areas are filled",
  count: (count: number, model: string, surface: string) =>
    `${count === 1 ? "1 loudspeaker" : `${count} loudspeakers`} ${model} on the ${frame.surface(surface)}`,
  rows: {
    square: (rows: number, perRow: number, rowsAre: Rows) =>
      `square pattern, ${counted(rows, perRow, rowsAre)}`,
    hexagon: (rows: number, perRow: number, rowsAre: Rows) =>
      `hexagonal pattern, ${counted(rows, perRow, rowsAre)}`,
  },
  along: { u: "rows run left to right", v: "rows run front to back" },
  circle: (coverage: string, drop: string, diameter: string) =>
    `Coverage ${coverage}, ears ${drop} below: circles of ${diameter}, D = 2 (H - h) tan(angle / 2).`,
  overlap: {
    "edge-to-edge": (most: string) => `Edge to edge: at most ${most} apart.`,
    "no-gap": (most: string) => `No gap between them: at most ${most} apart.`,
    double: (most: string) => `Doubled up: at most ${most} apart.`,
  },
  stated: (most: string) => `As the file states: at most ${most} apart.`,
  got: (spacing: string, row: string) =>
    `Got: ${spacing} along a row, ${row} from row to row; half of it at the walls.`,
  columns: { speaker: "speaker", at: "at", moved: "moved by", gap: "gap to member", bay: "bay" },
  inPlace: "in place",
  nowhere: (at: string) => `nothing is clear near ${at}: no loudspeaker there`,
  level: (least: string, most: string, deviation: string) =>
    `Level at the ears: from ${least} to ${most} of its mean; standard deviation ${deviation}.`,
  even: (share: string, withinDb: number) => `${share} of the area lies within ${withinDb} dB of the mean.`,
  mean: (level: string) => `Mean ${level} with 2.83 V at every loudspeaker.`,
  power: (needed: string, target: string, headroom: string) =>
    `${needed} at each for a mean of ${target} and ${headroom} of headroom.`,
  leaves: (stated: string, headroom: string) => `The stated ${stated} leave ${headroom} of headroom.`,
  model:
    "Levels: inverse square law and a MODEL of the stated coverage (a smooth lobe, -6 dB at half the angle, alike at every frequency); powers of all loudspeakers of the area added as if unrelated. Direct sound alone, no reflections: near its walls a real room has more.",
  sound: {
    how: (ear: string) =>
      `One level at the amplifier, the microphone ${ear} over the floor straight under each: write what it differs from the mean of them all. What is far off is a slip: its wiring, its tap, something in front of it. No delays: everybody hears the nearest first.`,
    columns: {
      speaker: "Loudspeaker",
      polarity: "+ to +",
      plays: "Plays",
      under: "Under it, of the area's mean",
      measured: "Measured",
    },
  },
  again: "Filled already. To fill an area anew, take its loudspeakers out of the file first.",
  unfilled: {
    "framing-unknown": "not filled: the framing of its ceiling is unknown; find and measure it first",
    "no-tapes":
      "not filled: of the walls that its ceiling can be taped from no two stand across each other; a slope is taped from those that it meets, so let its outline reach one more",
    "nothing-clear": "not filled: nothing of it is clear for this model",
    "not-looked-for":
      "not filled: the room asks for more than one run looks through; write what is filled with `baymark place --write` and run it again, or give this part of the room a file of its own",
  },
  tooMany: (count: number, most: number) =>
    `not filled: it would take ${count} loudspeakers, and the file has room for ${most}; check the spacing`,
};

/** Whether every row has as many, or the area cuts some off. */
type Rows = "whole" | "cut";

const counted = (rows: number, perRow: number, rowsAre: Rows): string =>
  `${rows === 1 ? "1 row" : `${rows} rows`} of ${rowsAre === "cut" ? "up to " : ""}${perRow}`;
