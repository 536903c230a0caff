import { describe, expect, it } from "vitest";
import { writePdf } from "../../src/output/pdf.js";
import { EVERY_PAPER, LAYER_NAMES, RECTANGULAR, ROUND, scaled, sizeOf, tilesOf } from "./drawings.js";
import { drawnOn, extentOf } from "./vectors.js";

/** What the file itself says is held ten times closer than what a renderer makes of it. */
const EXACT_TO_MM = 0.01;

const cuts = [ROUND, RECTANGULAR, scaled(ROUND, 20), scaled(RECTANGULAR, 20)];

describe.each(EVERY_PAPER.map((paper) => ({ name: paper.name, paper })))(
  "the lines of a PDF on $name, read by pdf.js, are exact",
  ({ paper }) => {
    it.each(cuts)("a $kind", async (cut) => {
      const { tiles, centre } = tilesOf(cut, paper);
      const pages = tiles.map((tile) => tile.page);
      const pdf = await writePdf(pages, { title: "exact", language: "en", layerNames: LAYER_NAMES });
      for (const [index, { offset }] of tiles.entries()) {
        const lines = (await drawnOn(pdf, index + 1)).filter(({ layer }) => layer === LAYER_NAMES.cut);
        expect(lines).toHaveLength(1);
        for (const line of lines) {
          const extent = extentOf(line);
          const expected = [
            sizeOf(cut).widthMm,
            sizeOf(cut).heightMm,
            centre.x - offset.x,
            centre.y - offset.y,
          ];
          const found = [extent.widthMm, extent.heightMm, extent.centre.x, extent.centre.y];
          found.forEach((value, at) => {
            expect(Math.abs(value - (expected[at] ?? Number.NaN))).toBeLessThanOrEqual(EXACT_TO_MM);
          });
          expect(line.lineMm).toBeCloseTo(0.7, 6);
        }
      }
    });
  },
);
