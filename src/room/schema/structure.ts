import * as z from "zod";
import { block } from "./block.js";
import { layout, runOn } from "./layout.js";
import { MEMBER_SIDE, MOST_MEMBERS } from "./limits.js";
import { length, wholeNumber } from "./measures.js";
import { tapes } from "./tapes.js";
import { type Texts, trueOrFalse, word } from "./texts.js";

/*
 * What does not repeat with the layout: blocking, beams, rims, doubled members, doors and windows.
 */

const MOST_PIECES = 500;

/** A piece of framing that stands by itself, by two corners of what of it is seen. */
const piece = block({
  kind: word(["blocking", "beam", "header", "rim"], "What it is"),
  corner: tapes("One corner"),
  opposite: tapes("The corner across from it"),
  depth: length(MEMBER_SIDE, "Behind the surface; as the members unless said").optional(),
});

/** The hole that the framing leaves for a door or a window, and what stands round it. */
const roughOpening = (texts: Texts) =>
  block({
    name: texts.name("What it is"),
    corner: tapes("One corner of the rough opening"),
    opposite: tapes("The corner across from it"),
    header: length(MEMBER_SIDE, "Height of the header over it; up to the plates unless said").optional(),
    studs: wholeNumber({
      least: 0,
      most: 4,
      description: "Studs on each side, king and jack together; 2 unless said",
    }).optional(),
  });

/** Strapping or resilient channel by where each length of it stands. */
const straps = block({
  kind: word(["strap", "channel"], "Strapping, or resilient channel; strapping unless said").optional(),
  depth: length(MEMBER_SIDE, "Between the framing and the board"),
  width: length(MEMBER_SIDE, "Across one, along the surface; of a channel the whole of it, lips and all"),
  run: runOn("Which way they run on a ceiling; across the members unless said").optional(),
  ...layout,
});

const strapping = z
  .union([length(MEMBER_SIDE, "Their depth alone: where they stand is then unknown to every check"), straps])
  .describe("Strapping or resilient channel between the framing and the board");

/** Keys of the framing of any surface. */
export const pieces = {
  also: z.array(piece).max(MOST_PIECES).describe("Blocking, beams, headers, rims, as found").optional(),
  doubled: z
    .array(wholeNumber({ least: 1, most: MOST_MEMBERS, description: "Its number" }))
    .max(MOST_PIECES)
    .describe("Members that are two side by side, about the line that is given")
    .optional(),
  strapping: strapping.optional(),
};

/** Keys of the framing of a ceiling. */
export const rims = {
  rims: trueOrFalse("A rim across the ends of the members, as round a soffit; false unless said").optional(),
};

/** Keys of the framing of a wall. */
export const roughOpenings = (texts: Texts) => ({
  openings: z.array(roughOpening(texts)).max(MOST_PIECES).describe("Doors and windows").optional(),
});

export type StrapsFile = z.output<typeof straps>;
export type PieceFile = z.output<typeof piece>;
export type RoughOpeningFile = z.output<ReturnType<typeof roughOpening>>;
