import type { Item } from "../drawing/drawing.js";
import { measureText } from "../drawing/text.js";
import { type Block, LINE_PITCH, stack, textBlock } from "../drawing/text-block.js";
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
  readonly capMm?: number;
}

/** Cautions as short lines, each beside its bold word: for the cover, and for the sheet of the step that it belongs to. */
export function cautionLines(order: Order, which: readonly Caution[], place: Place): Block {
  const { cautions } = order.words.cover;
  return wordedLines(
    which.map((caution) => cautions[caution]),
    place,
  );
}

export interface WordedLine {
  readonly word: string;
  readonly line: string;
}

/** Lines that each stand beside a bold word, the words in one column as wide as the widest of them, at most a third. */
export function wordedLines(lines: readonly WordedLine[], place: Place): Block {
  const capMm = place.capMm ?? 2.5;
  const widest = Math.max(...lines.map(({ word }) => measureText(word, { capMm, face: "bold" }).widthMm));
  const wordMm = Math.min(widest, place.widthMm / 3);
  const lineX = place.x + wordMm + 3;
  const beside =
    (entry: WordedLine) =>
    (y: number): Block => {
      const word = textBlock(entry.word, { x: place.x, y, widthMm: wordMm, capMm, face: "bold" });
      const line = textBlock(entry.line, { x: lineX, y, widthMm: place.widthMm - wordMm - 3, capMm });
      const items: Item[] = [...word.items, ...line.items];
      return { items, heightMm: Math.max(word.heightMm, line.heightMm) };
    };
  const stacked = stack(place.y, lines.map(beside), capMm * (LINE_PITCH - 1.5));
  return stacked;
}
