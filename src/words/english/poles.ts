import { pointNameOf } from "../../findings/edge-name.js";
import { frame } from "./frame.js";

type Stage = "bare" | "boarded";

function wall(name: string): string {
  if (pointNameOf(name) !== null) return frame.hook(name);
  return name === "floor" || name === "ceiling" ? `the ${frame.wall(name)}` : `the ${frame.wall(name)} wall`;
}

const FACES: Readonly<Record<Stage, string>> = { bare: "bare framing", boarded: "board on" };

/** Words of the story poles: strips of true size, to mark a line without a tape. */
export const poles = {
  titles: "Story poles",
  title: (surface: string, from: string) => `Story pole, ${frame.surface(surface)} from ${frame.wall(from)}`,
  /** On every part, so that none is lost. */
  strip: ({ surface, from, stage, overhead }: Strip) =>
    `← 0 at ${wall(from)}, ${FACES[stage]}  ·  ${frame.surface(surface).toUpperCase()}, ${overhead ? frame.lookingUp : frame.facingWall(surface)}`,
  /** Of one pole, or of several whose walls stand on their own ends. */
  hold: (from: string | null) =>
    `ZERO END AGAINST ${from === null ? "the wall named there" : wall(from)}. Marks meet the LOWER line.`,
  use: "Cut out along the lower line. Lay it along the control line and carry every mark over with a square. Pencil only.",
  square: "Lies SQUARE TO THE JOISTS: it does when the joists' marks meet the joists.",
  plumb: "A pole of a flat ceiling serves on the floor too: mark there and plumb up.",
  lines:
    "Long line: centre of the openings named. Bar: from edge to edge. Box: framing, number · centre; broken box: ASSUMED. Broken lines of an opening: DO NOT CUT.",
  prove: (within: string) =>
    `PROVE by tape once joined: every figure is from 0. The far end in ( ) only checks; off by more than ${within}: STOP.`,
  slope: "This ceiling slopes: the pole lies ALONG THE SLOPE.",
  oblique: (count: number) =>
    `${count === 1 ? "1 member runs" : `${count} members run`} at an angle to this pole and ${count === 1 ? "is" : "are"} not on it.`,
  unknown: "FRAMING UNKNOWN: no member is on this pole.",
  unknownBeyond: "FRAMING UNKNOWN past the last member shown.",
  join: "Trim ONE of two neighbours on the dashed line, lay it on the other so that equal letters meet and the lower lines run on, tape.",
  noRoom: "This paper has no room for a story pole. Print it on larger paper or on a roll.",
};

export interface Strip {
  readonly surface: string;
  readonly from: string;
  readonly stage: Stage;
  readonly overhead: boolean;
}
