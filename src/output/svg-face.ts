import { isEveryday } from "../drawing/coverage.js";
import type { Face, Item, Text } from "../drawing/drawing.js";
import { TYPEFACE_FILES } from "../drawing/typeface.js";
import { readTypefaceFile } from "../drawing/typeface-files.js";

const FAMILY = "DejaVu Sans Condensed";
const WEIGHT: Readonly<Record<Face, number>> = { regular: 400, bold: 700 };

/** Text is set by plain advances, as it was measured: no kerning, no ligatures, no hinted widths. */
const SETTING = `text{font-family:"${FAMILY}",sans-serif;font-kerning:none;font-variant-ligatures:none;text-rendering:geometricPrecision}`;

const encoded = new Map<string, string>();

function base64(file: string): string {
  const known = encoded.get(file) ?? readTypefaceFile(file).toString("base64");
  encoded.set(file, known);
  return known;
}

const textsIn = (items: readonly Item[]): readonly Text[] =>
  items.flatMap((item) => {
    if (item.kind === "group") return textsIn(item.items);
    return item.kind === "text" ? [item] : [];
  });

function faceRule(face: Face, texts: readonly Text[]): string {
  const small = texts.every((item) => isEveryday(item.text));
  const file = small ? TYPEFACE_FILES.everyday(face) : TYPEFACE_FILES.whole(face);
  const source = `url(data:font/ttf;base64,${base64(file)}) format("truetype")`;
  return `@font-face{font-family:"${FAMILY}";font-weight:${WEIGHT[face]};src:${source}}`;
}

/** The style sheet of a drawing: the faces it uses, each in the smallest cut that holds its text; empty without text. */
export function styleFor(items: readonly Item[]): string {
  const texts = textsIn(items);
  const faces = (["regular", "bold"] as const).map((face) => texts.filter((item) => item.face === face));
  const [regular = [], bold = []] = faces;
  const rules = [
    ...(regular.length === 0 ? [] : [faceRule("regular", regular)]),
    ...(bold.length === 0 ? [] : [faceRule("bold", bold)]),
  ];
  return rules.length === 0 ? "" : [...rules, SETTING].join("");
}
