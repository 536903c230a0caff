import { EPSILON_MM } from "../geometry/epsilon.js";
import { BETWEEN_LANGUAGES } from "../words/bilingual.js";
import { byFace, byText } from "./by-text.js";
import { drawable } from "./coverage.js";
import type { Face, PagePoint, Text, Window } from "./drawing.js";
import { type Typeface, typeface } from "./typeface.js";

export { hasGlyph, missingGlyphs } from "./coverage.js";

export interface LetterSize {
  /** Height of a capital, in mm. */
  readonly capMm: number;
  readonly face: Face;
}

/** Room that a text takes about its baseline, all at or above 0. */
export interface TextSize {
  readonly widthMm: number;
  /** From the baseline up to the highest ink, and never less than a capital. */
  readonly ascentMm: number;
  /** From the baseline down to the lowest ink; 0 where nothing hangs below. */
  readonly descentMm: number;
}

/** Size of the em in mm at which a capital is `capMm` high. */
export function emMm({ capMm, face }: LetterSize): number {
  const { unitsPerEm, capHeight } = typeface(face);
  return (capMm * unitsPerEm) / capHeight;
}

/** Advance and ink of a text in units of the face, and how many of them a capital is high. */
interface Extent {
  readonly capHeight: number;
  readonly advance: number;
  readonly lowest: number;
  readonly highest: number;
}

const extents = byFace((face) => byText((text) => addUp(drawable(text), typeface(face))));

/** What lies beyond takes two units of a text. */
const LAST_IN_ONE_UNIT = 0xffff;

function addUp(text: string, { latin, byCodePoint, capHeight }: Typeface): Extent {
  let advance = 0;
  let lowest = 0;
  let highest = capHeight;
  for (let at = 0; at < text.length; at++) {
    const codePoint = text.codePointAt(at) ?? 0;
    if (codePoint > LAST_IN_ONE_UNIT) at++;
    const row = codePoint < latin.length ? latin[codePoint] : byCodePoint.get(codePoint);
    if (row === undefined) continue;
    advance += row[2];
    if (row[3] < lowest) lowest = row[3];
    if (row[4] > highest) highest = row[4];
  }
  return { capHeight, advance, lowest, highest };
}

/**
 * Width of a text and its ink above and below the baseline, in mm, by the advances of the embedded face, without
 * kerning, as both back ends draw it. A character without a glyph counts as what is drawn instead.
 */
export function measureText(text: string, { capMm, face }: LetterSize): TextSize {
  const { capHeight, advance, lowest, highest } = extents[face](text);
  const unitMm = capMm / capHeight;
  return { widthMm: advance * unitMm, ascentMm: highest * unitMm, descentMm: Math.abs(lowest) * unitMm };
}

/** Width alone of what `measureText` measures. */
export function textWidthMm(text: string, { capMm, face }: LetterSize): number {
  const { capHeight, advance } = extents[face](text);
  return advance * (capMm / capHeight);
}

export interface Fit {
  readonly face: Face;
  readonly widthMm: number;
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * The largest cap height in mm between the least and the most at which a text on one line fits the width; the least
 * where even that is too wide, and then the caller wraps it.
 */
export function fitText(text: string, { face, widthMm, leastMm, mostMm }: Fit): number {
  const widthAtOneMm = textWidthMm(text, { capMm: 1, face });
  const fitting = widthAtOneMm === 0 ? mostMm : widthMm / widthAtOneMm;
  return Math.max(leastMm, Math.min(mostMm, fitting));
}

export interface Column extends LetterSize {
  readonly widthMm: number;
}

/**
 * Lines of a text, none wider than the column: whole where it fits, else broken between the languages first (the
 * sign between them goes), then at spaces, and inside a word only where the word alone is too wide. A column narrower
 * than one letter still gets one letter a line.
 */
export function wrapText(text: string, column: Column): readonly string[] {
  if (fits(text, column)) return [text];
  const kept = wrappings(text);
  const known = kept.find(({ column: other }) => isSame(column, other));
  if (known !== undefined) return known.lines;
  const lines = broken(text, column);
  if (kept.length < MOST_COLUMNS) kept.push({ column, lines });
  return lines;
}

/** The same note is tried in the same widths on page after page. */
const wrappings = byText((): { readonly column: Column; readonly lines: readonly string[] }[] => []);
const MOST_COLUMNS = 64;

const isSame = (a: Column, b: Column): boolean =>
  a.widthMm === b.widthMm && a.capMm === b.capMm && a.face === b.face;

function broken(text: string, column: Column): readonly string[] {
  const languages = languagesIn(text);
  if (languages.length > 1) return languages.flatMap((part) => wrapText(part, column));
  return wrapWords(wordsIn(text), column);
}

const languagesIn = byText((text) => text.split(BETWEEN_LANGUAGES));
const wordsIn = byText((text) => text.split(/ +/u).filter(Boolean));

const fits = (text: string, column: Column): boolean =>
  textWidthMm(text, column) <= column.widthMm + EPSILON_MM;

const wrapWords = (words: readonly string[], column: Column): readonly string[] =>
  filled(
    words.flatMap((word) => (fits(word, column) ? [word] : filled([...word], "", column))),
    " ",
    column,
  );

/** Pieces joined into lines that fit, as many to a line as go; widths add up, since nothing is kerned. */
function filled(pieces: readonly string[], between: string, column: Column): readonly string[] {
  const betweenMm = textWidthMm(between, column);
  const lines: { text: string; widthMm: number }[] = [];
  for (const piece of pieces) {
    const widthMm = textWidthMm(piece, column);
    const line = lines.at(-1);
    if (line !== undefined && line.widthMm + betweenMm + widthMm <= column.widthMm + EPSILON_MM) {
      line.text += between + piece;
      line.widthMm += betweenMm + widthMm;
    } else {
      lines.push({ text: piece, widthMm });
    }
  }
  return lines.map(({ text }) => text);
}

/** The share of a text's width that stands before its anchor. */
export const BEFORE: Readonly<Record<Text["anchor"], number>> = { start: 0, middle: 0.5, end: 1 };

/** The four corners of a text's ink box on the page, turned with it: clockwise from what is its top left unturned. */
export function textCorners(item: Text): readonly [PagePoint, PagePoint, PagePoint, PagePoint] {
  const { widthMm, ascentMm, descentMm } = measureText(item.text, item);
  const left = -BEFORE[item.anchor] * widthMm;
  const right = left + widthMm;
  const turn = turnAbout(item.at, item.turnDeg ?? 0);
  return [turn(left, -ascentMm), turn(right, -ascentMm), turn(right, descentMm), turn(left, descentMm)];
}

function turnAbout(at: PagePoint, turnDeg: number): (x: number, y: number) => PagePoint {
  const cosine = Math.cos((turnDeg * Math.PI) / 180);
  const sine = Math.sin((turnDeg * Math.PI) / 180);
  return (x, y) => ({ x: at.x + x * cosine - y * sine, y: at.y + x * sine + y * cosine });
}

/** The upright box on the page around a text, turned or not: for keeping texts apart and on the page. */
export function textBox(item: Text): Window {
  return (item.turnDeg ?? 0) === 0 ? uprightBox(item) : turnedBox(item);
}

function uprightBox(item: Text): Window {
  const { widthMm, ascentMm, descentMm } = measureText(item.text, item);
  const left = -BEFORE[item.anchor] * widthMm;
  const [x, y] = [item.at.x + left, item.at.y - ascentMm];
  return { x, y, widthMm: item.at.x + (left + widthMm) - x, heightMm: item.at.y + descentMm - y };
}

function turnedBox(item: Text): Window {
  const corners = textCorners(item);
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, widthMm: Math.max(...xs) - x, heightMm: Math.max(...ys) - y };
}
