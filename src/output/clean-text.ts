const INSTEAD = "\ufffd";

/** What no XML 1.0 document may hold, escaped or not (section 2.2 of the recommendation). */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to be kept out
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\p{Surrogate}\ufffe\uffff]/gu;

/** A text for titles and names that every file format holds: a question mark in a lozenge for what XML refuses. */
export const cleanText = (text: string): string => text.replaceAll(NOT_XML, INSTEAD);
