import * as z from "zod";
import { LABEL_STOCK_NAMES } from "../../standards/label-stock.js";
import {
  MAX_PAGE_SIDE_MM,
  MIN_PAGE_SIDE_MM,
  PAPERS,
  type PaperProblem,
  parsePaper,
} from "../../standards/paper.js";
import { shown } from "../shown.js";
import { suggest } from "../suggest.js";
import { block } from "./block.js";
import { complain, type Reading } from "./complain.js";
import { CABLE_DIAMETER, PAPER_SIDE, PAPER_TAPE } from "./limits.js";
import { length, wholeNumber } from "./measures.js";
import { word } from "./texts.js";
import { written } from "./written.js";

/** The paper's name or size as it was typed, once it is known to be one. */
const paper = written
  .transform((typed, context) => {
    const read = parsePaper(typed);
    return read.ok ? typed.trim() : complainOfPaper(context, typed, read.problem);
  })
  .meta({ description: "Paper by name, or a size such as 13 in x 19 in" });

/** A sheet's name or size; labels do not come on a roll here. */
const sheet = written
  .transform((typed, context) => {
    const read = parsePaper(typed);
    if (!read.ok) return complainOfPaper(context, typed, read.problem);
    if (read.paper.kind === "sheet") return read.paper;
    const choices = PAPERS.filter(({ kind }) => kind === "sheet").map(({ name }) => name);
    return complain(context, "unknown-name", { of: "paper", typed: shown(typed), suggestion: null, choices });
  })
  .meta({ description: "The label sheet, by name or by a size such as 210 mm x 297 mm" });

function complainOfPaper(context: Reading, text: string, problem: PaperProblem): never {
  const typed = shown(text);
  switch (problem.kind) {
    case "unknown-paper": {
      const choices = problem.names;
      return complain(context, "unknown-name", {
        of: "paper",
        typed,
        suggestion: suggest(text, choices),
        choices,
      });
    }
    case "bad-side":
      return complain(context, "not-a-measure", {
        typed,
        measured: "length",
        ways: ["13 in x 19 in", "330 mm x 480 mm"],
      });
    case "side-too-short":
    case "side-too-long":
      return complain(context, "out-of-limits", {
        typed,
        least: `${MIN_PAGE_SIDE_MM} mm`,
        most: `${MAX_PAGE_SIDE_MM} mm`,
      });
  }
}

export const printSchema = block({
  paper: paper.optional(),
  languages: z
    .array(word(["en", "es"], "Language of the sheets"))
    .min(1)
    .max(2)
    .describe("One language, or two on every sheet")
    .optional(),
}).describe("How the packet is printed");

const side = (description: string) => length(PAPER_SIDE, description);

const stock = block({
  page: sheet,
  label: block({ width: side("Across"), height: side("Down") }).describe("Size of one label"),
  columns: wholeNumber({ least: 1, most: 100, description: "Labels across" }),
  rows: wholeNumber({ least: 1, most: 200, description: "Labels down" }),
  left: length(PAPER_TAPE, "From the sheet's left edge to the first label"),
  top: length(PAPER_TAPE, "From the sheet's top edge to the first label"),
  pitch: block({ across: side("Across"), down: side("Down") })
    .describe("From one label to the next")
    .optional(),
  kind: word(["flat", "wrap", "flag"], "How it goes on the cable; flat unless said").optional(),
  printed: side("Height of the printed part of a self-laminating label").optional(),
}).describe("Label stock by its geometry");

/** By name, in either case, as papers are. */
const stockName = written
  .transform((typed, context) => {
    const name = LABEL_STOCK_NAMES.find((each) => each.toLowerCase() === typed.toLowerCase());
    if (name !== undefined) return name;
    const [choices, suggestion] = [LABEL_STOCK_NAMES, suggest(typed, LABEL_STOCK_NAMES)];
    return complain(context, "unknown-name", { of: "stock", typed: shown(typed), suggestion, choices });
  })
  .meta({ description: "Label stock by name", enum: [...LABEL_STOCK_NAMES] });

export const labelsSchema = block({
  stock: z
    .union([stockName, stock])
    .describe("Label stock, by a name that says its geometry or by the geometry itself"),
  used: wholeNumber({
    least: 0,
    most: 20_000,
    description: "Labels already used on the first sheet",
  }).optional(),
  cable_diameter: length(CABLE_DIAMETER, "Outside diameter of the cable that the labels go on").optional(),
}).describe("Labels for the cables");

export type LabelsFile = z.output<typeof labelsSchema>;
export type StockFile = Exclude<LabelsFile["stock"], string>;
