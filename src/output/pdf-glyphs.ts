import { byFace } from "../drawing/by-text.js";
import type { Face } from "../drawing/drawing.js";
import { type GlyphRow, typeface } from "../drawing/typeface.js";

/** The glyphs of a face that were drawn, by their numbers: bit `number % 32` of word `number / 32`. */
export type Glyphs = Uint32Array;

/** What has to be embedded. */
export type UsedGlyphs = Readonly<Record<Face, Glyphs>>;

const WORD_BITS = 5;
const IN_WORD = 31;

export const noGlyphs = (face: Face): Glyphs =>
  new Uint32Array(Math.ceil((typeface(face).lastGlyph + 1) / (1 << WORD_BITS)));

export function noteGlyphs(noted: Glyphs, numbers: readonly number[]): void {
  for (const number of numbers) {
    const word = number >> WORD_BITS;
    noted[word] = (noted[word] ?? 0) | (1 << (number & IN_WORD));
  }
}

/** Those that any of the parts used. */
export const glyphsOfAll = (parts: readonly UsedGlyphs[]): UsedGlyphs =>
  byFace((face) => {
    const all = noGlyphs(face);
    for (const part of parts) {
      const words = part[face];
      for (let at = 0; at < all.length; at++) all[at] = (all[at] ?? 0) | (words[at] ?? 0);
    }
    return all;
  });

/** The rows of the typeface whose glyphs were used, by the glyphs' numbers; no two share one. */
export const rowsOf = (used: Glyphs, face: Face): readonly GlyphRow[] =>
  typeface(face)
    .rows.filter(([, glyph]) => ((used[glyph >> WORD_BITS] ?? 0) & (1 << (glyph & IN_WORD))) !== 0)
    .toSorted(([, one], [, other]) => one - other);
