import { byFace, byText } from "../drawing/by-text.js";
import { drawable } from "../drawing/coverage.js";
import type { Face, Text } from "../drawing/drawing.js";
import { BEFORE, emMm, textWidthMm } from "../drawing/text.js";
import { typeface } from "../drawing/typeface.js";
import { factor, figure } from "./figure.js";

/** Which code point a glyph that was drawn stands for, by face: what has to be embedded. */
export type UsedGlyphs = Readonly<Record<Face, ReadonlyMap<number, number>>>;

/** Names of the fonts in every page's resources. */
export const FONT_KEY: Readonly<Record<Face, string>> = { regular: "R", bold: "B" };

/** A letter in a content stream: the number of its glyph, two bytes, high byte first, and what it stands for. */
interface Letter {
  readonly written: string;
  readonly glyph: number;
  readonly codePoint: number;
}

const letters = byFace((face) => byText((character) => letterOf(character, face)));

function letterOf(character: string, face: Face): Letter {
  const codePoint = character.codePointAt(0) ?? 0;
  const glyph = typeface(face).byCodePoint.get(codePoint)?.[1] ?? 0;
  const bytes = String.fromCharCode(glyph >> 8, glyph & 0xff);
  const written = bytes.replace(NOT_AS_IT_IS, (byte) => AS_WRITTEN.get(byte) ?? `\\${byte}`);
  return { written, glyph, codePoint };
}

/** What means something else in a literal string (ISO 32000-1, 7.3.4.2): brackets, and line ends, which readers exchange. */
const NOT_AS_IT_IS = /[()\\\r\n]/gu;
const AS_WRITTEN: ReadonlyMap<string, string> = new Map([
  ["\r", "\\r"],
  ["\n", "\\n"],
]);

/** A text as it stands in a content stream: a literal string, and its letters, each once. */
interface Literal {
  readonly literal: string;
  readonly letters: readonly Letter[];
}

const literals = byFace((face) => byText((text) => literalOf(drawable(text), letters[face])));

function literalOf(text: string, letter: (character: string) => Letter): Literal {
  const used = Array.from(text, letter);
  return { literal: `(${used.map(({ written }) => written).join("")})`, letters: [...new Set(used)] };
}

/** The literals of a page, each once. */
export type Literals = Readonly<Record<Face, Set<Literal>>>;

export const noLiterals = (): Literals => ({ regular: new Set(), bold: new Set() });

export function glyphsOf(used: Literals): UsedGlyphs {
  const of = (face: Face): ReadonlyMap<number, number> => {
    const all = new Set<Letter>();
    for (const literal of used[face]) for (const letter of literal.letters) all.add(letter);
    return new Map(Array.from(all, ({ glyph, codePoint }) => [glyph, codePoint]));
  };
  return { regular: of("regular"), bold: of("bold") };
}

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
