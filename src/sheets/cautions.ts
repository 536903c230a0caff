import { measureText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import { BETWEEN_LANGUAGES } from "../words/bilingual.js";
import type { Order } from "./sheet.js";

/** A caution by what it is about; its words are in the catalogue, under the cover. */
export type Caution = keyof Order["words"]["cover"]["cautions"];

export const ALL_CAUTIONS: readonly Caution[] = [
  "look",
  "structure",
  "engineered",
  "rated",
  "power",
  "amplifier",
  "ladder",
  "dust",
  "oldPaint",
  "weight",
  "codes",
];

interface Place {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
}

export interface WordedLine {
  readonly word: string;
  readonly line: string;
}

/** Cautions as short lines, each beside its bold word: for the cover, and for the sheet of the step that they belong to. */
export function cautionLines(order: Order, which: readonly Caution[], place: Place): Block {
  return stack(place.y, placed(wordedLines(cautionsOf(order, which), place.widthMm), place), LINES_GAP_MM);
}

export const cautionsOf = ({ words }: Order, which: readonly Caution[]): WordedLine[] =>
  which.map((caution) => words.cover.cautions[caution]);

const placed = (makers: readonly ((place: Place) => Block)[], place: Place) =>
  makers.map((make) => (y: number) => make({ ...place, y }));

const CAP_MM = 2.5;
/** Between lines that stand beside a word each. */
export const LINES_GAP_MM = 0.6;
const BESIDE_MM = 3;

/** Lines that each stand beside a bold word; the words in one column as wide as the widest of any language, at most a third. */
export function wordedLines(lines: readonly WordedLine[], widthMm: number): ((place: Place) => Block)[] {
  const widths = lines
    .flatMap(({ word }) => word.split(BETWEEN_LANGUAGES))
    .map((word) => measureText(word, { capMm: CAP_MM, face: "bold" }).widthMm);
  const wordMm = Math.min(Math.max(...widths), widthMm / 3);
  return lines.map(({ word, line }) => ({ x, y }) => {
    const bold = textBlock(word, { x, y, widthMm: wordMm, capMm: CAP_MM, face: "bold" });
    const beside = { x: x + wordMm + BESIDE_MM, y, widthMm: widthMm - wordMm - BESIDE_MM, capMm: CAP_MM };
    const said = textBlock(line, beside);
    return { items: [...bold.items, ...said.items], heightMm: Math.max(bold.heightMm, said.heightMm) };
  });
}
