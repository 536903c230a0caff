import type { BadCharacter } from "../findings/complaint.js";
import { codePointText } from "./shown.js";

/** True when the sheets' typeface can draw the character. */
export type HasGlyph = (codePoint: number) => boolean;

export interface BadOne {
  readonly reason: BadCharacter;
  readonly codePoint: string;
  readonly name: string | null;
}

/** Names of the Unicode standard for the characters that are most often hidden in a text. */
const NAMES: ReadonlyMap<number, string> = new Map([
  [0x00, "NULL"],
  [0x07, "BELL"],
  [0x08, "BACKSPACE"],
  [0x09, "CHARACTER TABULATION"],
  [0x0a, "LINE FEED"],
  [0x0b, "LINE TABULATION"],
  [0x0c, "FORM FEED"],
  [0x0d, "CARRIAGE RETURN"],
  [0x1b, "ESCAPE"],
  [0x7f, "DELETE"],
  [0x85, "NEXT LINE"],
  [0xad, "SOFT HYPHEN"],
  [0x61c, "ARABIC LETTER MARK"],
  [0x200b, "ZERO WIDTH SPACE"],
  [0x200c, "ZERO WIDTH NON-JOINER"],
  [0x200d, "ZERO WIDTH JOINER"],
  [0x200e, "LEFT-TO-RIGHT MARK"],
  [0x200f, "RIGHT-TO-LEFT MARK"],
  [0x2028, "LINE SEPARATOR"],
  [0x2029, "PARAGRAPH SEPARATOR"],
  [0x202a, "LEFT-TO-RIGHT EMBEDDING"],
  [0x202b, "RIGHT-TO-LEFT EMBEDDING"],
  [0x202c, "POP DIRECTIONAL FORMATTING"],
  [0x202d, "LEFT-TO-RIGHT OVERRIDE"],
  [0x202e, "RIGHT-TO-LEFT OVERRIDE"],
  [0x2060, "WORD JOINER"],
  [0x2066, "LEFT-TO-RIGHT ISOLATE"],
  [0x2067, "RIGHT-TO-LEFT ISOLATE"],
  [0x2068, "FIRST STRONG ISOLATE"],
  [0x2069, "POP DIRECTIONAL ISOLATE"],
  [0xfeff, "ZERO WIDTH NO-BREAK SPACE"],
  [0xfffe, "noncharacter"],
  [0xffff, "noncharacter"],
]);

/**
 * Tested in this order; the first that fits is the reason. Made when a text is not plain: these take as long to make as
 * half a room file to read.
 */
const reasons = (): readonly (readonly [BadCharacter, RegExp])[] => [
  ["surrogate", /^\p{Cs}$/u],
  ["control", /^[\p{Cc}\p{Zl}\p{Zp}]$/u],
  ["direction", /^\p{Bidi_Control}$/u],
  ["invisible", /^[\p{Cf}\p{Co}\p{Cn}\p{Default_Ignorable_Code_Point}]$/u],
  // The scripts of the Unicode standard that are written from right to left.
  [
    "right-to-left",
    /^[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\p{Script=Samaritan}\p{Script=Mandaic}\p{Script=Adlam}\p{Script=Hanifi_Rohingya}\p{Script=Yezidi}\p{Script=Mende_Kikakui}\p{Script=Phoenician}\p{Script=Imperial_Aramaic}]$/u,
  ],
];

/** The first character that cannot stand on a sheet, and why; null where all can. */
export function badCharacter(text: string, hasGlyph: HasGlyph): BadOne | null {
  for (const character of text) {
    const reason = reasonAgainst(character, hasGlyph);
    if (reason !== null) return { reason, codePoint: codePointText(character), name: nameOf(character) };
  }
  return null;
}

/** Printable ASCII, against which there is nothing but that a typeface might lack it. */
const isPlain = (character: string): boolean => character >= " " && character <= "~";

function reasonAgainst(character: string, hasGlyph: HasGlyph): BadCharacter | null {
  if (!isPlain(character)) {
    const found = reasons().find(([, pattern]) => pattern.test(character));
    if (found !== undefined) return found[0];
  }
  return hasGlyph(character.codePointAt(0) ?? 0) ? null : "no-glyph";
}

const nameOf = (character: string): string | null => NAMES.get(character.codePointAt(0) ?? 0) ?? null;
