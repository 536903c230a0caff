import { z } from "zod";
import { block } from "./block.js";
import { complain } from "./complain.js";
import { BOARD, BUILD_UP } from "./limits.js";
import { length } from "./measures.js";
import { roomSide } from "./tapes.js";
import { type Texts, trueOrFalse, word } from "./texts.js";

/** A part of the format that this version reads and refuses, saying so. */
const notYet = (description: string) =>
  z
    .unknown()
    .superRefine((written, context) => {
      if (written !== undefined) complain(context, "not-yet-outline", {});
    })
    .optional()
    .describe(description);

export const roomSchema = block({
  width: roomSide("From the left wall to the right wall, facing the front wall"),
  length: roomSide("From the front wall to the back wall"),
  height: roomSide(
    "From the floor to the underside of the ceiling framing, or to its board: see measured_to",
  ),
  measured_to: word(["framing", "finish"], "Which faces every tape in this file hooks on"),
  outline: notYet("Corners round a room that is not a box; not read yet"),
  walls: notYet("Names of the walls of such a room; not read yet"),
  ceilings: notYet("Soffits, trays and slopes; not read yet"),
}).describe("The room's size, facing the front wall");

export const boardSchema = block({
  ceiling: length(BOARD, "All layers under the ceiling together"),
  walls: length(BOARD, "All layers on the walls together"),
}).describe("Thickness of board");

export const floorSchema = block({
  build_up: length(BUILD_UP, "What will be laid on the floor as it stands now"),
}).describe("The floor; every height is from the floor as it stands");

export const stageSchema = block({
  walls: word(
    ["bare", "boarded", "both"],
    "State of the walls when the ceiling is cut; both prints a sheet for before and one for after",
  ),
}).describe("What the tape touches when cutting");

const surface = (texts: Texts) =>
  block({
    rated: trueOrFalse("Fire- or sound-rated").optional(),
    enclosure: trueOrFalse("A listed enclosure stands behind each opening").optional(),
    insulation: texts.name("What fills the cavity").optional(),
    second_support: trueOrFalse("Heavy units have a second support").optional(),
  }).describe("What is behind this surface");

export const surfacesSchema = (texts: Texts) => {
  const one = surface(texts).optional();
  return block({ ceiling: one, left: one, right: one, front: one, back: one }).describe(
    "What else is known of a surface, by its name",
  );
};
