import type { Item } from "./drawing.js";
import { type Lettering, point, text } from "./pen.js";
import { BEFORE, wrapText } from "./text.js";

/** Distance from one baseline to the next as a share of the cap height: room for accents above and tails below. */
export const LINE_PITCH = 1.75;

export interface Block {
  readonly items: readonly Item[];
  readonly heightMm: number;
}

/**
 * Words wrapped into a width, first line's capitals touching `y`. Its height runs from there to below the last
 * line's tails, so blocks can be stacked without touching.
 */
export function textBlock(
  words: string,
  place: { x: number; y: number; widthMm: number } & Lettering,
): Block {
  const face = place.face ?? "regular";
  const lines = wrapText(words, { capMm: place.capMm, face, widthMm: place.widthMm });
  const x = place.x + BEFORE[place.anchor ?? "start"] * place.widthMm;
  const items: Item[] = [];
  for (const line of lines) {
    const baseline = place.y + place.capMm * (1 + items.length * LINE_PITCH);
    items.push(text(point(x, baseline), line, place));
  }
  return { items, heightMm: lines.length * place.capMm * LINE_PITCH };
}

/** Blocks one under the other from `y`; each is made with the y that the one above left. */
export function stack(y: number, makers: readonly ((y: number) => Block)[], gapMm = 0): Block {
  const items: Item[] = [];
  let at = y;
  for (const make of makers) {
    const block = make(at);
    items.push(...block.items);
    at += block.heightMm + gapMm;
  }
  return { items, heightMm: at - y };
}
