import { registerWindow, SVG, type Svg } from "@svgdotjs/svg.js";
import { createSVGWindow } from "svgdom";
import type { Page } from "../drawing/drawing.js";
import { cleanText } from "./clean-text.js";
import { figure } from "./figure.js";
import { styleFor } from "./svg-face.js";
import { elementOf, noIds } from "./svg-items.js";

const window = createSVGWindow();
registerWindow(window, window.document);

/**
 * A page as one SVG document: width and height in millimetres, a user unit of one millimetre, layers as named groups,
 * text as text in the face that stands in the document. The same page gives the same text. Throws an InternalError
 * for a figure that is none.
 */
export function writeSvg(page: Page): string {
  const root = SVG(window.document.documentElement) as Svg;
  root.clear();
  const [width, height] = [figure(page.widthMm), figure(page.heightMm)];
  root.attr({
    ...{ width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}` },
    ...{ "xml:lang": cleanText(page.language), "xml:space": "preserve", fill: "none" },
  });
  root.element("title").words(cleanText(page.title));
  const style = styleFor(page.items);
  if (style !== "") root.element("style").words(style);
  const ids = noIds();
  for (const item of page.items) root.add(elementOf(item, ids));
  return `<?xml version="1.0" encoding="UTF-8"?>\n${root.node.outerHTML}\n`;
}
