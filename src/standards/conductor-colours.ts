/*
 * Letter codes of colours: IEC 60757:2021, Table 1, in the order of that table. The rule of combining (codes one after
 * the other, in the table's order: red and blue is RDBU) was read in a public copy; the letters are from memory.
 */

export const COLOUR_CODES = [
  "BK",
  "BN",
  "RD",
  "OG",
  "YE",
  "GN",
  "BU",
  "VT",
  "GY",
  "WH",
  "PK",
  "GD",
  "TQ",
  "SR",
] as const;

export type ColourCode = (typeof COLOUR_CODES)[number];

const isColourCode = (text: string): text is ColourCode => COLOUR_CODES.some((code) => code === text);

/** The codes in a designation such as `RD` or `RDBU`, in any case; null where it is no such designation. */
export function readColourCodes(text: string): readonly ColourCode[] | null {
  const pairs: readonly string[] = text.toUpperCase().match(/../gu) ?? [];
  const codes = pairs.filter(isColourCode);
  return codes.length > 0 && codes.length * 2 === text.length ? codes : null;
}

/** Colours that a conductor bears together, in the order of the table. */
export const inOrder = (codes: readonly ColourCode[]): readonly ColourCode[] =>
  COLOUR_CODES.filter((code) => codes.includes(code));

/** Their one designation: red and blue is RDBU. */
export const designation = (codes: readonly ColourCode[]): string => inOrder(codes).join("");
