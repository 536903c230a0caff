import type { Hindrance } from "../../findings/hindrance.js";
import { findings } from "./findings.js";
import { frame } from "./frame.js";
import { ordinal } from "./ordinal.js";

/** What `place` says of the best places and of those in other bays. */
export const placing = {
  title: (room: string) => `${room}: best clear places`,
  from: (seat: string) => `Directions from the reference seat, ${seat}; azimuth positive to the left`,
  nobodyAsks: "no loudspeaker asks for its best position with `at: best`",
  bay: (number: number, from: string) => `${ordinal(number)} bay from ${frame.hook(from)}`,
  direction: (is: string, off: string, preferred: string) => `${is}, ${off} from the preferred ${preferred}`,
  outside: "OUTSIDE ITS WINDOW",
  inTheWay: (things: readonly Hindrance[]) => `In the way of better: ${things.map(hindrance).join("; ")}.`,
  hindrance: (thing: Hindrance): string => hindrance(thing),
  asPreferred: "Nothing in the way: as preferred, to a mark of the tape.",
  alternative: (rank: number, bay: string) => `${ordinal(rank)} best: ${bay}`,
  apart: { more: (degrees: string) => `${degrees} more`, less: (degrees: string) => `${degrees} less` },
  noOtherBay: "No other bay is clear.",
  otherBaysNotLookedFor:
    "Other bays were not looked for: there is too much to look at in one run. Keep those that stand well where they are with --lock.",
  frozen: (count: number, file: string) =>
    `wrote ${count === 1 ? "1 position" : `${count} positions`} into ${file}; everything else in it is as it was`,
  nothingToWrite: "nothing to write: no position was computed",
  failure: {
    badRank: (typed: string, most: number) =>
      `--rank ${typed}: type how many bays to show, from 2 to ${most}`,
    unknownLock: (id: string, near: string) =>
      `--lock ${id}: no loudspeaker has this id${near === "" ? "" : `; did you mean ${near}?`}`,
    changed: (file: string) =>
      `${file}: was changed while it was read, so nothing was written; run the command again`,
  },
};

function hindrance(thing: Hindrance): string {
  switch (thing.kind) {
    case "member":
      return findings.member(thing.member);
    case "obstruction":
      return thing.name;
    case "edge":
      return `the finished edge at ${frame.wall(thing.along)}`;
    case "joint":
      return "a joint of the board, kept off since that costs little";
    case "unknown":
      return "framing that nobody has measured";
    case "neighbour":
      return `the opening of ${thing.id}`;
    case "window":
      return `its window in ${thing.figure}`;
    case "hold":
      return `the tape held from ${frame.wall(thing.from)}`;
    case "partner":
      return `${hindrance(thing.of)} at its partner ${thing.id}`;
    case "line":
      return `the line shared with ${thing.with.join(", ")}`;
  }
}
