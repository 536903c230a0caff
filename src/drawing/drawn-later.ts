import type { Item } from "./drawing.js";
import { wrapText } from "./text.js";
import { LINE_PITCH, textBlock } from "./text-block.js";

/** A block that is measured first and drawn only where it is wanted: most are tried and left. */
export interface DrawnLater {
  readonly heightMm: number;
  readonly draw: () => readonly Item[];
}

/** Words as `textBlock` sets them. */
export function textLater(words: string, place: Parameters<typeof textBlock>[1]): DrawnLater {
  const { capMm, face = "regular", widthMm } = place;
  return {
    heightMm: wrapText(words, { capMm, face, widthMm }).length * capMm * LINE_PITCH,
    draw: () => textBlock(words, place).items,
  };
}

/** Blocks one under the other from `y`, with air after each but those of no height. */
export function stackLater(y: number, makers: readonly ((y: number) => DrawnLater)[], gapMm = 0): DrawnLater {
  const blocks: DrawnLater[] = [];
  let at = y;
  for (const make of makers) {
    const block = make(at);
    blocks.push(block);
    at += block.heightMm === 0 ? 0 : block.heightMm + gapMm;
  }
  return { heightMm: at - y, draw: () => blocks.flatMap(({ draw }) => draw()) };
}

/** A block that is drawn once, however often it is placed. */
export function drawnOnce({ heightMm, draw }: DrawnLater): DrawnLater {
  let items: readonly Item[] | null = null;
  return {
    heightMm,
    draw: () => {
      items ??= draw();
      return items;
    },
  };
}
