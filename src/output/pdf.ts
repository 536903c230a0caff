import { createHash } from "node:crypto";
import { PDFContext, type PDFDict, PDFHexString, type PDFRef, PDFStreamWriter, PDFString } from "pdf-lib";
import type { Layer, Page } from "../drawing/drawing.js";
import { cleanText } from "./clean-text.js";
import type { Noted } from "./pdf-content.js";
import { embedFont } from "./pdf-font.js";
import { rowsOf } from "./pdf-glyphs.js";
import { type LayerRefs, layerProperties, layersOf } from "./pdf-layers.js";
import { type Bookmark, outlineOf } from "./pdf-outline.js";
import { addPage, type DrawnPage, drawPage, type PrinterCorrection, together } from "./pdf-page.js";
import { FONT_KEY } from "./pdf-text.js";

export { type Content, contentOf } from "./pdf-content.js";
export { type DrawnPage, drawnPage, type PrinterCorrection } from "./pdf-page.js";

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

/** `joinPdf` of pages that stand in this document alone. */
export const writePdf = async (pages: readonly Page[], options: PdfOptions): Promise<Uint8Array> =>
  joinPdf(
    pages.map((page) => drawPage(page, options.correction)),
    options,
  );

/**
 * The pages as one PDF, each page exactly its size, its content in one stream; a drawn page may stand in several. The
 * same pages give the same bytes: there is no date in it, and its identifier is made from its content. Throws an
 * InternalError for a figure that is none and for a page side that is not above 0 or over 5080 mm.
 */
export async function joinPdf(pages: readonly DrawnPage[], options: PdfOptions): Promise<Uint8Array> {
  const context = PDFContext.create();
  const noted = together(pages);
  const layers = layersOf(context, noted.layers, options.layerNames);
  const resources = context.register(context.obj(resourcesOf(context, noted, layers)));
  const tree = context.nextRef();
  const leaves = pages.map((page) => ({
    title: page.title,
    page: addPage(context, page, { tree, resources }),
  }));
  const kids = leaves.map(({ page }) => page);
  context.assign(tree, context.obj({ Type: "Pages", Kids: kids, Count: kids.length }));
  context.trailerInfo.Root = context.register(catalogOf(context, { tree, leaves, layers, options }));
  context.trailerInfo.Info = context.register(informationOf(context, options));
  const said = [JSON.stringify(options), ...pages.map(({ deflated }) => deflated)];
  context.trailerInfo.ID = identifierOf(context, said);
  return PDFStreamWriter.forContext(
    context,
    Number.POSITIVE_INFINITY,
    true,
    OBJECTS_IN_STREAM,
  ).serializeToBuffer();
}

const OBJECTS_IN_STREAM = 100;

function resourcesOf(context: PDFContext, noted: Noted, layers: LayerRefs) {
  const used = (["regular", "bold"] as const).map((face) => ({
    face,
    rows: rowsOf(noted.glyphs[face], face),
  }));
  const fonts = used
    .filter(({ rows }) => rows.length > 0)
    .map(({ face, rows }) => [FONT_KEY[face], embedFont(context, face, rows)]);
  return {
    ...(fonts.length === 0 ? {} : { Font: Object.fromEntries(fonts) }),
    ...(layers.size === 0 ? {} : { Properties: Object.fromEntries(layers) }),
  };
}

interface CatalogParts {
  readonly tree: PDFRef;
  readonly leaves: readonly Bookmark[];
  readonly layers: LayerRefs;
  readonly options: PdfOptions;
}

function catalogOf(context: PDFContext, { tree, leaves, layers, options }: CatalogParts): PDFDict {
  const bookmarks = outlineOf(context, leaves);
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
function identifierOf(context: PDFContext, said: readonly (string | Uint8Array)[]) {
  const hash = createHash("sha256");
  for (const each of said) hash.update(each);
  const identifier = PDFHexString.of(hash.digest("hex").slice(0, 32));
  return context.obj([identifier, identifier]);
}
