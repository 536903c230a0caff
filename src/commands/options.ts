import { type Margins, PAPERS, type Paper, parsePaper, SAFE_MARGINS_MM } from "../standards/paper.js";
import type { Language } from "../units/language.js";
import { parseLength } from "../units/length.js";
import type { Words } from "../words/words.js";
import { UsageError } from "./usage-error.js";

const LANGUAGES: Readonly<Record<string, Language>> = { en: "en", es: "es" };
const MOST_MARGIN_MM = 30;

/** Languages typed as `en`, `es` or `en,es`. Throws `UsageError` for others. */
export function languagesTyped(typed: string, words: Words): readonly Language[] {
  const languages = typed.split(",").map((language) => LANGUAGES[language.trim().toLowerCase()]);
  return languages.map((language) => {
    if (language === undefined) throw new UsageError(words.commands.failure.unknownLanguage(typed));
    return language;
  });
}

/** Paper typed by name or size. Throws `UsageError` naming what there is. */
export function paperTyped(typed: string, words: Words): Paper {
  const read = parsePaper(typed);
  if (read.ok) return read.paper;
  const names = PAPERS.map((paper) => paper.name).join(", ");
  throw new UsageError(words.commands.failure.badPaper(typed, names));
}

/** Printer's margins: one length for every edge where typed, else what nearly every printer reaches. */
export function marginsTyped(typed: string | undefined, words: Words): Margins {
  if (typed === undefined) return SAFE_MARGINS_MM;
  const read = parseLength(typed);
  if (!read.ok || read.mm < 0 || read.mm > MOST_MARGIN_MM) {
    throw new UsageError(words.commands.failure.badMargin(typed));
  }
  return { topMm: read.mm, rightMm: read.mm, bottomMm: read.mm, leftMm: read.mm };
}
