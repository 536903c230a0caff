import { spawnSync } from "node:child_process";
import { describe } from "vitest";
import { writePdf } from "../../src/output/pdf.js";
import { LAYER_NAMES } from "./drawings.js";
import { everyPaperIsTrue } from "./every-paper.js";
import { byPoppler } from "./renderers.js";

const installed = spawnSync("pdftoppm", ["-v"]).status === 0;
if (!installed) console.warn("poppler-utils is not installed: its half of the measuring is left out");

describe.skipIf(!installed)("the PDF drawn by poppler is true to scale", () => {
  everyPaperIsTrue(async (pages, regions) => {
    const pdf = await writePdf(pages, { title: "true", language: "en", layerNames: LAYER_NAMES });
    return Promise.all(regions.map((region, index) => byPoppler(pdf, index + 1, region)));
  });
});
