import type { Language } from "../units/language.js";
import { bilingual } from "./bilingual.js";
import { english } from "./english/index.js";
import { spanish } from "./spanish/index.js";

/** Every word that reaches a person, by area; the English catalogue is the shape that every language fills. */
export type Words = typeof english;

/** Each where it is asked for: the build runs a catalogue's files no sooner. */
const CATALOGUE: Readonly<Record<Language, () => Words>> = { en: () => english, es: () => spanish };

/** The catalogue of one language, or of two on one sheet: every phrase in the first, then " / ", then in the second. */
export function wordsIn(languages: readonly Language[]): Words {
  const [first = "en", second] = languages;
  if (second === undefined || second === first) return CATALOGUE[first]();
  return bilingual(CATALOGUE[first](), CATALOGUE[second]());
}
