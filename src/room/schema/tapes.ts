import * as z from "zod";
import { block } from "./block.js";
import { ROOM_SIDE, TAPE } from "./limits.js";
import { length } from "./measures.js";
import { written } from "./written.js";

const anyTapes = z.record(
  written,
  length(TAPE, "Tape from this wall, `up` from the floor or `down` from the ceiling"),
);

/** Tapes by the wall (or `up`, `down`) that each hooks on, in mm, in the order that they were typed. */
export const tapes = (description: string) => anyTapes.describe(description);

export const roomSide = (description: string) => length(ROOM_SIDE, description);

/** The name of something that stands elsewhere in the file; whether it is there is checked over the whole file. */
export const reference = (description: string) => written.meta({ description, type: ["string", "number"] });

/** A point in the room: two walls and a height. */
export const point = (description: string) =>
  block({
    at: tapes("Tapes from two walls that meet"),
    up: length(TAPE, "From the floor"),
  }).describe(description);
