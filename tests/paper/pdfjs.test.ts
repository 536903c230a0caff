import { describe } from "vitest";
import { writePdf } from "../../src/output/pdf.js";
import { LAYER_NAMES } from "./drawings.js";
import { everyPaperIsTrue } from "./every-paper.js";
import { byPdfJs } from "./renderers.js";

describe("the PDF drawn by pdf.js is true to scale", () => {
  everyPaperIsTrue(async (pages, regions) => {
    const pdf = await writePdf(pages, { title: "true", language: "en", layerNames: LAYER_NAMES });
    return Promise.all(regions.map((region, index) => byPdfJs(pdf, index + 1, region)));
  });
});
