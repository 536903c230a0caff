import type { Window } from "./drawing.js";
import { type Ground, isFree, type Placed, taking } from "./free-place.js";
import { shifted } from "./pen.js";
import type { Block } from "./text-block.js";
import { common } from "./touches.js";

/** Words that can be as wide as there is room for. */
export interface Writing {
  readonly write: (place: { x: number; y: number; widthMm: number }) => Block;
  /** No less than this is needed at a width: known without writing, so that most places are passed over at once. */
  readonly leastHeightMm: (widthMm: number) => number;
}

const LEAST_WIDTH_MM = 32;
const WIDTHS = [1, 0.85, 0.7, 0.55, 0.45, 0.35, 0.25] as const;
const AIR_MM = 2;

/**
 * A block of words where the drawing leaves room: in a corner of one of the four parts that the point `about` makes
 * of the ground, as wide as fits there, or under or beside what already stands. Null where there is no such room.
 */
export function placeBlock(writing: Writing, ground: Ground, about: { x: number; y: number }): Placed | null {
  for (const part of parts(ground.within, about)) {
    for (const share of WIDTHS) {
      const widthMm = part.widthMm * share;
      if (widthMm < LEAST_WIDTH_MM) break;
      const placed = placeIn(part, widthMm, writing, ground);
      if (placed !== null) return placed;
    }
  }
  return null;
}

function placeIn(part: Window, widthMm: number, writing: Writing, ground: Ground): Placed | null {
  const leastMm = writing.leastHeightMm(widthMm);
  if (freeCorner(part, { widthMm, heightMm: leastMm }, ground) === undefined) return null;
  const { items, heightMm } = writing.write({ x: 0, y: 0, widthMm });
  const free = freeCorner(part, { widthMm, heightMm }, ground);
  if (free === undefined) return null;
  return { items: [shifted(items, free)], ground: taking(ground, { ...free, widthMm, heightMm }) };
}

function freeCorner(
  part: Window,
  size: { widthMm: number; heightMm: number },
  ground: Ground,
): { x: number; y: number } | undefined {
  const right = part.x + part.widthMm - size.widthMm;
  const bottom = part.y + part.heightMm - size.heightMm;
  const corners = [
    { x: part.x, y: part.y },
    { x: right, y: part.y },
    { x: part.x, y: bottom },
    { x: right, y: bottom },
    ...ground.taken.flatMap(({ x, y, widthMm, heightMm }) => [
      { x, y: y + heightMm + AIR_MM },
      { x: x + widthMm + AIR_MM, y },
    ]),
  ];
  return corners.find((corner) => isFree({ ...corner, ...size }, ground));
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
