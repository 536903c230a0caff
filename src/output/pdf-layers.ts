import { type PDFContext, PDFHexString, type PDFRef } from "pdf-lib";
import type { Layer } from "../drawing/drawing.js";
import { cleanText } from "./clean-text.js";

/** The optional content group of each layer that is drawn on (ISO 32000-1, 8.11), in the order of `ORDER`. */
export type LayerRefs = ReadonlyMap<Layer, PDFRef>;

const ORDER: readonly Layer[] = ["cut", "clear", "framing", "obstructions", "dimensions", "aim", "notes"];

export function layersOf(
  context: PDFContext,
  used: ReadonlySet<Layer>,
  names: Readonly<Record<Layer, string>>,
): LayerRefs {
  const group = (layer: Layer): PDFRef =>
    context.register(context.obj({ Type: "OCG", Name: PDFHexString.fromText(cleanText(names[layer])) }));
  return new Map(ORDER.filter((layer) => used.has(layer)).map((layer) => [layer, group(layer)]));
}

/** The catalog's entry: every layer listed and on. */
export function layerProperties(layers: LayerRefs) {
  const groups = [...layers.values()];
  return { OCGs: groups, D: { BaseState: "ON", Order: groups, ON: groups } };
}
