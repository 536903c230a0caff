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

const hex = (glyph: number): string => glyph.toString(16).padStart(4, "0");

function encode(text: string, face: Typeface, used: Map<number, number>): string {
  return [...drawable(text)]
    .map((character) => {
      const codePoint = character.codePointAt(0) ?? 0;
      const glyph = face.byCodePoint.get(codePoint)?.[1] ?? 0;
      if (!used.has(glyph)) used.set(glyph, codePoint);
      return hex(glyph);
    })
    .join("");
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
  const letters = encode(item.text, typeface(item.face), used[item.face]);
  return `BT /${FONT_KEY[item.face]} ${figure(emMm(item))} Tf ${matrix(item)} Tm <${letters}> Tj ET`;
}
