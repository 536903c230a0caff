import { createHash } from "node:crypto";
import { PDFContext, type PDFDict, PDFHexString, type PDFRef, PDFStreamWriter, PDFString } from "pdf-lib";
import type { Layer, Page } from "../drawing/drawing.js";
import { InternalError } from "../findings/internal-error.js";
import { MAX_PAGE_SIDE_PDF_UNITS, PDF_UNITS_PER_INCH } from "../standards/page-units.js";
import { MM_PER_INCH } from "../units/definitions.js";
import { cleanText } from "./clean-text.js";
import { factor, figure } from "./figure.js";
import { contentOf, type Noted } from "./pdf-content.js";
import { embedFont } from "./pdf-font.js";
import { type LayerRefs, layerProperties, layersOf } from "./pdf-layers.js";
import { outlineOf } from "./pdf-outline.js";
import { FONT_KEY, noGlyphs } from "./pdf-text.js";

/** Nominal length over the one measured on paper, in each direction of the page; 1 where the printer is true. */
export interface PrinterCorrection {
  readonly x: number;
  readonly y: number;
}

export interface PdfOptions {
  readonly title: string;
  readonly author?: string;
  /** BCP 47 tag of the language that most of the text is in. */
  readonly language: string;
  /** What a reader's list of layers calls each. */
  readonly layerNames: Readonly<Record<Layer, string>>;
  /** Every page's content is stretched so about the page's centre; the sheets say so in words. */
  readonly correction?: PrinterCorrection;
}

const PRODUCER = "baymark";
const UNITS_PER_MM = PDF_UNITS_PER_INCH / MM_PER_INCH;
const NO_CORRECTION: PrinterCorrection = { x: 1, y: 1 };

/**
 * The pages as one PDF, each page exactly its size, its content in one stream. The same pages give the same bytes:
 * there is no date in it, and its identifier is made from its content. Throws an InternalError for a figure that is
 * none and for a page side that is not above 0 or over 5080 mm.
 */
export async function writePdf(pages: readonly Page[], options: PdfOptions): Promise<Uint8Array> {
  const context = PDFContext.create();
  const noted: Noted = { glyphs: noGlyphs(), layers: new Set() };
  const contents = pages.map((page) => framed(page, contentOf(page, noted), options.correction));
  const layers = layersOf(context, noted.layers, options.layerNames);
  const resources = context.register(context.obj(resourcesOf(context, noted, layers)));
  const tree = context.nextRef();
  const kids = pages.map((page, index) =>
    addPage(context, { page, tree, resources, content: contents[index] ?? "" }),
  );
  context.assign(tree, context.obj({ Type: "Pages", Kids: kids, Count: kids.length }));
  const catalog = catalogOf(context, { tree, pages, kids, layers, options });
  context.trailerInfo.Root = context.register(catalog);
  context.trailerInfo.Info = context.register(informationOf(context, options));
  context.trailerInfo.ID = identifierOf(context, [JSON.stringify(options), ...contents]);
  return PDFStreamWriter.forContext(
    context,
    Number.POSITIVE_INFINITY,
    true,
    OBJECTS_IN_STREAM,
  ).serializeToBuffer();
}

const OBJECTS_IN_STREAM = 100;

function pageSide(sideMm: number): number {
  const units = sideMm * UNITS_PER_MM;
  // Lengths carried over from inches may come out a hair above: the rounding at output decides.
  if (!(units > 0 && Number(figure(units)) <= MAX_PAGE_SIDE_PDF_UNITS)) {
    throw new InternalError(`no page can have a side of ${sideMm} mm`);
  }
  return Number(figure(units));
}

function refuseBadFactor(value: number): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new InternalError(`${value} is no correction of a printer`);
}

/** Content with the matrix before it that turns millimetres, y down, into PDF units, y up, and corrects the printer. */
function framed(page: Page, content: string, correction = NO_CORRECTION): string {
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

interface PageParts {
  readonly page: Page;
  readonly tree: PDFRef;
  readonly resources: PDFRef;
  readonly content: string;
}

/** Never with a UserUnit: two of four readers ignore it and print at the wrong scale (measured). */
function addPage(context: PDFContext, { page, tree, resources, content }: PageParts): PDFRef {
  const box = [0, 0, pageSide(page.widthMm), pageSide(page.heightMm)];
  const stream = context.register(context.flateStream(content));
  return context.register(
    context.obj({ Type: "Page", Parent: tree, MediaBox: box, Resources: resources, Contents: stream }),
  );
}

function resourcesOf(context: PDFContext, noted: Noted, layers: LayerRefs) {
  const faces = (["regular", "bold"] as const).filter((face) => noted.glyphs[face].size > 0);
  const fonts = faces.map((face) => [FONT_KEY[face], embedFont(context, face, noted.glyphs[face])]);
  return {
    ...(fonts.length === 0 ? {} : { Font: Object.fromEntries(fonts) }),
    ...(layers.size === 0 ? {} : { Properties: Object.fromEntries(layers) }),
  };
}

interface CatalogParts {
  readonly tree: PDFRef;
  readonly pages: readonly Page[];
  readonly kids: readonly PDFRef[];
  readonly layers: LayerRefs;
  readonly options: PdfOptions;
}

function catalogOf(context: PDFContext, { tree, pages, kids, layers, options }: CatalogParts): PDFDict {
  const bookmarks = outlineOf(
    context,
    pages.map((page, index) => ({ title: page.title, page: kids[index] ?? tree })),
  );
  return context.obj({
    Type: "Catalog",
    Pages: tree,
    Lang: PDFString.of(options.language),
    ViewerPreferences: PRINT_AS_IT_IS,
    ...(bookmarks === null ? {} : { Outlines: bookmarks, PageMode: "UseOutlines" }),
    ...(layers.size === 0 ? {} : { OCProperties: layerProperties(layers) }),
  });
}

/**
 * What the print dialog is to begin with (ISO 32000-1, 12.2): no scaling, the tray by the page's size, one side of the
 * paper only, since nobody can cut along both sides of a sheet. `Enforce` asks newer readers to keep the scaling.
 */
const PRINT_AS_IT_IS = {
  PrintScaling: "None",
  PickTrayByPDFSize: true,
  Duplex: "Simplex",
  DisplayDocTitle: true,
  Enforce: ["PrintScaling"],
};

function informationOf(context: PDFContext, { title, author }: PdfOptions): PDFDict {
  return context.obj({
    Title: PDFHexString.fromText(cleanText(title)),
    ...(author === undefined ? {} : { Author: PDFHexString.fromText(cleanText(author)) }),
    Creator: PDFString.of(PRODUCER),
    Producer: PDFString.of(PRODUCER),
  });
}

/** File identifier (ISO 32000-1, 14.4) from the content instead of the usual time and path. */
function identifierOf(context: PDFContext, contents: readonly string[]) {
  const hash = createHash("sha256");
  for (const content of contents) hash.update(content);
  const identifier = PDFHexString.of(hash.digest("hex").slice(0, 32));
  return context.obj([identifier, identifier]);
}
