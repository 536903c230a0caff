import type { Page } from "../drawing/drawing.js";
import { cleanText } from "./clean-text.js";
import { figure } from "./figure.js";
import { attribute, closing, element, escaped, opening } from "./svg-element.js";
import { type Cut, cutsFor, styleOf } from "./svg-face.js";
import { elementOf, noIds } from "./svg-items.js";

const NAMESPACES =
  attribute("xmlns", "http://www.w3.org/2000/svg") +
  attribute("version", "1.1") +
  attribute("xmlns:xlink", "http://www.w3.org/1999/xlink");

/** A drawing without its style sheet, as what stands before that and after it. */
interface Apart<Part> {
  readonly before: Part;
  readonly cuts: readonly Cut[];
  readonly after: Part;
}

/** A drawing in bytes: plain data, which one thread may write and another put into a file. */
export type SvgParts = Apart<Uint8Array>;

/**
 * A page as one SVG document: width and height in millimetres, a user unit of one millimetre, layers as named groups,
 * text as text in the face that stands in the document. The same page gives the same text. Throws an InternalError
 * for a figure that is none.
 */
export function writeSvg(page: Page): string {
  const { before, cuts, after } = apart(page);
  return before + styleOf(cuts).text + after;
}

/** The same as bytes, the style sheet left out; throws like `writeSvg`. */
export function svgParts(page: Page): SvgParts {
  const { before, cuts, after } = apart(page);
  const encoder = new TextEncoder();
  return { before: encoder.encode(before), cuts, after: encoder.encode(after) };
}

/** What stands in the file, piece after piece. */
export const piecesOf = ({ before, cuts, after }: SvgParts): readonly Uint8Array[] => [
  before,
  styleOf(cuts).bytes,
  after,
];

function apart(page: Page): Apart<string> {
  const width = figure(page.widthMm);
  const height = figure(page.heightMm);
  const size = attribute("width", `${width}mm`) + attribute("height", `${height}mm`);
  const attributes = [
    NAMESPACES + size + attribute("viewBox", `0 0 ${width} ${height}`),
    attribute("xml:lang", cleanText(page.language)) + attribute("xml:space", "preserve"),
    attribute("fill", "none"),
  ];
  const ids = noIds();
  const title = element("title", "", escaped(cleanText(page.title)));
  const items = page.items.map((item) => elementOf(item, ids)).join("");
  return {
    before: `<?xml version="1.0" encoding="UTF-8"?>\n${opening("svg", attributes.join(""))}${title}`,
    cuts: cutsFor(page.items),
    after: `${items}${closing("svg")}\n`,
  };
}
