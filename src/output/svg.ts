import type { Page } from "../drawing/drawing.js";
import { cleanText } from "./clean-text.js";
import { figure } from "./figure.js";
import { attribute, element, escaped } from "./svg-element.js";
import { styleFor } from "./svg-face.js";
import { elementOf, noIds } from "./svg-items.js";

const NAMESPACES =
  attribute("xmlns", "http://www.w3.org/2000/svg") +
  attribute("version", "1.1") +
  attribute("xmlns:xlink", "http://www.w3.org/1999/xlink");

/**
 * A page as one SVG document: width and height in millimetres, a user unit of one millimetre, layers as named groups,
 * text as text in the face that stands in the document. The same page gives the same text. Throws an InternalError
 * for a figure that is none.
 */
export function writeSvg(page: Page): string {
  const [width, height] = [figure(page.widthMm), figure(page.heightMm)];
  const size = attribute("width", `${width}mm`) + attribute("height", `${height}mm`);
  const attributes = [
    NAMESPACES + size + attribute("viewBox", `0 0 ${width} ${height}`),
    attribute("xml:lang", cleanText(page.language)) + attribute("xml:space", "preserve"),
    attribute("fill", "none"),
  ];
  const style = styleFor(page.items);
  const ids = noIds();
  const inside = [
    element("title", "", escaped(cleanText(page.title))),
    style === "" ? "" : element("style", "", escaped(style)),
    ...page.items.map((item) => elementOf(item, ids)),
  ];
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element("svg", attributes.join(""), inside.join(""))}\n`;
}
