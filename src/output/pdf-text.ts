import { byFace, byText } from "../drawing/by-text.js";
import { drawable } from "../drawing/coverage.js";
import type { Face, Text } from "../drawing/drawing.js";
import { BEFORE, emMm, textWidthMm } from "../drawing/text.js";
import { typeface } from "../drawing/typeface.js";
import { factor, figure } from "./figure.js";
import { noGlyphs, noteGlyphs, type UsedGlyphs } from "./pdf-glyphs.js";

/** Names of the fonts in every page's resources. */
export const FONT_KEY: Readonly<Record<Face, string>> = { regular: "R", bold: "B" };

/** A letter in a content stream: the number of its glyph, and that as two bytes, high byte first. */
interface Letter {
  readonly written: string;
  readonly glyph: number;
}

/** By face and code point, each as it is first drawn. */
const letters: Readonly<Record<Face, Map<number, Letter>>> = { regular: new Map(), bold: new Map() };

function letterOf(codePoint: number, face: Face): Letter {
  const glyph = typeface(face).byCodePoint.get(codePoint)?.[1] ?? 0;
  const bytes = String.fromCharCode(glyph >> 8, glyph & 0xff);
  const written = bytes.replace(NOT_AS_IT_IS, (byte) => AS_WRITTEN.get(byte) ?? `\\${byte}`);
  const letter = { written, glyph };
  letters[face].set(codePoint, letter);
  return letter;
}

/** What means something else in a literal string (ISO 32000-1, 7.3.4.2): brackets, and line ends, which readers exchange. */
const NOT_AS_IT_IS = /[()\\\r\n]/gu;
const AS_WRITTEN: ReadonlyMap<string, string> = new Map([
  ["\r", "\\r"],
  ["\n", "\\n"],
]);

/** A text as it stands in a content stream: a literal string, and the numbers of its glyphs, each once. */
interface Literal {
  readonly literal: string;
  readonly glyphs: readonly number[];
}

const literals = byFace((face) => byText((text) => literalOf(drawable(text), face)));

const LAST_IN_ONE_UNIT = 0xffff;

function literalOf(text: string, face: Face): Literal {
  const known = letters[face];
  const glyphs: number[] = [];
  let literal = "(";
  for (let at = 0; at < text.length; at++) {
    const codePoint = text.codePointAt(at) ?? 0;
    if (codePoint > LAST_IN_ONE_UNIT) at++;
    const { written, glyph } = known.get(codePoint) ?? letterOf(codePoint, face);
    literal += written;
    if (!glyphs.includes(glyph)) glyphs.push(glyph);
  }
  return { literal: `${literal})`, glyphs };
}

/** The literals of a page, each once. */
export type Literals = Readonly<Record<Face, Set<Literal>>>;

export const noLiterals = (): Literals => ({ regular: new Set(), bold: new Set() });

export const glyphsOf = (used: Literals): UsedGlyphs =>
  byFace((face) => {
    const noted = noGlyphs(face);
    for (const { glyphs } of used[face]) noteGlyphs(noted, glyphs);
    return noted;
  });

/**
 * The text matrix: the page has y down, letters have y up, so their second axis is turned over; both are turned
 * clockwise by the text's angle, and the anchor is moved to where the text starts.
 */
function matrix(item: Text): string {
  const before = BEFORE[item.anchor];
  const backMm = before === 0 ? 0 : before * textWidthMm(item.text, item);
  const turnDeg = item.turnDeg ?? 0;
  if (turnDeg === 0) return `1 0 0 -1 ${figure(item.at.x - backMm)} ${figure(item.at.y)}`;
  const radians = (turnDeg * Math.PI) / 180;
  const cosine = Math.cos(radians);
  const sine = Math.sin(radians);
  const axes = [cosine, sine, sine, -cosine].map(factor).join(" ");
  return `${axes} ${figure(item.at.x - backMm * cosine)} ${figure(item.at.y - backMm * sine)}`;
}

/** Operators that draw a text, its literal noted among those used. */
export function textOperators(item: Text, used: Literals): string {
  const literal = literals[item.face](item.text);
  used[item.face].add(literal);
  return `BT /${FONT_KEY[item.face]} ${figure(emMm(item))} Tf ${matrix(item)} Tm ${literal.literal} Tj ET`;
}
