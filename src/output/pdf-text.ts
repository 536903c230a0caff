import { byFace, byText } from "../drawing/by-text.js";
import { drawable } from "../drawing/coverage.js";
import type { Face, Text } from "../drawing/drawing.js";
import { emMm, measureText } from "../drawing/text.js";
import { type Typeface, typeface } from "../drawing/typeface.js";
import { factor, figure } from "./figure.js";

/** Which code point a glyph that was drawn stands for, by face: what has to be embedded. */
export type UsedGlyphs = Readonly<Record<Face, Map<number, number>>>;

export const noGlyphs = (): UsedGlyphs => ({ regular: new Map(), bold: new Map() });

/** Names of the fonts in every page's resources. */
export const FONT_KEY: Readonly<Record<Face, string>> = { regular: "R", bold: "B" };

const SHIFT_BEFORE: Readonly<Record<Text["anchor"], number>> = { start: 0, middle: 0.5, end: 1 };

/** A text as it stands in a content stream: a literal string of glyph numbers, two bytes each, high byte first. */
interface Letters {
  readonly literal: string;
  /** Each glyph and what it stands for. */
  readonly glyphs: readonly (readonly [glyph: number, codePoint: number])[];
}

const lettersIn = byFace((face) => byText((text) => encode(drawable(text), typeface(face))));

function encode(text: string, { byCodePoint }: Typeface): Letters {
  const glyphs = Array.from(text, (character) => {
    const codePoint = character.codePointAt(0) ?? 0;
    return [byCodePoint.get(codePoint)?.[1] ?? 0, codePoint] as const;
  });
  const bytes = glyphs.map(([glyph]) => String.fromCharCode(glyph >> 8, glyph & 0xff)).join("");
  return {
    literal: `(${bytes.replace(NOT_AS_IT_IS, (byte) => AS_WRITTEN.get(byte) ?? `\\${byte}`)})`,
    glyphs,
  };
}

/** What means something else in a literal string (ISO 32000-1, 7.3.4.2): brackets, and line ends, which readers exchange. */
const NOT_AS_IT_IS = /[()\\\r\n]/gu;
const AS_WRITTEN: ReadonlyMap<string, string> = new Map([
  ["\r", "\\r"],
  ["\n", "\\n"],
]);

function note(used: Map<number, number>, glyphs: Letters["glyphs"]): void {
  for (const [glyph, codePoint] of glyphs) if (!used.has(glyph)) used.set(glyph, codePoint);
}

/**
 * The text matrix: the page has y down, letters have y up, so their second axis is turned over; both are turned
 * clockwise by the text's angle, and the anchor is moved to where the text starts.
 */
function matrix(item: Text): string {
  const radians = ((item.turnDeg ?? 0) * Math.PI) / 180;
  const cosine = Math.cos(radians);
  const sine = Math.sin(radians);
  const before = SHIFT_BEFORE[item.anchor];
  const backMm = before === 0 ? 0 : before * measureText(item.text, item).widthMm;
  const start = [item.at.x - backMm * cosine, item.at.y - backMm * sine].map(figure);
  return [...[cosine, sine, sine, -cosine].map(factor), ...start].join(" ");
}

/** Operators that draw a text, its glyphs noted among those used. */
export function textOperators(item: Text, used: UsedGlyphs): string {
  const { literal, glyphs } = lettersIn[item.face](item.text);
  note(used[item.face], glyphs);
  return `BT /${FONT_KEY[item.face]} ${figure(emMm(item))} Tf ${matrix(item)} Tm ${literal} Tj ET`;
}
