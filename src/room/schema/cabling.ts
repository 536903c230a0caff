import { z } from "zod";
import { block } from "./block.js";
import { CABLE_LENGTH, TAPE } from "./limits.js";
import { length, quantity, wholeNumber } from "./measures.js";
import { point, reference } from "./tapes.js";
import type { Texts } from "./texts.js";

export const equipmentSchema = point("Where the home runs end");

export const cableSchema = block({
  loss: quantity({
    quantity: "dB",
    least: 0.01,
    most: 20,
    description: "Most that a run may lose",
  }).optional(),
  loop: length(CABLE_LENGTH, "Left at the loudspeaker").optional(),
  spare: quantity({ quantity: "percent", least: 0, most: 100, description: "Added to each run" }).optional(),
  gauges: z
    .array(wholeNumber({ least: 4, most: 30, description: "AWG" }))
    .min(1)
    .max(20)
    .describe("Gauges at hand")
    .optional(),
}).describe("How cable is chosen and measured");

export const checksSchema = block({
  clear: length(TAPE, `Gap asked for beyond the clamps; 1/4" unless said`).optional(),
  tolerance: quantity({
    quantity: "deg",
    least: 0,
    most: 90,
    description: "Allowed round a direction that the standard fixes at one value; 5 deg unless said",
  }).optional(),
}).describe("What is asked for beyond the standards");

export const acceptSchema = (texts: Texts) =>
  block({
    code: texts.name("Code of the finding"),
    speaker: reference("Id of the loudspeaker, where it is about one").optional(),
    why: texts.reason("The reason, printed"),
  }).describe("A warning that is accepted");
