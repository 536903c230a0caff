import * as z from "zod";
import { block } from "./block.js";
import { complain } from "./complain.js";
import { BOARD, DEPTH, MOST_MODELS, OPENING_SIDE, REACH, STRIP } from "./limits.js";
import { length, quantity } from "./measures.js";
import { type Texts, word } from "./texts.js";

const shape = (description: string) =>
  z
    .union([
      block({ round: length(OPENING_SIDE, "Diameter") }),
      block({
        width: length(OPENING_SIDE, "Across the sheet"),
        height: length(OPENING_SIDE, "Up the sheet"),
      }),
    ])
    .describe(description);

const conductor = (texts: Texts) =>
  block({
    colour: texts.short("Colour of the conductor, as the crew says it"),
    terminal: texts.short("The terminal that it goes to, as marked"),
    sign: word(["+", "-"], "Polarity of that terminal"),
  });

export const modelSchema = (texts: Texts) =>
  block({
    opening: shape("The cut-out, from the maker's sheet"),
    flange: shape("What covers the cut-out's edge"),
    depth: length(DEPTH, "Needed behind the finished face"),
    clamp_reach: length(REACH, "How far the clamps swing out past the edge of the opening"),
    board_range: z
      .tuple([length(BOARD, "Thinnest"), length(BOARD, "Thickest")])
      .describe("Thickness of board that the clamps hold")
      .optional(),
    baffle_tilt: quantity({
      quantity: "deg",
      least: 0,
      most: 60,
      description: "Between the loudspeaker's axis and the surface's normal; 0 for a straight one",
    }).optional(),
    coverage: quantity({
      quantity: "deg",
      least: 1,
      most: 360,
      description: "Full angle between the -6 dB points",
    }).optional(),
    sensitivity: quantity({
      quantity: "dB",
      least: 40,
      most: 140,
      description: "At 1 m with 2.83 V",
    }).optional(),
    impedance: quantity({ quantity: "ohm", least: 0.5, most: 1000, description: "Nominal" }).optional(),
    minimum_impedance: quantity({
      quantity: "ohm",
      least: 0.5,
      most: 1000,
      description: "Least over frequency",
    }).optional(),
    power: quantity({ quantity: "W", least: 0.1, most: 100_000, description: "What it takes" }).optional(),
    weight: quantity({ quantity: "kg", least: 0.01, most: 500, description: "With its cover" }).optional(),
    terminal: texts.name("Kind of terminal, such as spring clip").optional(),
    conductors: z
      .array(conductor(texts))
      .max(8)
      .describe("Which conductor goes on which terminal; printed only where it is given")
      .optional(),
    strip: length(STRIP, "Insulation to take off a conductor").optional(),
  }).describe("A loudspeaker, typed in from the maker's data sheet");

export const modelsSchema = (texts: Texts) =>
  z
    .record(texts.name("Name of the model"), modelSchema(texts))
    .check((context) => {
      const count = Object.keys(context.value).length;
      if (count > MOST_MODELS) complain(context, "too-many", { of: "models", count, most: MOST_MODELS });
    })
    .meta({ description: "Loudspeakers by name", maxProperties: MOST_MODELS });

export type ModelFile = z.output<ReturnType<typeof modelSchema>>;
export type ShapeFile = ModelFile["opening"];
