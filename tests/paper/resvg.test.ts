import { describe, expect, it } from "vitest";
import { writeSvg } from "../../src/output/svg.js";
import { cutItems, nearCircle, ROUND } from "./drawings.js";
import { everyPaperIsTrue, expectTrue } from "./every-paper.js";
import { measureCircle } from "./measure.js";
import { byResvg, wholeByResvg } from "./renderers.js";

describe("the SVG drawn by resvg is true to scale", () => {
  everyPaperIsTrue(async (pages, regions) =>
    regions.map((region, index) => {
      const page = pages[index];
      if (page === undefined) throw new Error("fewer pages than regions");
      return byResvg(writeSvg(page), region);
    }),
  );

  it("a whole drawing, whose size in millimetres resvg itself turns into pixels", () => {
    const centre = { x: 130, y: 140 };
    const page = { widthMm: 260, heightMm: 270, title: "", language: "en", items: cutItems(ROUND, centre) };
    const picture = wholeByResvg(writeSvg(page));
    expect([picture.widthPx, picture.heightPx]).toEqual([260 * 12, 270 * 12]);
    expectTrue(measureCircle([picture], nearCircle(ROUND, centre)), ROUND);
  });
});
