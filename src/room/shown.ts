const MOST_CHARACTERS = 48;

/**
 * What was typed, fit to be shown in a sentence: control, direction and other unseen characters as U+XXXX, and not
 * longer than a line.
 */
export function shown(text: string): string {
  const characters = [...text];
  const cut = characters.length > MOST_CHARACTERS;
  return `${characters.slice(0, MOST_CHARACTERS).map(visible).join("")}${cut ? "…" : ""}`;
}

/** Controls, formats (direction, zero width), lone surrogates, private and unassigned ones, and separators other than the space. */
const isUnseen = (character: string): boolean => /^[\p{C}\p{Zl}\p{Zp}]$/u.test(character);

const visible = (character: string): string => (isUnseen(character) ? codePointText(character) : character);

/** The code point of a character, as the Unicode standard writes it: `U+202E`. */
export function codePointText(character: string): string {
  const codePoint = character.codePointAt(0) ?? 0;
  return `U+${codePoint.toString(16).toUpperCase().padStart(4, "0")}`;
}
