import { byText } from "./by-text.js";
import { type Coverage, TYPEFACE_FILES } from "./typeface.js";
import { readTypefaceFile } from "./typeface-files.js";

const read = new Map<string, Coverage>();

function coverage(file: string): Coverage {
  const known = read.get(file);
  if (known !== undefined) return known;
  // Our own build wrote the file in this shape.
  const ranges = JSON.parse(readTypefaceFile(file).toString("utf8")) as Coverage;
  read.set(file, ranges);
  return ranges;
}

const covers = (ranges: Coverage, codePoint: number): boolean =>
  ranges.some(([first, last]) => first <= codePoint && codePoint <= last);

/** True when both faces can draw the character; loads no more than a short list of ranges. */
export const hasGlyph = (codePoint: number): boolean => covers(coverage(TYPEFACE_FILES.coverage), codePoint);

/** The characters of a text that the typeface cannot draw, each once, in order; empty when all can be drawn. */
export const missingGlyphs = (text: string): readonly string[] => [
  ...new Set([...text].filter((character) => !hasGlyph(character.codePointAt(0) ?? 0))),
];

/** Latin-1 without control characters and soft hyphen: in both cuts, composed already, and nearly all that is drawn. */
const PLAIN = /^[ -~\u00a0-\u00ac\u00ae-\u00ff]*$/u;

/** True when the small cut of the typeface, which an SVG carries with it, can draw the whole text. */
export const isEveryday = (text: string): boolean =>
  PLAIN.test(text) ||
  [...text].every((character) =>
    covers(coverage(TYPEFACE_FILES.everydayCoverage), character.codePointAt(0) ?? 0),
  );

const INSTEAD = "\ufffd";

/**
 * A text as it is drawn: composed (NFC), each control character or line break as a space, and a question mark in a
 * lozenge for whatever has no glyph, so that nothing vanishes and no file becomes invalid. Room files are refused
 * before this for such characters; what is left are names of files and the like.
 */
export function drawable(text: string): string {
  return PLAIN.test(text) ? text : [...text.normalize("NFC")].map(drawnAs).join("");
}

const drawnAs = byText((character) => {
  const codePoint = character.codePointAt(0) ?? 0;
  if (codePoint < 0x20 || (codePoint >= 0x7f && codePoint < 0xa0)) return " ";
  return hasGlyph(codePoint) ? character : INSTEAD;
});
