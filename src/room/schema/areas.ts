import * as z from "zod";
import { OVERLAPS, PATTERNS } from "../../standards/coverage-spacing.js";
import { shown } from "../shown.js";
import { block } from "./block.js";
import { complain } from "./complain.js";
import { MOST_SPEAKERS, SPACING, TAPE } from "./limits.js";
import { length } from "./measures.js";
import { reference, tapes } from "./tapes.js";
import { id, MOST_ID_CHARACTERS, slipOfId, word } from "./texts.js";
import { written } from "./written.js";

/** Room for the highest number that an id may end with. */
const MOST_PREFIX_CHARACTERS = MOST_ID_CHARACTERS - String(MOST_SPEAKERS).length;

const prefix = written
  .transform((typed, context) => {
    const slip = slipOfId(`${typed}${MOST_SPEAKERS}`);
    if (slip === null) return typed;
    return complain(context, "bad-id", { typed: shown(typed), slip, most: MOST_PREFIX_CHARACTERS });
  })
  .meta({
    description: "What the ids of its loudspeakers begin with, a number after it; S unless said",
    type: ["string", "integer"],
    pattern: `^[A-Za-z0-9_-]{0,${MOST_PREFIX_CHARACTERS}}$`,
  });

const spacing = z
  .union([
    word(OVERLAPS, "How far the circles of coverage overlap on the ear plane"),
    length(SPACING, "Most from one loudspeaker to the next along a row, centre to centre"),
  ])
  .describe("How far the circles of coverage overlap, or the spacing itself; no-gap unless said");

const common = {
  name: id("Name of the area; printed where other loudspeakers have their channel"),
  on: reference("The ceiling that its loudspeakers are cut into"),
  model: reference("Name under models: a straight one, its coverage stated"),
  pattern: word(PATTERNS, "How the loudspeakers stand; square unless said").optional(),
  spacing: spacing.optional(),
  ear: length(TAPE, "Height of the ears over the finished floor"),
  prefix: prefix.optional(),
};

const wholeCeiling = block(common);

const rectangle = block({
  ...common,
  corner: tapes("One corner"),
  opposite: tapes("The corner across from it"),
});

const outlined = block({
  ...common,
  corners: z
    .array(tapes("A corner"))
    .min(3)
    .max(100)
    .describe("Its corners in order round it, each by tapes from two walls"),
});

export const areaSchema = z
  .union([wholeCeiling, rectangle, outlined])
  .describe("A part of a ceiling, or all of it, that many straight loudspeakers fill evenly");

export type AreaFile = z.output<typeof areaSchema>;
