import * as z from "zod";
import { block, byName } from "./block.js";
import { complain } from "./complain.js";
import { BOARD, BUILD_UP, MOST_CEILING_CORNERS, MOST_CEILINGS, MOST_CORNERS, TAPE } from "./limits.js";
import { length } from "./measures.js";
import { sheetsSchema } from "./sheets.js";
import { roomSide } from "./tapes.js";
import { id, type Texts, trueOrFalse, word } from "./texts.js";

const corner = z
  .array(length(TAPE, "A tape"))
  .min(2)
  .max(2)
  .transform(([left = 0, front = 0]) => ({ left, front }))
  .describe("[left, front]: from the room's leftmost point, and from its frontmost");

const corners = (description: string) => z.array(corner).min(3).max(MOST_CORNERS).describe(description);

const ceilingCommon = {
  name: id("Name of this soffit, tray or slope"),
  corners: corners("Its corners on plan, in order round it"),
};

const ceilings = z
  .array(
    z.union([
      block({
        ...ceilingCommon,
        height: length(TAPE, "From the floor to its framing, or to its board: see measured_to"),
      }),
      block({
        ...ceilingCommon,
        heights: z
          .array(length(TAPE, "Height of this corner"))
          .min(3)
          .max(MOST_CORNERS)
          .describe("Height of each corner, in the same order; all in one plane"),
      }),
    ]),
  )
  .max(MOST_CEILINGS)
  .check((context) => {
    const count = context.value.reduce((sum, each) => sum + each.corners.length, 0);
    if (count > MOST_CEILING_CORNERS) {
      complain(context, "too-many", { of: "corners", count, most: MOST_CEILING_CORNERS });
    }
  })
  .describe("What of the ceiling is not at `height`: soffits, trays, slopes");

export const roomSchema = block({
  width: roomSide("From the left wall to the right wall, facing the front wall").optional(),
  length: roomSide("From the front wall to the back wall").optional(),
  outline: corners("Corners of a room that is not a box, in order round it").optional(),
  walls: z
    .array(id("Name of a wall"))
    .min(3)
    .max(MOST_CORNERS)
    .describe("Names of its walls, each from its corner to the next")
    .optional(),
  height: roomSide(
    "From the floor to the underside of the ceiling framing, or to its board: see measured_to",
  ),
  measured_to: word(["framing", "finish"], "Which faces every tape in this file hooks on"),
  ceilings: ceilings.optional(),
}).describe("The room's size, facing the front wall: width and length, or outline and walls");

export type CornerFile = z.output<typeof corner>;
export type CeilingFile = z.output<typeof ceilings>[number];

const layers = (where: string) =>
  z
    .union([
      length(BOARD, `All layers ${where} together`),
      z.array(length(BOARD, "One layer")).min(1).max(MOST_LAYERS).describe(`Layers ${where}`),
    ])
    .transform((told) => (typeof told === "number" ? [told] : told))
    .describe(`Thickness ${where}: in all, or layer by layer`);

const MOST_LAYERS = 10;

const total = (layersMm: readonly number[]): number => layersMm.reduce((sum, mm) => sum + mm, 0);

export const boardSchema = block({
  ceiling: layers("under the ceiling"),
  walls: layers("on the walls"),
  sheets: sheetsSchema.optional(),
})
  .transform(({ ceiling, walls, sheets }) => ({
    ceiling: total(ceiling),
    walls: total(walls),
    ceilingLayers: ceiling,
    wallLayers: walls,
    sheets: sheets ?? {},
  }))
  .describe("Thickness of board, in all or layer by layer, and how its sheets lie");

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
  return byName({ ceiling: one, left: one, right: one, front: one, back: one }, surface(texts)).describe(
    "What else is known of a surface, by its name",
  );
};
