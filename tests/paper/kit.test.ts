import { createCanvas } from "@napi-rs/canvas";
import { describe, expect, it } from "vitest";
import { BLACK, type Item, type Page } from "../../src/drawing/drawing.js";
import { type PrinterCorrection, writePdf } from "../../src/output/pdf.js";
import { cutItems, LAYER_NAMES, nearCircle, nearRectangle, ROUND } from "./drawings.js";
import { measureCircle, measureRectangle } from "./measure.js";
import type { Picture, Region } from "./picture.js";
import { byPdfJs, PIXELS_PER_MM } from "./renderers.js";

const CENTRE = { x: 135, y: 140 };
const REGION: Region = { x: 0, y: 0, widthMm: 270, heightMm: 280 };

const pageOf = (items: readonly Item[]): Page => ({
  widthMm: 270,
  heightMm: 280,
  title: "",
  language: "en",
  items,
});

async function picture(items: readonly Item[], correction?: PrinterCorrection): Promise<Picture> {
  const options = { title: "", language: "en", layerNames: LAYER_NAMES };
  const pdf = await writePdf(
    [pageOf(items)],
    correction === undefined ? options : { ...options, correction },
  );
  return byPdfJs(pdf, 1, REGION);
}

const measured = async (correction: PrinterCorrection) =>
  measureCircle([await picture(cutItems(ROUND, CENTRE), correction)], nearCircle(ROUND, CENTRE));

describe("the measuring sees what is wrong", () => {
  it("a page scaled to 97 %, as a print dialog does it", async () => {
    const { widthMm, heightMm } = await measured({ x: 0.97, y: 0.97 });
    expect(widthMm).toBeCloseTo(235 * 0.97, 1);
    expect(heightMm).toBeCloseTo(235 * 0.97, 1);
    expect(Math.abs(widthMm - 235)).toBeGreaterThan(0.1);
  });

  it("a page that is off by less than a millimetre, and in one direction only", async () => {
    const { widthMm, heightMm } = await measured({ x: 1.001, y: 1 });
    expect(widthMm - 235).toBeGreaterThan(0.15);
    expect(Math.abs(heightMm - 235)).toBeLessThan(0.1);
  });

  it("a rectangle that is 0.3 mm too high", async () => {
    const tall = { kind: "rectangle", widthMm: 200, heightMm: 250.3 } as const;
    const { widthMm, heightMm } = measureRectangle(
      [await picture(cutItems(tall, CENTRE))],
      nearRectangle({ ...tall, heightMm: 250 }, CENTRE),
    );
    expect(heightMm).toBeCloseTo(250.3, 1);
    expect(widthMm).toBeCloseTo(200, 1);
  });

  it("nothing where there is nothing", async () => {
    const blank = await picture([]);
    expect(() => measureCircle([blank], nearCircle(ROUND, CENTRE))).toThrow(/only 0 points/u);
  });

  it("and not a thinner line in its stead", async () => {
    const circle: Item = {
      kind: "circle",
      centre: CENTRE,
      radiusMm: 117.5,
      stroke: { widthMm: 0.25, ink: BLACK },
    };
    const thin = await picture([circle]);
    expect(() => measureCircle([thin], nearCircle(ROUND, CENTRE))).toThrow(/points of a cut line/u);
  });
});

describe("the measuring by itself", () => {
  it("finds what a canvas drew without any of our code, broken line and all", () => {
    const size = 270 * PIXELS_PER_MM;
    const canvas = createCanvas(size, size).getContext("2d");
    canvas.fillStyle = "white";
    canvas.fillRect(0, 0, size, size);
    canvas.lineWidth = 0.7 * PIXELS_PER_MM;
    canvas.setLineDash([60, 40]);
    canvas.ellipse(135 * 12, 130 * 12, 117.6 * 12, 117.3 * 12, 0, 0, 2 * Math.PI);
    canvas.stroke();
    const { data } = canvas.getImageData(0, 0, size, size);
    const ink = Uint8Array.from({ length: size * size }, (_, pixel) => 255 - (data[4 * pixel] ?? 255));
    const drawn = { widthPx: size, heightPx: size, ink, pixelsPerMm: PIXELS_PER_MM, corner: { x: 0, y: 0 } };
    const found = measureCircle([drawn], nearCircle(ROUND, { x: 136, y: 131 }));
    expect(found.widthMm).toBeCloseTo(235.2, 1);
    expect(found.heightMm).toBeCloseTo(234.6, 1);
    expect(found.centre.x).toBeCloseTo(135, 1);
    expect(found.centre.y).toBeCloseTo(130, 1);
  });
});
