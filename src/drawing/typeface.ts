import type { Face } from "./drawing.js";
import { readTypefaceFile } from "./typeface-files.js";

/** One character of a face: code point, glyph, advance, lowest and highest ink above the baseline, in font units. */
export type GlyphRow = readonly [
  codePoint: number,
  glyph: number,
  advance: number,
  lowest: number,
  highest: number,
];

/** What is stored of a prepared face, in font units. */
export interface FaceMetrics {
  /** PostScript name of the font. */
  readonly name: string;
  /** Length of the font's file before it was deflated. */
  readonly byteLength: number;
  readonly unitsPerEm: number;
  readonly capHeight: number;
  readonly ascent: number;
  /** Below 0. */
  readonly descent: number;
  readonly box: readonly [left: number, bottom: number, right: number, top: number];
  readonly rows: readonly GlyphRow[];
}

export interface Typeface extends FaceMetrics {
  readonly byCodePoint: ReadonlyMap<number, GlyphRow>;
  /** Of those, by code point too, the first 256, which nearly every letter is among. */
  readonly latin: readonly (GlyphRow | undefined)[];
  /** No glyph has a higher number. */
  readonly lastGlyph: number;
}

const LATIN = 256;

/** First and last code points of the stretches that both faces can draw, sorted. */
export type Coverage = readonly (readonly [first: number, last: number])[];

/** The file names of the prepared typeface, shared by the script that writes them and those who read them. */
export const TYPEFACE_FILES = {
  metrics: (face: Face): string => `${face}.json`,
  /** The whole subset, deflated for a PDF, and its length before. */
  deflated: (face: Face): string => `${face}.ttf.deflated`,
  whole: (face: Face): string => `${face}.ttf`,
  everyday: (face: Face): string => `${face}-everyday.ttf`,
  coverage: "coverage.json",
  everydayCoverage: "coverage-everyday.json",
} as const;

const opened: { [face in Face]?: Typeface } = {};

/** The metrics of a face, read from the disc once. */
export function typeface(face: Face): Typeface {
  const known = opened[face];
  if (known !== undefined) return known;
  // Our own build wrote the file in this shape; the tests of src/build hold it to it.
  const metrics = JSON.parse(readTypefaceFile(TYPEFACE_FILES.metrics(face)).toString("utf8")) as FaceMetrics;
  const byCodePoint = new Map(metrics.rows.map((row) => [row[0], row]));
  const latin = Array.from({ length: LATIN }, (_, codePoint) => byCodePoint.get(codePoint));
  const lastGlyph = Math.max(...metrics.rows.map(([, glyph]) => glyph));
  const read = { ...metrics, byCodePoint, latin, lastGlyph };
  opened[face] = read;
  return read;
}
