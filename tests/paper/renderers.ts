/*
 * Three renderers that share no code with ours or with one another: poppler and pdf.js for PDF, resvg for SVG. Each
 * draws a region of a page at 304.8 dpi, which is 12 pixels to the millimetre.
 */
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { createCanvas } from "@napi-rs/canvas";
import { Resvg } from "@resvg/resvg-js";
import { openPdf } from "./open-pdf.js";
import type { Picture, Region } from "./picture.js";

export const PIXELS_PER_MM = 12;
const DPI = PIXELS_PER_MM * 25.4;
const POINTS_PER_MM = 72 / 25.4;

/** The region on whole pixels, outward, so that every renderer draws the same pixels. */
const pixelsOf = ({ x, y, widthMm, heightMm }: Region) => {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [right, bottom] = [Math.ceil(x + widthMm), Math.ceil(y + heightMm)];
  return {
    corner: { x: left, y: top },
    widthPx: (right - left) * PIXELS_PER_MM,
    heightPx: (bottom - top) * PIXELS_PER_MM,
  };
};

const run = promisify(execFile);

/** A page's region by poppler, from Debian's poppler-utils. Pages count from 1. */
export async function byPoppler(pdf: Uint8Array, page: number, region: Region): Promise<Picture> {
  const { corner, widthPx, heightPx } = pixelsOf(region);
  const folder = await mkdtemp(join(tmpdir(), "paper-"));
  try {
    await writeFile(join(folder, "sheet.pdf"), pdf);
    const where = { f: page, l: page, r: DPI, x: corner.x * PIXELS_PER_MM, y: corner.y * PIXELS_PER_MM };
    const options = Object.entries({ ...where, W: widthPx, H: heightPx }).flatMap(([key, value]) => [
      `-${key}`,
      String(value),
    ]);
    const drawn = await run("pdftoppm", ["-gray", ...options, join(folder, "sheet.pdf")], {
      encoding: "buffer",
      maxBuffer: 2 ** 28,
    });
    return { ...readGreyMap(drawn.stdout), pixelsPerMm: PIXELS_PER_MM, corner };
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** A portable grey map (netpbm's P5), turned from light to ink. */
function readGreyMap(file: Buffer): { widthPx: number; heightPx: number; ink: Uint8Array } {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/u.exec(file.toString("latin1", 0, 64));
  if (header === null) throw new Error("poppler drew no grey map");
  const light = file.subarray(header[0].length);
  const ink = new Uint8Array(light.length);
  for (let pixel = 0; pixel < ink.length; pixel++) ink[pixel] = 255 - (light[pixel] ?? 255);
  return { widthPx: Number(header[1]), heightPx: Number(header[2]), ink };
}

/** A page's region by pdf.js on a canvas. Pages count from 1. */
export async function byPdfJs(pdf: Uint8Array, page: number, region: Region): Promise<Picture> {
  const { corner, widthPx, heightPx } = pixelsOf(region);
  const document = await openPdf(pdf);
  try {
    const sheet = await document.getPage(page);
    const viewport = sheet.getViewport({
      scale: PIXELS_PER_MM / POINTS_PER_MM,
      offsetX: -corner.x * PIXELS_PER_MM,
      offsetY: -corner.y * PIXELS_PER_MM,
    });
    const canvas = createCanvas(widthPx, heightPx);
    const context = canvas.getContext("2d");
    await sheet.render({ canvas: null, canvasContext: context, viewport, background: "white" }).promise;
    const { data } = context.getImageData(0, 0, widthPx, heightPx);
    return { widthPx, heightPx, ink: inkOf(data), pixelsPerMm: PIXELS_PER_MM, corner };
  } finally {
    await document.destroy();
  }
}

/** Ink from red, green, blue and opacity on white paper; our lines are black, so that green stands for all. */
function inkOf(data: Uint8Array | Uint8ClampedArray): Uint8Array {
  const ink = new Uint8Array(data.length / 4);
  for (let pixel = 0; pixel < ink.length; pixel++) ink[pixel] = 255 - (data[4 * pixel + 1] ?? 255);
  return ink;
}

const { resolve } = createRequire(import.meta.url);
const FONTS = ["DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf"].map((file) =>
  resolve(`dejavu-fonts-ttf/ttf/${file}`),
);
/** White paper, and our own typeface only. */
export const RESVG_OPTIONS = {
  background: "white",
  font: { loadSystemFonts: false, fontFiles: FONTS, defaultFontFamily: "DejaVu Sans Condensed" },
};

const ROOT = /<svg ([^>]*)width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/u;

/**
 * A drawing's region by resvg. It always draws a whole picture of whole pixels, so the drawing's own view box is
 * narrowed to the region; that it said one unit for each millimetre is made sure of first.
 */
export function byResvg(svg: string, region: Region): Picture {
  const { corner, widthPx, heightPx } = pixelsOf(region);
  const [found, before = "", width, height, across, down] = ROOT.exec(svg) ?? [];
  if (found === undefined || width !== across || height !== down)
    throw new Error("units are not millimetres");
  const view = `${corner.x} ${corner.y} ${widthPx / PIXELS_PER_MM} ${heightPx / PIXELS_PER_MM}`;
  const narrowed = svg.replace(
    found,
    `<svg ${before}width="${widthPx}" height="${heightPx}" viewBox="${view}"`,
  );
  return { ...rendered(narrowed), pixelsPerMm: PIXELS_PER_MM, corner };
}

/** A whole drawing by resvg, its size left to resvg: for pages whose sides are whole millimetres. */
export function wholeByResvg(svg: string): Picture {
  return { ...rendered(svg, DPI), pixelsPerMm: PIXELS_PER_MM, corner: { x: 0, y: 0 } };
}

function rendered(svg: string, dpi?: number) {
  const image = new Resvg(svg, { ...RESVG_OPTIONS, ...(dpi === undefined ? {} : { dpi }) }).render();
  return { widthPx: image.width, heightPx: image.height, ink: inkOf(image.pixels) };
}
