import type { Item, PagePoint, Window } from "./drawing.js";
import { line, PEN, point } from "./pen.js";
import { anyMeets, liesIn } from "./touches.js";

/** A label that looks for a place on a drawing. */
export interface LabelWish {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Where its middle may stand, best first. */
  readonly middles: readonly PagePoint[];
  readonly draw: (middle: PagePoint) => readonly Item[];
  /** Another form of it, narrower or farther off, asked for only where this one has no place. */
  readonly otherwise?: () => LabelWish;
}

/** A label's items where it came to stand; null where it found no free place and was left out. */
export type Placed = readonly Item[] | null;

/**
 * Each label in the first of its places that lies inside `bounds` and touches neither what is taken nor a label before
 * it: the order of the wishes is their rank. None is ever printed over another.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  { taken, bounds }: { taken: readonly Window[]; bounds: Window },
): Placed[] {
  const occupied = [...taken];
  return wishes.map((wish) => {
    const found = firstPlace(wish, occupied, bounds);
    if (found !== null) occupied.push(found.box);
    return found?.items ?? null;
  });
}

function firstPlace(
  wish: LabelWish,
  occupied: readonly Window[],
  bounds: Window,
): { readonly box: Window; readonly items: readonly Item[] } | null {
  const middle = wish.middles.find((each) => isFree(boxAbout(each, wish), occupied, bounds));
  if (middle !== undefined) return { box: boxAbout(middle, wish), items: wish.draw(middle) };
  return wish.otherwise === undefined ? null : firstPlace(wish.otherwise(), occupied, bounds);
}

interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

export const boxAbout = ({ x, y }: PagePoint, { widthMm, heightMm }: Size): Window => ({
  x: x - widthMm / 2,
  y: y - heightMm / 2,
  widthMm,
  heightMm,
});

const isFree = (box: Window, occupied: readonly Window[], bounds: Window): boolean =>
  liesIn(box, bounds) && !anyMeets(occupied, box);

/** A thin line between two boxes that stand apart, from edge to edge; nothing where they are near enough to be read as one. */
export function leader(from: Window, to: Window): Item[] {
  const [start, end] = [nearestIn(from, middleOf(to)), nearestIn(to, middleOf(from))];
  return Math.hypot(end.x - start.x, end.y - start.y) < LEAST_LEADER_MM ? [] : [line(start, end, PEN.fine)];
}

const LEAST_LEADER_MM = 3.5;

export const middleOf = ({ x, y, widthMm, heightMm }: Window): PagePoint =>
  point(x + widthMm / 2, y + heightMm / 2);

const nearestIn = ({ x, y, widthMm, heightMm }: Window, at: PagePoint): PagePoint =>
  point(Math.min(Math.max(at.x, x), x + widthMm), Math.min(Math.max(at.y, y), y + heightMm));

/** Middles for a label beside a box: right, left, below and above it, further along its sides, at its corners; then the same farther off. */
export function middlesAround(box: Window, size: Size, distancesMm: readonly number[]): PagePoint[] {
  const { x, y } = middleOf(box);
  return distancesMm.flatMap((distance) => {
    const across = (box.widthMm + size.widthMm) / 2 + distance;
    const down = (box.heightMm + size.heightMm) / 2 + distance;
    return ALONG.flatMap((part) => [
      ...[across, -across].map((aside) => point(x + aside, y + part * down)),
      ...[down, -down].map((aside) => point(x + part * across, y + aside)),
    ]);
  });
}

/** Parts of the way from the middle of a side to its corner. */
const ALONG: readonly number[] = [0, 0.5, -0.5, 1, -1, 0.25, -0.25, 0.75, -0.75];

/** Those middles at which a label lies wholly inside a box. */
export const middlesWithin = (middles: readonly PagePoint[], size: Size, box: Window): PagePoint[] =>
  middles.filter((middle) => liesIn(boxAbout(middle, size), box));

/** Forms of one label to try in their order: each where the one before it has no place. */
export function inTurn(first: LabelWish, ...others: readonly (() => LabelWish)[]): LabelWish {
  const [next, ...rest] = others;
  return next === undefined ? first : { ...first, otherwise: () => inTurn(next(), ...rest) };
}

/** Middles on a line between two points, from its middle outward. */
export function middlesAlong(from: PagePoint, to: PagePoint): PagePoint[] {
  return [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].map((part) =>
    point(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part),
  );
}

/** Places looked at along either side of a box when none near is free. */
const MOST_PLACES = 40;

/** Middles all over a box, `stepMm` apart or further where it is large, the nearest to a point first. */
export function middlesOver(box: Window, near: PagePoint, stepMm: number): PagePoint[] {
  const columns = placesAlong(box.widthMm, stepMm);
  const rows = placesAlong(box.heightMm, stepMm);
  const all = Array.from({ length: columns * rows }, (_, index) => {
    const x = box.x + (((index % columns) + 0.5) * box.widthMm) / columns;
    const y = box.y + ((Math.floor(index / columns) + 0.5) * box.heightMm) / rows;
    return { middle: point(x, y), awayMm: Math.hypot(x - near.x, y - near.y) };
  });
  return all.sort((a, b) => a.awayMm - b.awayMm).map(({ middle }) => middle);
}

const placesAlong = (longMm: number, stepMm: number): number =>
  Math.min(MOST_PLACES, Math.max(1, Math.floor(longMm / stepMm)));
