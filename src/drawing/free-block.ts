import type { Item, Window } from "./drawing.js";
import { type Ground, isFree, type Placed, taking } from "./free-place.js";
import type { Block } from "./text-block.js";
import { common } from "./touches.js";

/** Words that can be as wide as there is room for. */
export type Writing = (place: { x: number; y: number; widthMm: number }) => Block;

const LEAST_WIDTH_MM = 32;
const WIDTHS = [1, 0.85, 0.7, 0.55, 0.45, 0.35, 0.25] as const;
const AIR_MM = 2;

/**
 * A block of words where the drawing leaves room: in a corner of one of the four parts that the point `about` makes
 * of the ground, as wide as fits there, or under words that already stand. Null where there is no such room.
 */
export function placeBlock(write: Writing, ground: Ground, about: { x: number; y: number }): Placed | null {
  for (const part of parts(ground.within, about)) {
    for (const share of WIDTHS) {
      const widthMm = part.widthMm * share;
      if (widthMm < LEAST_WIDTH_MM) break;
      const placed = placeIn(part, widthMm, write, ground);
      if (placed !== null) return placed;
    }
  }
  return null;
}

function placeIn(part: Window, widthMm: number, write: Writing, ground: Ground): Placed | null {
  const { heightMm } = write({ x: 0, y: 0, widthMm });
  const right = part.x + part.widthMm - widthMm;
  const bottom = part.y + part.heightMm - heightMm;
  const corners = [
    { x: part.x, y: part.y },
    { x: right, y: part.y },
    { x: part.x, y: bottom },
    { x: right, y: bottom },
    ...ground.taken.map((box) => ({ x: box.x, y: box.y + box.heightMm + AIR_MM })),
  ];
  const free = corners.find((corner) => isFree({ ...corner, widthMm, heightMm }, ground));
  if (free === undefined) return null;
  const items: readonly Item[] = write({ ...free, widthMm }).items;
  return { items, ground: taking(ground, { ...free, widthMm, heightMm }) };
}

/** The four quarters about a point with air along the lines between them, and the whole where the point is not in it. */
function parts(within: Window, { x, y }: { x: number; y: number }): Window[] {
  const far = 1e5;
  const quarters = [
    { x: x + AIR_MM, y: y + AIR_MM },
    { x: x - AIR_MM - far, y: y + AIR_MM },
    { x: x - AIR_MM - far, y: y - AIR_MM - far },
    { x: x + AIR_MM, y: y - AIR_MM - far },
  ];
  return quarters.flatMap((corner) => common(within, { ...corner, widthMm: far, heightMm: far }) ?? []);
}
