import { inchesInMm } from "../units/definitions.js";
import { type LengthProblem, parseLength } from "../units/length.js";
import { MAX_PAGE_SIDE_PDF_UNITS, PDF_UNITS_PER_INCH } from "./page-units.js";

/** Paper by its exact size. A roll has only a width: a page on it is as long as its drawing, to `MAX_PAGE_SIDE_MM`. */
export type Paper =
  | { readonly kind: "sheet"; readonly name: string; readonly widthMm: number; readonly heightMm: number }
  | { readonly kind: "roll"; readonly name: string; readonly widthMm: number };

/** Longest page side that every reader prints at its true scale: 200 in. */
export const MAX_PAGE_SIDE_MM = inchesInMm(MAX_PAGE_SIDE_PDF_UNITS / PDF_UNITS_PER_INCH);

/** Our own choice: a 4 in check ruler, the printer's margins at both ends of it, and a little air. */
export const MIN_PAGE_SIDE_MM = 125;

/** Strips along the paper's edges that a printer may leave blank. */
export interface Margins {
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly leftMm: number;
}

/**
 * What nearly every printer reaches. Printers state theirs over the Internet Printing Protocol; of five real replies
 * four ask for no more than this (6.35 mm at the sides, 12.7 mm at the bottom), the fifth for 29 mm at the bottom.
 */
export const SAFE_MARGINS_MM: Margins = { topMm: 6.35, rightMm: 6.35, bottomMm: 12.7, leftMm: 6.35 };

/** Every paper by name, portrait. */
export const PAPERS: readonly Paper[] = [
  // ASME Y14.1, sizes A and B (from memory).
  inchSheet("letter", 8.5, 11),
  inchSheet("tabloid", 11, 17),
  // North American office paper, from memory: no part of ASME Y14.1.
  inchSheet("legal", 8.5, 14),
  // ISO 216, series A (read in a secondary public table).
  sheet("A4", 210, 297),
  sheet("A3", 297, 420),
  sheet("A1", 594, 841),
  // Architectural series, size D (from memory).
  inchSheet("arch-d", 24, 36),
  // Widths of plotter rolls: common practice, no source.
  { kind: "roll", name: "roll-36", widthMm: inchesInMm(36) },
  { kind: "roll", name: "roll-914", widthMm: 914 },
];

function sheet(name: string, widthMm: number, heightMm: number): Paper {
  return { kind: "sheet", name, widthMm, heightMm };
}

function inchSheet(name: string, widthIn: number, heightIn: number): Paper {
  return sheet(name, inchesInMm(widthIn), inchesInMm(heightIn));
}

export type PaperProblem =
  /** Neither a name of the table nor a size; the names that there are. */
  | { readonly kind: "unknown-paper"; readonly names: readonly string[] }
  /** One side of a stated size cannot be read. */
  | { readonly kind: "bad-side"; readonly side: string; readonly problem: LengthProblem }
  | { readonly kind: "side-too-short"; readonly sideMm: number; readonly limitMm: number }
  | { readonly kind: "side-too-long"; readonly sideMm: number; readonly limitMm: number };

export type PaperResult =
  | { readonly ok: true; readonly paper: Paper }
  | { readonly ok: false; readonly problem: PaperProblem };

/** The paper of that name without regard to case (`ARCH D` is `arch-d`), or of a stated size: `13 in x 19 in`. */
export function parsePaper(text: string): PaperResult {
  const name = text.trim();
  const key = name.toLowerCase().replaceAll(" ", "-");
  const paper = PAPERS.find((candidate) => candidate.name.toLowerCase() === key);
  if (paper !== undefined) return { ok: true, paper };
  const [width, height, ...more] = name.split(/[x×]/iu);
  if (width === undefined || height === undefined || more.length > 0 || !/\d/u.test(width)) {
    return { ok: false, problem: { kind: "unknown-paper", names: PAPERS.map((each) => each.name) } };
  }
  return statedSize(name, width.trim(), height.trim());
}

function statedSize(name: string, width: string, height: string): PaperResult {
  const across = parseSide(width);
  if (!across.ok) return across;
  const along = parseSide(height);
  return along.ok ? { ok: true, paper: sheet(name, across.mm, along.mm) } : along;
}

function parseSide(
  side: string,
): { readonly ok: true; readonly mm: number } | { readonly ok: false; readonly problem: PaperProblem } {
  const length = parseLength(side);
  if (!length.ok) return { ok: false, problem: { kind: "bad-side", side, problem: length.problem } };
  const sideMm = length.mm;
  if (sideMm < MIN_PAGE_SIDE_MM) {
    return { ok: false, problem: { kind: "side-too-short", sideMm, limitMm: MIN_PAGE_SIDE_MM } };
  }
  if (sideMm > MAX_PAGE_SIDE_MM) {
    return { ok: false, problem: { kind: "side-too-long", sideMm, limitMm: MAX_PAGE_SIDE_MM } };
  }
  return { ok: true, mm: sideMm };
}
