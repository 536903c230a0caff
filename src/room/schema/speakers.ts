import * as z from "zod";
import { CHANNELS, SYSTEMS, systemNamed } from "../../standards/loudspeaker-layouts.js";
import { parseAngle } from "../../units/quantity.js";
import { shown } from "../shown.js";
import { suggest } from "../suggest.js";
import { block } from "./block.js";
import { crossSection, viaSchema, wiring } from "./cabling.js";
import { complain } from "./complain.js";
import { CABLE_LENGTH, TAPE } from "./limits.js";
import { length, wholeNumber } from "./measures.js";
import { point, reference, tapes } from "./tapes.js";
import { id, type Texts, trueOrFalse, word } from "./texts.js";
import { written } from "./written.js";

export const seatSchema = (texts: Texts) =>
  block({
    name: texts.name("Name of the seat"),
    at: tapes("Tapes from two walls that meet to the middle of the head"),
    ear: length(TAPE, "Height of the ear over the finished floor"),
    reference: trueOrFalse("The seat that the layout is built round; one of several must say so").optional(),
  }).describe("A seat");

const channel = written
  .transform((typed, context) => {
    if (CHANNELS.includes(typed)) return typed;
    const suggestion = suggest(typed, CHANNELS);
    return complain(context, "unknown-name", {
      of: "channel",
      typed: shown(typed),
      suggestion,
      choices: CHANNELS,
    });
  })
  .meta({ description: "Channel label of ITU-R BS.2051", enum: [...CHANNELS] });

const SYSTEM_NAMES = SYSTEMS.map((system) => system.name);

/** By its upper+middle+lower name, whichever of name and letter was typed. */
export const layoutSchema = written
  .transform((typed, context) => {
    const system = systemNamed(typed);
    if (system !== null) return system.name;
    const suggestion = suggest(typed, SYSTEM_NAMES);
    return complain(context, "unknown-name", {
      of: "layout",
      typed: shown(typed),
      suggestion,
      choices: SYSTEM_NAMES,
    });
  })
  .meta({ description: "System of ITU-R BS.2051, by its upper+middle+lower name or its letter" });

const QUARTERS = [0, 90, 180, 270] as const;
const QUARTER_WORDS = ["0", "90 deg", "180 deg", "270 deg"];

const turn = written
  .transform((typed, context) => {
    const angle = parseAngle(typed);
    const quarter = QUARTERS.find((quarter) => angle.ok && angle.value === quarter);
    if (quarter !== undefined) return quarter;
    const bare = QUARTERS.find((quarter) => String(quarter) === typed.trim());
    const suggestion = bare === undefined ? null : `${bare} deg`;
    return complain(context, "unknown-word", { typed: shown(typed), suggestion, choices: QUARTER_WORDS });
  })
  .meta({
    description: "Quarter turns anticlockwise, as seen facing the surface",
    type: ["string", "number"],
    enum: [0, ...QUARTER_WORDS, "90°", "180°", "270°"],
  });

const aim = z
  .union([
    reference("reference, a seat's name, or none"),
    point("A point in the room"),
    tapes("A point in the room: tapes from two walls, and up or down"),
  ])
  .describe("What the loudspeaker is turned toward; the reference seat unless said");

const speakerCable = block({
  gauge: wholeNumber({ least: 4, most: 30, description: "AWG" }).optional(),
  conductors: wholeNumber({ least: 2, most: 8, description: "In the jacket" }).optional(),
  length: length(CABLE_LENGTH, "As pulled, where it is known").optional(),
  size: crossSection.optional(),
  wiring: wiring.optional(),
  via: z.array(viaSchema).max(50).describe("Points that it goes by, from the equipment on").optional(),
});

export const speakerSchema = (texts: Texts) =>
  block({
    id: id("Printed on labels and used for names of files"),
    channel: channel.optional(),
    area: reference("Name under areas: it is one of those that fill it, and needs no channel").optional(),
    model: reference("Name under models"),
    on: reference("The surface that it is cut into"),
    at: z
      .union([word(["best"], "Let the program find the position"), tapes("Centre of the opening")])
      .describe("Centre of the opening, or best"),
    hold: tapes("Tapes that stay fixed when the position is found").optional(),
    mirror: reference("Id of the loudspeaker that it is matched with, left to right").optional(),
    turn: turn.optional(),
    aim: aim.optional(),
    amplifier: texts.short("Amplifier channel").optional(),
    cable: speakerCable.describe("Its cable, where it is known").optional(),
  }).meta({ description: "A loudspeaker", anyOf: [{ required: ["channel"] }, { required: ["area"] }] });

export type SeatFile = z.output<ReturnType<typeof seatSchema>>;
export type SpeakerFile = z.output<ReturnType<typeof speakerSchema>>;
