import * as z from "zod";
import { block } from "./block.js";
import { OBSTRUCTION_SIDE, TAPE } from "./limits.js";
import { length } from "./measures.js";
import { reference, tapes } from "./tapes.js";
import type { Texts } from "./texts.js";

const common = (texts: Texts) => ({
  name: texts.name("What it is"),
  on: reference("The surface that it stands in or behind"),
  keep: length(TAPE, "Distance that an opening's edge keeps from it; none unless said").optional(),
  behind: length(
    TAPE,
    "It starts this far behind the face of the framing, so that only deeper hardware meets it",
  ).optional(),
});

const rectangle = (texts: Texts) =>
  block({
    ...common(texts),
    corner: tapes("One corner"),
    opposite: tapes("The corner across from it"),
  });

const round = (texts: Texts) =>
  block({
    ...common(texts),
    at: tapes("Its centre"),
    round: length(OBSTRUCTION_SIDE, "Its diameter"),
  });

export const obstructionSchema = (texts: Texts) =>
  z.union([rectangle(texts), round(texts)]).describe("Something that an opening must stay away from");

export type ObstructionFile = z.output<ReturnType<typeof obstructionSchema>>;
