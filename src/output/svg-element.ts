/** What text and attributes may not hold as it stands (XML 1.0, section 2.4), and quotes, which end an attribute. */
const SPECIAL = /[&<>"]/u;
const EVERY_SPECIAL = /[&<>"]/gu;
const INSTEAD: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** A text as it stands in an element or an attribute; it holds only what XML may hold (`cleanText`). */
export const escaped = (text: string): string =>
  SPECIAL.test(text) ? text.replaceAll(EVERY_SPECIAL, (special) => INSTEAD[special] ?? "") : text;

/** An attribute, with the space before it. */
export const attribute = (name: string, value: string): string => ` ${name}="${escaped(value)}"`;

export const opening = (name: string, attributes: string): string => `<${name}${attributes}>`;
export const closing = (name: string): string => `</${name}>`;

/** An element: its attributes, each made by `attribute`, and what stands in it, elements or escaped text. */
export const element = (name: string, attributes: string, inside = ""): string =>
  opening(name, attributes) + inside + closing(name);
