import type { z } from "zod";
import { block, byName } from "./block.js";
import { SPACING, TAPE } from "./limits.js";
import { length } from "./measures.js";
import { reference } from "./tapes.js";

/*
 * How sheets of board lie on a surface: long joints beside each other, butt joints end to end.
 */

const ends = block({
  from: reference("Wall that butt joints are measured from, along the sheets"),
  first: length(TAPE, "The first butt joint"),
  stagger: length(TAPE, "How much further it is in every other row; none unless said").optional(),
});

const sheets = block({
  from: reference("Wall, or floor, that long joints run along and are measured from"),
  first: length(TAPE, "The first long joint"),
  width: length(SPACING, "Width of a sheet: from one long joint to the next"),
  length: length(SPACING, "Length of a sheet: from one butt joint to the next").optional(),
  ends: ends.describe("Butt joints; none are shown unless said").optional(),
}).describe("Sheets of board on this surface");

export const sheetsSchema = byName(
  {
    ceiling: sheets.optional(),
    left: sheets.optional(),
    right: sheets.optional(),
    front: sheets.optional(),
    back: sheets.optional(),
  },
  sheets,
).describe("How the sheets of the layer that is seen lie, by surface");

export type SheetsFile = z.output<typeof sheets>;
