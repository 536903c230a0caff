import type { Ink } from "../drawing/drawing.js";
import {
  COLOUR_CODES,
  type ColourCode,
  designation,
  inOrder,
  readColourCodes,
} from "../standards/conductor-colours.js";
import { wordsIn } from "../words/words.js";
import type { Order } from "./sheet.js";

/** A conductor's colour as a card shows it. */
export interface ShownColour {
  /** Letters of IEC 60757; null where what was typed is none of its colours. */
  readonly letters: string | null;
  readonly words: string;
  /** The first colour's ink, then a second one's; empty where the colour is not known. */
  readonly inks: readonly Ink[];
}

/** Words that people type for a colour beside those of the catalogue. */
const ALSO: Readonly<Record<string, ColourCode>> = {
  gray: "GY",
  purple: "VT",
  marrón: "BN",
  marron: "BN",
  anaranjado: "OG",
  morado: "VT",
  rosado: "PK",
};

const ink = (red: number, green: number, blue: number): Ink => ({ red, green, blue });

/** Only repeats what the letters and the word say. Our own choice of inks. */
const INKS: Readonly<Record<ColourCode, Ink>> = {
  BK: ink(0, 0, 0),
  BN: ink(0.45, 0.26, 0.1),
  RD: ink(0.8, 0, 0),
  OG: ink(0.95, 0.5, 0),
  YE: ink(1, 0.85, 0),
  GN: ink(0, 0.5, 0.15),
  BU: ink(0, 0.25, 0.7),
  VT: ink(0.45, 0.15, 0.6),
  GY: ink(0.5, 0.5, 0.5),
  WH: ink(1, 1, 1),
  PK: ink(1, 0.65, 0.75),
  GD: ink(0.8, 0.65, 0.2),
  TQ: ink(0.1, 0.7, 0.7),
  SR: ink(0.75, 0.75, 0.78),
};

/** The colour that was typed, by letters, word and ink; as typed alone where it is none that the standard knows. */
export function shownColour(order: Order, typed: string): ShownColour {
  const read = codesOf(typed);
  if (read === null) return { letters: null, words: typed, inks: [] };
  const codes = inOrder(read);
  return {
    letters: designation(codes),
    words: order.words.labels.colour(codes),
    inks: codes.slice(0, 2).map((code) => INKS[code]),
  };
}

/** Codes of a designation (`RD`, `WHBU`) or of words in either language (`red`, `blanco/azul`); null for anything else. */
export function codesOf(typed: string): readonly ColourCode[] | null {
  const designated = readColourCodes(typed.trim());
  if (designated !== null) return designated;
  const words = typed
    .toLowerCase()
    .split(/[\s/,+-]+/u)
    .filter(Boolean);
  const codes = words.map(codeOfWord).filter((code) => code !== null);
  return words.length > 0 && codes.length === words.length ? codes : null;
}

function codeOfWord(word: string): ColourCode | null {
  const also = Object.hasOwn(ALSO, word) ? ALSO[word] : undefined;
  if (also !== undefined) return also;
  const catalogues = [wordsIn(["en"]).labels.colours, wordsIn(["es"]).labels.colours];
  return COLOUR_CODES.find((code) => catalogues.some((words) => words[code] === word)) ?? null;
}
