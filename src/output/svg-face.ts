import { isEveryday } from "../drawing/coverage.js";
import type { Face, Item, Text } from "../drawing/drawing.js";
import { TYPEFACE_FILES } from "../drawing/typeface.js";
import { readTypefaceFile } from "../drawing/typeface-files.js";
import { element, escaped } from "./svg-element.js";

const FAMILY = "DejaVu Sans Condensed";
const WEIGHT: Readonly<Record<Face, number>> = { regular: 400, bold: 700 };

/** Text is set by plain advances, as it was measured: no kerning, no ligatures, no hinted widths. */
const SETTING = `text{font-family:"${FAMILY}",sans-serif;font-kerning:none;font-variant-ligatures:none;text-rendering:geometricPrecision}`;

const textsIn = (items: readonly Item[]): readonly Text[] =>
  items.flatMap((item) => {
    if (item.kind === "group") return textsIn(item.items);
    return item.kind === "text" ? [item] : [];
  });

/** The smallest cut of a face that holds a text. */
export interface Cut {
  readonly face: Face;
  readonly file: string;
}

/** The cuts that a drawing is set in; none without text. */
export function cutsFor(items: readonly Item[]): readonly Cut[] {
  const texts = textsIn(items);
  const faces = (["regular", "bold"] as const).filter((face) => texts.some((item) => item.face === face));
  return faces.map((face) => {
    const small = texts.every((item) => item.face !== face || isEveryday(item.text));
    return { face, file: small ? TYPEFACE_FILES.everyday(face) : TYPEFACE_FILES.whole(face) };
  });
}

function faceRule({ face, file }: Cut): string {
  const source = `url(data:font/ttf;base64,${readTypefaceFile(file).toString("base64")}) format("truetype")`;
  return `@font-face{font-family:"${FAMILY}";font-weight:${WEIGHT[face]};src:${source}}`;
}

export interface Style {
  readonly text: string;
  readonly bytes: Uint8Array;
}

const known = new Map<string, Style>();

/** The style sheet that holds those cuts, as an element; empty without any. Most of a drawing, and mostly the same. */
export function styleOf(cuts: readonly Cut[]): Style {
  const key = cuts.map(({ file }) => file).join(" ");
  const style = known.get(key) ?? written(cuts);
  known.set(key, style);
  return style;
}

function written(cuts: readonly Cut[]): Style {
  const rules = cuts.length === 0 ? "" : [...cuts.map(faceRule), SETTING].join("");
  const text = rules === "" ? "" : element("style", "", escaped(rules));
  return { text, bytes: new TextEncoder().encode(text) };
}
