import { type PDFContext, type PDFRef, PDFString } from "pdf-lib";
import { byText } from "../drawing/by-text.js";
import type { Face } from "../drawing/drawing.js";
import { type GlyphRow, TYPEFACE_FILES, type Typeface, typeface } from "../drawing/typeface.js";
import { readTypefaceFile } from "../drawing/typeface-files.js";
import { deflated } from "./deflate.js";
import { addStream } from "./pdf-stream.js";

/** Six letters before the name say that a font is a subset (ISO 32000-1, 9.6.4). */
const SUBSET_TAG = "BAYMRK";
/** Symbolic: the glyphs are reached by number, not through a standard encoding (ISO 32000-1, table 123). */
const SYMBOLIC = 4;
/** Thickness of a stem, only used by a viewer that must draw another font instead; from memory. */
const STEM: Readonly<Record<Face, number>> = { regular: 88, bold: 160 };

/**
 * The font as it was prepared, whole, with the widths and the text of the glyphs that were used, sorted by their number
 * (ISO 32000-1, 9.7: Type 0 font, Identity-H, glyphs by their own number).
 */
export function embedFont(context: PDFContext, face: Face, used: readonly GlyphRow[]): PDFRef {
  const metrics = typeface(face);
  const name = `${SUBSET_TAG}+${metrics.name}`;
  const descendant = context.register(
    context.obj({
      Type: "Font",
      Subtype: "CIDFontType2",
      BaseFont: name,
      CIDSystemInfo: { Registry: PDFString.of("Adobe"), Ordering: PDFString.of("Identity"), Supplement: 0 },
      FontDescriptor: describe(context, face, metrics),
      CIDToGIDMap: "Identity",
      W: widths(metrics, used),
    }),
  );
  return context.register(
    context.obj({
      Type: "Font",
      Subtype: "Type0",
      BaseFont: name,
      Encoding: "Identity-H",
      DescendantFonts: [descendant],
      ToUnicode: toUnicodeMap(context, used),
    }),
  );
}

function describe(context: PDFContext, face: Face, metrics: Typeface): PDFRef {
  const thousandths = (units: number): number => Math.round((units * 1000) / metrics.unitsPerEm);
  return context.register(
    context.obj({
      Type: "FontDescriptor",
      FontName: `${SUBSET_TAG}+${metrics.name}`,
      Flags: SYMBOLIC,
      FontBBox: metrics.box.map(thousandths),
      ItalicAngle: 0,
      Ascent: thousandths(metrics.ascent),
      Descent: thousandths(metrics.descent),
      CapHeight: thousandths(metrics.capHeight),
      StemV: STEM[face],
      FontFile2: fontFile(context, face),
    }),
  );
}

/** Read once: a packet is several documents, and a building hundreds. */
const fileBytes = byText(readTypefaceFile);

const fontFile = (context: PDFContext, face: Face): PDFRef =>
  addStream(context, fileBytes(TYPEFACE_FILES.deflated(face)), { Length1: typeface(face).byteLength });

/** Pairs of a glyph and the list with its width in thousandths of the em, exact so that nothing drifts. */
const widths = ({ unitsPerEm }: Typeface, used: readonly GlyphRow[]): (number | number[])[] =>
  used.flatMap(([, glyph, advance]) => [glyph, [(advance * 1000) / unitsPerEm]]);

/** Lines of one block of a character map may not pass 100 (ISO 32000-1, 9.7.5.4). */
const BLOCK = 100;

const hexOf = (number: number): string => number.toString(16).padStart(4, "0");

function toUnicodeMap(context: PDFContext, used: readonly GlyphRow[]): PDFRef {
  return addStream(context, deflated(toUnicode(used)));
}

/** The character map by which readers get text back out of glyph numbers (ISO 32000-1, 9.10.3). */
function toUnicode(used: readonly GlyphRow[]): string {
  const lines = used.map(([codePoint, glyph]) => `<${hexOf(glyph)}> <${hexOf(codePoint)}>`);
  const blocks = Array.from({ length: Math.ceil(lines.length / BLOCK) }, (_, index) => {
    const block = lines.slice(index * BLOCK, (index + 1) * BLOCK);
    return `${block.length} beginbfchar\n${block.join("\n")}\nendbfchar`;
  });
  return [
    "/CIDInit /ProcSet findresource begin 12 dict begin begincmap",
    "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def",
    "/CMapName /Adobe-Identity-UCS def /CMapType 2 def",
    "1 begincodespacerange <0000> <ffff> endcodespacerange",
    ...blocks,
    "endcmap CMapName currentdict /CMap defineresource pop end end",
  ].join("\n");
}
