import * as z from "zod";
import { CROSS_SECTIONS_MM2 } from "../../standards/wire.js";
import { parseQuantity } from "../../units/quantity.js";
import { shown } from "../shown.js";
import { block } from "./block.js";
import { complain } from "./complain.js";
import { CABLE_LENGTH, TAPE } from "./limits.js";
import { length, quantity, temperature, wholeNumber } from "./measures.js";
import { point, reference, tapes } from "./tapes.js";
import { type Texts, word } from "./texts.js";
import { written } from "./written.js";

export const equipmentSchema = point("Where the home runs end");

const SIZE_WORDS = CROSS_SECTIONS_MM2.map((area) => `${area} mm2`);

/** A nominal cross-section that the standard knows. */
export const crossSection = written
  .transform((typed, context) => {
    const read = parseQuantity(typed, "mm2");
    const area = CROSS_SECTIONS_MM2.find((area) => read.ok && read.value === area);
    if (area !== undefined) return area;
    return complain(context, "unknown-word", { typed: shown(typed), suggestion: null, choices: SIZE_WORDS });
  })
  .meta({ description: "Nominal cross-section of one conductor", examples: [...SIZE_WORDS] });

/** What the conductors do. */
export const wiring = word(
  ["single", "doubled", "bi-wire"],
  "One pair; four conductors as two pairs side by side; or a pair each for bass and treble; single unless said",
);

/** A point on a surface that cable goes by. */
export const viaSchema = block({
  on: reference("The surface"),
  at: tapes("Where the cable goes by"),
}).describe("A point that the cable goes by");

export const cableSchema = block({
  loss: quantity({
    quantity: "dB",
    least: 0.01,
    most: 20,
    description: "Most that a run may lose",
  }).optional(),
  loop: length(CABLE_LENGTH, "Left at each end; at the loudspeaker where rack_loop says another").optional(),
  rack_loop: length(CABLE_LENGTH, "Left at the equipment").optional(),
  spare: quantity({ quantity: "percent", least: 0, most: 100, description: "Added to each run" }).optional(),
  gauges: z
    .array(wholeNumber({ least: 4, most: 30, description: "AWG" }))
    .min(1)
    .max(20)
    .describe("Gauges at hand")
    .optional(),
  sizes: z
    .array(crossSection)
    .min(1)
    .max(20)
    .describe("Cross-sections at hand, beside the gauges")
    .optional(),
  wiring: wiring.optional(),
  temperature: temperature({
    least: -40,
    most: 90,
    description: "Of the copper, which sets its resistance; 20 °C unless said",
  }).optional(),
  spools: z
    .array(length(CABLE_LENGTH, "One length"))
    .min(1)
    .max(10)
    .describe("Lengths that cable is bought in; 500 ft unless said")
    .optional(),
  avoid: z
    .array(
      block({
        on: reference("The surface"),
        corner: tapes("One corner"),
        opposite: tapes("The corner across from it"),
      }),
    )
    .max(200)
    .describe("Where no cable may lie")
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
  line: quantity({
    quantity: "deg",
    least: 0,
    most: 90,
    description:
      "What sharing a line may cost an overhead loudspeaker; 1 deg unless said, 0 asks for no lines",
  }).optional(),
  joint: quantity({
    quantity: "deg",
    least: 0,
    most: 90,
    description:
      "What the best place may lose to keep off a joint of the board; 2 deg unless said, 0 asks for no such care",
  }).optional(),
}).describe("What is asked for beyond the standards");

export type ViaFile = z.output<typeof viaSchema>;
export type AvoidFile = NonNullable<z.output<typeof cableSchema>["avoid"]>[number];

export const acceptSchema = (texts: Texts) =>
  block({
    code: texts.name("Code of the finding"),
    speaker: reference("Id of the loudspeaker, where it is about one").optional(),
    why: texts.reason("The reason, printed"),
  }).describe("A warning that is accepted");
