import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import type { Page } from "../../src/drawing/drawing.js";
import { writePdf } from "../../src/output/pdf.js";
import { writeSvg } from "../../src/output/svg.js";
import { frameItems } from "../../src/sheets/frame.js";
import { openingTemplates } from "../../src/sheets/opening-template.js";
import type { Body, Order, Sheet } from "../../src/sheets/sheet.js";
import { fullSizeMarks, surfaceMarks } from "../../src/sheets/surface-marks.js";
import { isThorough, someOf } from "../how-many.js";
import { job } from "../rooms/job.js";
import { orderFor } from "../sheets/orders.js";
import { EVERY_PAPER, LAYER_NAMES } from "./drawings.js";
import { measureArc, measureCircle, measureRectangle } from "./measure.js";
import { moved, type Picture, type Point, type Region } from "./picture.js";
import { byPdfJs, byPoppler, byResvg } from "./renderers.js";
import { type Drawn, drawnOn, extentOf } from "./vectors.js";

/*
 * The sheets themselves, not drawings made for measuring: a room with a 235 mm round opening overhead and a
 * 200 x 342.9 mm one in a wall, printed as anybody would print it.
 */

const ROUND_MM = 235;
const [WIDE_MM, HIGH_MM] = [200, 342.9];
const VECTORS_TRUE_TO_MM = 0.01;
const TRUE_TO_MM = 0.1;

const JOB = job({
  models: {
    overhead: {
      opening: { round: "235 mm" },
      flange: { round: "260 mm" },
      depth: "150 mm",
      clamp_reach: "12 mm",
      baffle_tilt: "20 deg",
    },
    wall: {
      opening: { width: "200 mm", height: "342.9 mm" },
      flange: { width: "225 mm", height: "368 mm" },
      depth: "90 mm",
      clamp_reach: "12 mm",
    },
  },
  speakers: [
    { id: "TFL", channel: "U+045", model: "overhead", on: "ceiling", at: { left: "1.2 m", front: "1.5 m" } },
    { id: "FL", channel: "M+030", model: "wall", on: "front", at: { left: "0.9 m", up: "1.2 m" } },
  ],
});

const poppler = spawnSync("pdftoppm", ["-v"]).status === 0;
const RENDERERS = [["pdf.js", byPdfJs], ...(poppler ? ([["poppler", byPoppler]] as const) : [])] as const;

function framed(order: Order, body: Body): Page {
  const { widthMm, heightMm, title } = body;
  return {
    widthMm,
    heightMm,
    title,
    language: "en",
    items: [...body.items, ...frameItems(order, body, { number: 1, of: 1 })],
  };
}

function sheetNamed(sheets: readonly Sheet[], name: string): Sheet {
  const sheet = sheets.find((each) => each.name === name);
  if (sheet === undefined) throw new Error(`no sheet ${name}`);
  return sheet;
}

const printed = (pages: readonly Page[]): Promise<Uint8Array> =>
  writePdf(pages, { title: "true", language: "en", layerNames: LAYER_NAMES });

/** The cut line on a page: the heaviest outline on the layer of cuts. */
async function cutOn(pdf: Uint8Array, page: number): Promise<Drawn> {
  const cuts = (await drawnOn(pdf, page)).filter(
    (drawn) => drawn.layer === "Cut" && drawn.painted === "stroke",
  );
  const heaviest = Math.max(...cuts.map((cut) => cut.lineMm));
  const [cut, second] = cuts.filter((drawn) => drawn.lineMm === heaviest);
  if (cut === undefined || second !== undefined) throw new Error(`not one cut line but ${cuts.length}`);
  return cut;
}

async function cutsOn(pdf: Uint8Array, pages: readonly Page[]): Promise<Drawn[]> {
  return Promise.all(pages.map((_, index) => cutOn(pdf, index + 1)));
}

function expectSize(
  size: { widthMm: number; heightMm: number },
  widthMm: number,
  heightMm: number,
  toMm: number,
) {
  expect(Math.abs(size.widthMm - widthMm), `${size.widthMm} in x`).toBeLessThanOrEqual(toMm);
  expect(Math.abs(size.heightMm - heightMm), `${size.heightMm} in y`).toBeLessThanOrEqual(toMm);
}

/** The part of a page where a cut of that size about a centre can be seen. */
function around(page: Page, centre: Point, widthMm: number, heightMm: number): Region {
  const reach = 6;
  const left = Math.max(0, centre.x - widthMm / 2 - reach);
  const top = Math.max(0, centre.y - heightMm / 2 - reach);
  const right = Math.min(page.widthMm, centre.x + widthMm / 2 + reach);
  const bottom = Math.min(page.heightMm, centre.y + heightMm / 2 + reach);
  return { x: left, y: top, widthMm: right - left, heightMm: bottom - top };
}

describe("every template on every paper, from the file's vectors", () => {
  it.each(EVERY_PAPER.map((paper) => paper.name))("%s", async (paper) => {
    const order = orderFor(JOB, { paper });
    for (const [name, widthMm, heightMm] of [
      ["opening-TFL", ROUND_MM, ROUND_MM],
      ["opening-FL", WIDE_MM, HIGH_MM],
    ] as const) {
      const pages = sheetNamed(openingTemplates(order), name).pages.map((body) => framed(order, body));
      const pdf = await printed(pages);
      const cuts = await cutsOn(pdf, pages);
      expect(cuts.length).toBe(pages.length);
      for (const cut of cuts) expectSize(extentOf(cut), widthMm, heightMm, VECTORS_TRUE_TO_MM);
    }
  });
});

describe.each(RENDERERS)("templates in pictures by %s", (_, render) => {
  it.each(someOf(["letter", "A4"], (paper) => paper === "letter"))(
    "a round opening on %s: its last tile alone, and all tiles joined",
    async (paper) => {
      const order = orderFor(JOB, { paper });
      const pages = sheetNamed(openingTemplates(order), "opening-TFL").pages.map((body) =>
        framed(order, body),
      );
      expect(pages.length).toBeGreaterThan(1);
      const pdf = await printed(pages);
      const centres = (await cutsOn(pdf, pages)).map((cut) => extentOf(cut).centre);
      const pictures = await Promise.all(
        pages.map((page, index) => {
          const centre = centres[index] ?? { x: 0, y: 0 };
          return render(pdf, index + 1, around(page, centre, ROUND_MM, ROUND_MM));
        }),
      );
      const middle = { x: 0, y: 0 };
      const joined = pictures.map((picture, index): Picture => {
        const centre = centres[index] ?? middle;
        return moved(picture, { x: -centre.x, y: -centre.y });
      });
      expectSize(
        measureCircle(joined, { centre: middle, radiusMm: ROUND_MM / 2 }),
        ROUND_MM,
        ROUND_MM,
        TRUE_TO_MM,
      );
      expectSize(
        measureArc(joined.slice(-1), { centre: middle, radiusMm: ROUND_MM / 2 }),
        ROUND_MM,
        ROUND_MM,
        TRUE_TO_MM,
      );
    },
  );

  it("a rectangular opening on A3", async () => {
    const order = orderFor(JOB, { paper: "A3" });
    const pages = sheetNamed(openingTemplates(order), "opening-FL").pages.map((body) => framed(order, body));
    const pdf = await printed(pages);
    const centres = (await cutsOn(pdf, pages)).map((cut) => extentOf(cut).centre);
    const pictures = await Promise.all(
      pages.map((page, index) =>
        render(pdf, index + 1, around(page, centres[index] ?? { x: 0, y: 0 }, WIDE_MM, HIGH_MM)),
      ),
    );
    const joined = pictures.map((picture, index) => {
      const centre = centres[index] ?? { x: 0, y: 0 };
      return moved(picture, { x: -centre.x, y: -centre.y });
    });
    const near = { centre: { x: 0, y: 0 }, widthMm: WIDE_MM, heightMm: HIGH_MM };
    expectSize(measureRectangle(joined, near), WIDE_MM, HIGH_MM, TRUE_TO_MM);
  });

  it("a ceiling at a round ratio on A4", async () => {
    const order = orderFor(JOB, { paper: "A4" });
    const [body] = sheetNamed(surfaceMarks(order), "ceiling").pages;
    if (body === undefined) throw new Error("no page");
    const ratio = Number(/1:(\d+)/.exec(body.frame?.scale ?? "")?.[1]);
    expect([10, 20, 25, 50, 100]).toContain(ratio);
    const page = framed(order, body);
    const pdf = await printed([page]);
    const sizeMm = ROUND_MM / ratio;
    const cut = extentOf(await cutOn(pdf, 1));
    expectSize(cut, sizeMm, sizeMm, VECTORS_TRUE_TO_MM);
    const picture = await render(pdf, 1, around(page, cut.centre, sizeMm, sizeMm));
    const near = { centre: cut.centre, radiusMm: sizeMm / 2, searchMm: 1 };
    expectSize(measureCircle([picture], near), sizeMm, sizeMm, TRUE_TO_MM);
  });

  it.each(["roll-36", "roll-914"])("the whole ceiling at 1:1 on %s", async (paper) => {
    const order = orderFor(JOB, { paper });
    const pages = sheetNamed(fullSizeMarks({ ...order, fullSize: true }), "ceiling-full").pages.map((body) =>
      framed(order, body),
    );
    const pdf = await printed(pages);
    const seen = await Promise.all(
      pages.map(async (_, index) => (await drawnOn(pdf, index + 1)).filter((drawn) => drawn.layer === "Cut")),
    );
    const at = seen.findIndex((drawn) => drawn.length > 0);
    const page = pages[at];
    if (page === undefined) throw new Error("no cut line on the roll");
    expect(page.widthMm).toBeLessThanOrEqual(5080);
    expect(page.heightMm).toBeLessThanOrEqual(5080);
    const { centre } = extentOf(await cutOn(pdf, at + 1));
    const picture = await render(pdf, at + 1, around(page, centre, ROUND_MM, ROUND_MM));
    expectSize(measureCircle([picture], { centre, radiusMm: ROUND_MM / 2 }), ROUND_MM, ROUND_MM, TRUE_TO_MM);
  });
});

// Each takes seconds: `npm test` measures a drawing of our own by the same renderer (resvg.test.ts).
describe.runIf(isThorough)("drawings in SVG by resvg", () => {
  it.each([
    ["opening-TFL", ROUND_MM, ROUND_MM],
    ["opening-FL", WIDE_MM, HIGH_MM],
  ] as const)("%s whole at 1:1", async (name, widthMm, heightMm) => {
    const order = orderFor(JOB, { paper: "letter" });
    const { whole } = sheetNamed(openingTemplates(order), name);
    if (whole === null) throw new Error("no whole drawing");
    const page = framed(order, whole());
    const svg = writeSvg(page);
    const pdf = await printed([page]);
    const { centre } = extentOf(await cutOn(pdf, 1));
    const picture = byResvg(svg, around(page, centre, widthMm, heightMm));
    const measured =
      widthMm === heightMm
        ? measureCircle([picture], { centre, radiusMm: widthMm / 2 })
        : measureRectangle([picture], { centre, widthMm, heightMm });
    expectSize(measured, widthMm, heightMm, TRUE_TO_MM);
  });
});
