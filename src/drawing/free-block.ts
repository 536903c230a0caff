import { EPSILON_MM } from "../geometry/epsilon.js";
import type { PagePoint, Window } from "./drawing.js";
import { freeSpots, type Ground, NEAR_MM, type Placed, type Size, taking } from "./free-place.js";
import { shifted } from "./pen.js";
import type { Block } from "./text-block.js";
import { common } from "./touches.js";

/** Words that can be as wide as there is room for. */
export interface Writing {
  readonly write: (place: { x: number; y: number; widthMm: number }) => Block;
  /** No less than this is needed at a width: known without writing, so that most places are passed over at once. */
  readonly leastHeightMm: (widthMm: number) => number;
  /** Widths worth trying, the most wanted first; shares of the room unless said. */
  readonly widthsMm?: readonly number[];
}

const LEAST_WIDTH_MM = 32;
const WIDTHS = [1, 0.85, 0.7, 0.55, 0.45, 0.35, 0.25] as const;

/**
 * A block of words where the drawing leaves room: in a corner of one of the four parts that the point `about` makes
 * of the ground, as wide as fits there, or under, beside or over what already stands. Null where there is no such room.
 */
export const placeBlock = (writing: Writing, ground: Ground, about: PagePoint): Placed | null =>
  placeBy(freeCorner, writing, ground, about);

/** The same anywhere in those parts, `SEEK_MM` apart: slower, for words that found no such corner on any page. */
export const seekBlock = (writing: Writing, ground: Ground, about: PagePoint): Placed | null =>
  placeBy(freeAnywhere, writing, ground, about);

const SEEK_MM = 4;

/** Where a box of that size is free in a part of the ground. */
type Find = (part: Window, size: Size) => PagePoint | undefined;

function placeBy(
  finder: (ground: Ground) => Find,
  writing: Writing,
  ground: Ground,
  about: PagePoint,
): Placed | null {
  const find = finder(ground);
  for (const part of parts(ground.within, about)) {
    for (const widthMm of writing.widthsMm ?? sharesOf(part.widthMm)) {
      const placed = placeIn(find, { part, widthMm }, writing, ground);
      if (placed !== null) return placed;
    }
  }
  return null;
}

const sharesOf = (roomMm: number): readonly number[] =>
  WIDTHS.map((share) => share * roomMm).filter((widthMm) => widthMm >= LEAST_WIDTH_MM);

function placeIn(
  find: Find,
  { part, widthMm }: { part: Window; widthMm: number },
  writing: Writing,
  ground: Ground,
): Placed | null {
  const leastMm = writing.leastHeightMm(widthMm);
  if (find(part, { widthMm, heightMm: leastMm }) === undefined) return null;
  const { items, heightMm } = writing.write({ x: 0, y: 0, widthMm });
  const free = find(part, { widthMm, heightMm });
  if (free === undefined) return null;
  return { items: [shifted(items, free)], ground: taking(ground, { ...free, widthMm, heightMm }) };
}

const freeAnywhere =
  (ground: Ground): Find =>
  ({ x, y, widthMm, heightMm }, size) => {
    const isFreeAt = freeSpots(size, ground);
    const steps = (long: number): number[] =>
      Array.from({ length: Math.max(0, Math.floor(long / SEEK_MM) + 1) }, (_, index) => index * SEEK_MM);
    for (const down of steps(heightMm - size.heightMm)) {
      for (const across of steps(widthMm - size.widthMm)) {
        const at = { x: x + across, y: y + down };
        if (isFreeAt(at)) return at;
      }
    }
    return undefined;
  };

/** In a corner of the part, or under, beside or over what already stands: that is the same from every part. */
function freeCorner(ground: Ground): Find {
  const known = new Map<string, PagePoint | null>();
  return (part, size) => {
    const isFreeAt = freeSpots(size, ground);
    const corner = cornersFor(part, size).find(isFreeAt);
    if (corner !== undefined) return corner;
    const key = `${size.widthMm} ${size.heightMm}`;
    const beside = known.get(key);
    if (beside !== undefined) return beside ?? undefined;
    const found = freeBeside(ground, size, isFreeAt);
    known.set(key, found);
    return found ?? undefined;
  };
}

function freeBeside(
  { taken, within }: Ground,
  size: Size,
  isFreeAt: (at: PagePoint) => boolean,
): PagePoint | null {
  if (size.widthMm > within.widthMm + EPSILON_MM || size.heightMm > within.heightMm + EPSILON_MM) return null;
  for (const box of taken) {
    const next = placesBy(box, size).find(isFreeAt);
    if (next !== undefined) return next;
  }
  return null;
}

const placesBy = (box: Window, { widthMm, heightMm }: Size): readonly PagePoint[] => [
  { x: box.x, y: box.y + box.heightMm + NEAR_MM },
  { x: box.x + box.widthMm + NEAR_MM, y: box.y },
  { x: box.x, y: box.y - NEAR_MM - heightMm },
  { x: box.x - NEAR_MM - widthMm, y: box.y },
];

function cornersFor({ x, y, widthMm, heightMm }: Window, size: Size): readonly PagePoint[] {
  const right = x + widthMm - size.widthMm;
  const bottom = y + heightMm - size.heightMm;
  return [
    { x, y },
    { x: right, y },
    { x, y: bottom },
    { x: right, y: bottom },
  ];
}

/** The four quarters about a point with air along the lines between them, and the whole where the point is not in it. */
function parts(within: Window, { x, y }: { x: number; y: number }): Window[] {
  const far = 1e5;
  const quarters = [
    { x: x + NEAR_MM, y: y + NEAR_MM },
    { x: x - NEAR_MM - far, y: y + NEAR_MM },
    { x: x - NEAR_MM - far, y: y - NEAR_MM - far },
    { x: x + NEAR_MM, y: y - NEAR_MM - far },
  ];
  return quarters.flatMap((corner) => common(within, { ...corner, widthMm: far, heightMm: far }) ?? []);
}
