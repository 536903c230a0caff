import type { PDFContext, PDFRef } from "pdf-lib";
import type { Page } from "../drawing/drawing.js";
import { InternalError } from "../findings/internal-error.js";
import { MAX_PAGE_SIDE_PDF_UNITS, PDF_UNITS_PER_INCH } from "../standards/page-units.js";
import { MM_PER_INCH } from "../units/definitions.js";
import { deflated } from "./deflate.js";
import { factor, figure } from "./figure.js";
import { type Content, contentOf, type Noted } from "./pdf-content.js";
import { glyphsOfAll } from "./pdf-glyphs.js";
import { addStream } from "./pdf-stream.js";

/** Nominal length over the one measured on paper, in each direction of the page; 1 where the printer is true. */
export interface PrinterCorrection {
  readonly x: number;
  readonly y: number;
}

/** A page ready to stand in a document: plain data, which one thread may draw and another join. */
export interface DrawnPage extends Noted {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly deflated: Uint8Array;
}

const UNITS_PER_MM = PDF_UNITS_PER_INCH / MM_PER_INCH;
const NO_CORRECTION: PrinterCorrection = { x: 1, y: 1 };

/** Throws an InternalError for a figure that is none, and for a page side that is not above 0 or over 5080 mm. */
export const drawPage = (page: Page, correction?: PrinterCorrection): DrawnPage =>
  drawnPage(page, [contentOf(page.items)], correction);

/** A page of contents that were drawn before, one upon the other; throws like `drawPage`. */
export function drawnPage(
  page: Omit<Page, "items">,
  contents: readonly Content[],
  correction = NO_CORRECTION,
): DrawnPage {
  const { title, widthMm, heightMm } = page;
  for (const sideMm of [widthMm, heightMm]) pageSide(sideMm);
  const operators = contents.map((content) => content.operators).filter((each) => each !== "");
  const content = framed(page, operators.join("\n"), correction);
  return { ...together(contents), title, widthMm, heightMm, deflated: deflated(content) };
}

/** What all together need of the document around them. */
export function together(parts: readonly Noted[]): Noted {
  const [only] = parts;
  if (only !== undefined && parts.length === 1) return { glyphs: only.glyphs, layers: only.layers };
  return {
    glyphs: glyphsOfAll(parts.map(({ glyphs }) => glyphs)),
    layers: new Set(parts.flatMap(({ layers }) => [...layers])),
  };
}

function refuseBadFactor(value: number): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new InternalError(`${value} is no correction of a printer`);
}

/** Content with the matrix before it that turns millimetres, y down, into PDF units, y up, and corrects the printer. */
function framed(page: Omit<Page, "items">, content: string, correction: PrinterCorrection): string {
  refuseBadFactor(correction.x);
  refuseBadFactor(correction.y);
  const centre = { x: (page.widthMm * UNITS_PER_MM) / 2, y: (page.heightMm * UNITS_PER_MM) / 2 };
  const left = centre.x * (1 - correction.x);
  const top = centre.y * (1 + correction.y);
  const matrix = [correction.x * UNITS_PER_MM, 0, 0, -correction.y * UNITS_PER_MM, left, top];
  return `${matrix.map(factor).join(" ")} cm\n${MITRE_LIMIT} M\n${content}\n`;
}

/** As in SVG, where 4 is the default, so that both draw the same corners; PDF's own is 10. */
const MITRE_LIMIT = 4;

function pageSide(sideMm: number): number {
  const units = sideMm * UNITS_PER_MM;
  // Lengths carried over from inches may come out a hair above: the rounding at output decides.
  if (!(units > 0 && Number(figure(units)) <= MAX_PAGE_SIDE_PDF_UNITS)) {
    throw new InternalError(`no page can have a side of ${sideMm} mm`);
  }
  return Number(figure(units));
}

interface Around {
  readonly tree: PDFRef;
  readonly resources: PDFRef;
}

/** Adds a page to the document. Never with a UserUnit: two of four readers ignore it and print it wrong (measured). */
export function addPage(context: PDFContext, page: DrawnPage, around: Around): PDFRef {
  return context.register(
    context.obj({
      Type: "Page",
      Parent: around.tree,
      MediaBox: [0, 0, pageSide(page.widthMm), pageSide(page.heightMm)],
      Resources: around.resources,
      Contents: addStream(context, page.deflated),
    }),
  );
}
