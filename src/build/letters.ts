/*
 * Which characters the prepared typeface holds. Block names and ranges are those of The Unicode Standard; of each, what
 * the font lacks is left out by itself, and what is left out cannot be printed and is refused when a room file is read.
 */

type Range = readonly [first: number, last: number];

/** What the catalogue of words and an ordinary job need: small enough to stand inside every SVG. */
const EVERYDAY: readonly Range[] = [
  [0x0020, 0x007e], // Basic Latin
  [0x00a0, 0x00ac], // Latin-1 Supplement, without the soft hyphen, which one renderer draws and another does not
  [0x00ae, 0x00ff],
  [0x2010, 0x2015], // hyphens and dashes
  [0x2018, 0x201f], // quotation marks
  [0x2020, 0x2027], // daggers, bullets, ellipsis
  [0x2030, 0x203a], // per mille, primes, angle quotes
  [0x2044, 0x2044], // fraction slash
  [0x2126, 0x2126], // ohm sign; NFC turns it into the Greek letter below
  [0x03a9, 0x03a9],
  [0x2150, 0x215f], // fractions
  [0x2190, 0x2199], // arrows, straight and diagonal
  [0x2212, 0x2212], // minus
  [0x2248, 0x2248],
  [0x2260, 0x2265],
  [0x2300, 0x2300], // diameter
  [0x25a0, 0x25a1],
  [0x25b2, 0x25c6],
  [0x25cb, 0x25cf],
  [0x2610, 0x2612], // ballot boxes
  [0x26a0, 0x26a0], // warning sign
  [0x2713, 0x2718], // check marks
  [0xfffd, 0xfffd], // stands for what cannot be drawn
];

/** What names of people, places and makers may bring besides. */
const REST: readonly Range[] = [
  [0x0100, 0x024f], // Latin Extended-A and -B
  [0x02c6, 0x02dd], // spacing modifier letters
  [0x0370, 0x03ff], // Greek and Coptic
  [0x1e00, 0x1eff], // Latin Extended Additional
  [0x2000, 0x200a], // spaces
  [0x203b, 0x205e], // the rest of General Punctuation that leaves a mark
  [0x2070, 0x209c], // superscripts and subscripts
  [0x20a0, 0x20bf], // Currency Symbols
  [0x2100, 0x214f], // Letterlike Symbols
  [0x2180, 0x218b], // the rest of Number Forms
  [0x21d0, 0x21d5], // double arrows
  [0x2200, 0x22ff], // Mathematical Operators
  [0x25a2, 0x25ff], // Geometric Shapes
];

const charactersOf = ([first, last]: Range): string =>
  Array.from({ length: last - first + 1 }, (_, index) => String.fromCodePoint(first + index)).join("");

export const EVERYDAY_LETTERS: string = EVERYDAY.map(charactersOf).join("");
export const ALL_LETTERS: string = EVERYDAY_LETTERS + REST.map(charactersOf).join("");
