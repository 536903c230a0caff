import * as z from "zod";
import { MOST_MEMBERS, SPACING, TAPE } from "./limits.js";
import { length, readQuantity } from "./measures.js";
import { reference, tapes } from "./tapes.js";
import { readWord, word } from "./texts.js";
import { written } from "./written.js";

/*
 * How anything that repeats lies on a surface: which way it runs, what it is measured from, and where each stands.
 */

const RUNS = ["left-right", "front-back", "along"] as const;

/** A word, or an angle: what begins as a figure is meant as one. */
export const runOn = (description: string) =>
  written
    .transform((typed, context) =>
      /^[-+.\d]/u.test(typed)
        ? readQuantity(typed, context, { quantity: "deg", least: 0, most: 180 })
        : readWord(typed, context, { choices: RUNS, besides: "30 deg" }),
    )
    .meta({
      description,
      type: ["string", "number"],
      anyOf: [
        { type: "string", enum: [...RUNS] },
        { type: "string", pattern: "^[+]?[.\\d]+ *(deg|degrees?|°)$" },
        { type: "number", minimum: 0, maximum: 0 },
      ],
    });

/** Keys of a layout. */
export const layout = {
  from: z
    .union([
      reference("Wall that they are measured from, along the surface"),
      tapes(
        "Corner that they are measured from, square to themselves, such as { right: 0, front: 0 }, or a mark on a wall; all of them lie to one side of it",
      ),
    ])
    .describe("What they are measured from: a wall that they run along, or a corner"),
  first: length(TAPE, "The first one").optional(),
  spacing: length(SPACING, "From one to the next, centre to centre").optional(),
  at: z
    .array(length(TAPE, "One of them"))
    .min(1)
    .max(MOST_MEMBERS)
    .describe("All of them as found, each measured from the same wall or corner")
    .optional(),
  mark: word(
    ["near-edge", "centre"],
    "Which line of each the figures are to; its centre unless said",
  ).optional(),
};
