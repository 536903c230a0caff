import type { Item, Text, Window } from "./drawing.js";
import { textBox } from "./text.js";
import { boxesMeet, grown, liesIn, touches } from "./touches.js";

/** A part of a drawing where words may still be put: inside `within`, on no ink, on no other words. */
export interface Ground {
  readonly within: Window;
  /** Ink that words must not stand on. */
  readonly items: readonly Item[];
  readonly taken: readonly Window[];
}

/** Air between words and whatever is beside them, in mm. */
const AIR_MM = 0.8;

/** The ground of a drawing, without the items that are nowhere near. */
export const groundOf = (items: readonly Item[], within: Window, taken: readonly Window[] = []): Ground => ({
  within,
  items: items.filter((item) => touches(item, within)),
  taken,
});

export const taking = (ground: Ground, ...boxes: readonly Window[]): Ground => ({
  ...ground,
  taken: [...ground.taken, ...boxes],
});

export const fitsWithin = (box: Window, { within, taken }: Ground): boolean =>
  liesIn(box, within) && !taken.some((other) => boxesMeet(grown(other, AIR_MM), box));

export const isFree = (box: Window, ground: Ground): boolean =>
  fitsWithin(box, ground) && !ground.items.some((item) => touches(item, grown(box, AIR_MM)));

export interface Placed {
  readonly items: readonly Item[];
  readonly ground: Ground;
}

/** The first of a label's places that is free, and the ground without it; null where none is. */
export function placeLabel(choices: readonly Text[], ground: Ground): Placed | null {
  const found = choices.find((choice) => isFree(textBox(choice), ground));
  return found === undefined ? null : { items: [found], ground: taking(ground, textBox(found)) };
}
