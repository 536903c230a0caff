import type { Item, PagePoint, Text, Window } from "./drawing.js";
import { textBox } from "./text.js";
import { anyMeets, anyTouches, boxesMeet, grown, liesIn, touches } from "./touches.js";

/** A part of a drawing where words may still be put: inside `within`, on no ink, on no other words. */
export interface Ground {
  readonly within: Window;
  /** Ink that words must not stand on, but for other words. */
  readonly items: readonly Item[];
  readonly taken: readonly Window[];
  /** What is taken, and the words of the drawing, with the air round them. */
  readonly closed: readonly Window[];
}

/** Air between words and whatever is beside them, in mm. */
const AIR_MM = 0.8;

const withAir = (box: Window): Window => grown(box, AIR_MM);

/** Words and what they stand under or beside are never further apart than this, in mm. */
export const NEAR_MM = 2;

/** The ground of a drawing, without the items and boxes that are nowhere near. */
export function groundOf(items: readonly Item[], within: Window, taken: readonly Window[] = []): Ground {
  const near = grown(within, NEAR_MM);
  const boxes = taken.filter((box) => boxesMeet(grown(box, NEAR_MM), within));
  // Layers are opened so that what they hold far away is not looked at again for every place that is tried; the box of
  // words is not measured again either.
  const all = opened(items.filter((item) => touches(item, within))).filter((item) => touches(item, near));
  const written = all.flatMap((item) => (item.kind === "text" ? textBox(item) : []));
  return {
    within,
    items: all.filter((item) => item.kind !== "text"),
    taken: boxes,
    closed: [...boxes, ...written].map(withAir),
  };
}

/** What groups hold that neither move nor hide it; other groups whole. */
const opened = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((item) =>
    item.kind === "group" && item.shift === undefined && item.window === undefined
      ? opened(item.items)
      : [item],
  );

export const taking = (ground: Ground, ...boxes: readonly Window[]): Ground => ({
  ...ground,
  taken: [...ground.taken, ...boxes],
  closed: [...ground.closed, ...boxes.map(withAir)],
});

const fitsWithin = (box: Window, { within, closed }: Ground): boolean =>
  liesIn(box, within) && !anyMeets(closed, box);

export function isFree(box: Window, ground: Ground): boolean {
  if (!fitsWithin(box, ground)) return false;
  return !anyTouches(ground.items, withAir(box));
}

export interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Null where a box of that size is free at a point; else up to which x it is free nowhere on from there, at least not
 * at that height. Thousands are tried, each beside the one before: what that one ran into is looked at first.
 */
export function blockedSpots(
  { widthMm, heightMm }: Size,
  { within, closed, items }: Ground,
): (at: PagePoint) => number | null {
  let last: Window | undefined;
  return ({ x, y }) => {
    const box = { x, y, widthMm, heightMm };
    if (!liesIn(box, within)) return x;
    if (last === undefined || !boxesMeet(last, box)) last = closed.find((other) => boxesMeet(other, box));
    if (last !== undefined) return last.x + last.widthMm;
    return anyTouches(items, withAir(box)) ? x : null;
  };
}

export interface Placed {
  readonly items: readonly Item[];
  readonly ground: Ground;
}

/** The first of a label's places that is free, and the ground without it; null where none is. */
export function placeLabel(choices: Iterable<Text>, ground: Ground): Placed | null {
  for (const choice of choices) {
    const box = textBox(choice);
    if (isFree(box, ground)) return { items: [choice], ground: taking(ground, box) };
  }
  return null;
}
