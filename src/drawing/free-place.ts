import type { Item, PagePoint, Text, Window } from "./drawing.js";
import { textBox } from "./text.js";
import { boxesMeet, grown, liesIn, touches } from "./touches.js";

/** A part of a drawing where words may still be put: inside `within`, on no ink, on no other words. */
export interface Ground {
  readonly within: Window;
  /** Ink that words must not stand on. */
  readonly items: readonly Item[];
  readonly taken: readonly Window[];
  /** What is taken, with the air round it. */
  readonly closed: readonly Window[];
}

/** Air between words and whatever is beside them, in mm. */
const AIR_MM = 0.8;

const withAir = (box: Window): Window => grown(box, AIR_MM);

/** Words and what they stand under or beside are never further apart than this, in mm. */
export const NEAR_MM = 2;

/** The ground of a drawing, without the items and boxes that are nowhere near. */
export function groundOf(items: readonly Item[], within: Window, taken: readonly Window[] = []): Ground {
  const near = taken.filter((box) => boxesMeet(grown(box, NEAR_MM), within));
  return {
    within,
    items: items.filter((item) => touches(item, within)),
    taken: near,
    closed: near.map(withAir),
  };
}

export const taking = (ground: Ground, ...boxes: readonly Window[]): Ground => ({
  ...ground,
  taken: [...ground.taken, ...boxes],
  closed: [...ground.closed, ...boxes.map(withAir)],
});

export const fitsWithin = (box: Window, { within, closed }: Ground): boolean =>
  liesIn(box, within) && !closed.some((other) => boxesMeet(other, box));

export function isFree(box: Window, ground: Ground): boolean {
  if (!fitsWithin(box, ground)) return false;
  const wide = withAir(box);
  return !ground.items.some((item) => touches(item, wide));
}

export interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Whether a box of that size is free at a point. Thousands of them are tried, each beside the one before: what that
 * one ran into is looked at first.
 */
export function freeSpots({ widthMm, heightMm }: Size, ground: Ground): (at: PagePoint) => boolean {
  const { within, closed, items } = ground;
  let last = 0;
  return ({ x, y }) => {
    const box = { x, y, widthMm, heightMm };
    if (!liesIn(box, within)) return false;
    const before = closed[last];
    if (before !== undefined && boxesMeet(before, box)) return false;
    const hit = closed.findIndex((other) => boxesMeet(other, box));
    if (hit >= 0) {
      last = hit;
      return false;
    }
    const wide = withAir(box);
    return !items.some((item) => touches(item, wide));
  };
}

export interface Placed {
  readonly items: readonly Item[];
  readonly ground: Ground;
}

/** The first of a label's places that is free, and the ground without it; null where none is. */
export function placeLabel(choices: readonly Text[], ground: Ground): Placed | null {
  const found = choices.find((choice) => isFree(textBox(choice), ground));
  return found === undefined ? null : { items: [found], ground: taking(ground, textBox(found)) };
}
