import * as z from "zod";
import type { HasGlyph } from "./characters.js";
import { areaSchema } from "./schema/areas.js";
import { block } from "./schema/block.js";
import { acceptSchema, cableSchema, checksSchema, equipmentSchema } from "./schema/cabling.js";
import { complain } from "./schema/complain.js";
import { framingSchema } from "./schema/framing.js";
import { jobSchema } from "./schema/job.js";
import { MOST_OBSTRUCTIONS, MOST_SPEAKERS } from "./schema/limits.js";
import { listeningSchema } from "./schema/listening.js";
import { modelsSchema } from "./schema/models.js";
import { obstructionSchema } from "./schema/obstructions.js";
import { labelsSchema, printSchema } from "./schema/printing.js";
import { boardSchema, floorSchema, roomSchema, stageSchema, surfacesSchema } from "./schema/room.js";
import { layoutSchema, seatSchema, speakerSchema } from "./schema/speakers.js";
import { textsFor, word } from "./schema/texts.js";
import { written } from "./schema/written.js";
import { shown } from "./shown.js";

/*
 * Format 1 of the room file. The keys are the file's own, so that a path in a complaint is a path in the file; every
 * length comes out in mm, every angle in degrees.
 */

const formatSchema = written
  .transform((typed, context): 1 => {
    return typed === "1" ? 1 : complain(context, "other-format", { typed: shown(typed) });
  })
  .meta({ description: "Format of this file", type: "integer", const: 1 });

const MOST_ENTRIES = 1000;
const MOST_AREAS = 100;

/** The whole file, its texts checked against the typeface that has to draw them. */
export function roomFileSchema(hasGlyph: HasGlyph) {
  const texts = textsFor(hasGlyph);
  return block({
    baymark: formatSchema,
    job: jobSchema(texts),
    units: word(["imperial", "metric"], "What the sheets show first; the other follows smaller"),
    call: texts.name("Who to call when something does not fit").optional(),
    room: roomSchema,
    board: boardSchema,
    floor: floorSchema.optional(),
    stage: stageSchema.optional(),
    framing: framingSchema(texts).optional(),
    surfaces: surfacesSchema(texts).optional(),
    obstructions: z
      .array(obstructionSchema(texts))
      .max(MOST_OBSTRUCTIONS)
      .describe("What openings must stay away from")
      .optional(),
    models: modelsSchema(texts).optional(),
    seats: z.array(seatSchema(texts)).min(1).max(MOST_ENTRIES).describe("Seats, one of them the reference"),
    layout: layoutSchema.optional(),
    speakers: z.array(speakerSchema(texts)).max(MOST_SPEAKERS).describe("Loudspeakers").optional(),
    areas: z
      .array(areaSchema)
      .max(MOST_AREAS)
      .describe("Areas that `baymark place` fills evenly with loudspeakers of one model each")
      .optional(),
    equipment: equipmentSchema.optional(),
    cable: cableSchema.optional(),
    listening: listeningSchema.optional(),
    checks: checksSchema.optional(),
    accept: z
      .array(acceptSchema(texts))
      .max(MOST_ENTRIES)
      .describe("Warnings that are accepted, each with its reason")
      .optional(),
    labels: labelsSchema.optional(),
    print: printSchema.optional(),
  }).describe("A room and its loudspeakers, for marking sheets");
}

/** A room file as read: lengths in mm, angles in degrees, names still names. */
export type RoomFile = z.output<ReturnType<typeof roomFileSchema>>;
