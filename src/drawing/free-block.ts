import { EPSILON_MM } from "../geometry/epsilon.js";
import type { PagePoint, Window } from "./drawing.js";
import {
  blockedSpots,
  freeSpots,
  type Ground,
  NEAR_MM,
  type Placed,
  type Size,
  taking,
} from "./free-place.js";
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
 * A block of words where the drawing leaves room: in a corner of one of the parts of the ground (`quartersOf`), as wide
 * as fits there, or under, beside or over what already stands. Null where there is no such room.
 */
export const placeBlock = (writing: Writing, ground: Ground, parts: readonly Window[]): Placed | null =>
  placeBy(freeCorner, writing, ground, parts);

/** The same anywhere in those parts, `SEEK_MM` apart: slower, for words that found no such corner on any page. */
export const seekBlock = (writing: Writing, ground: Ground, parts: readonly Window[]): Placed | null =>
  placeBy(freeAnywhere, writing, ground, parts);

const SEEK_MM = 4;

/** Where a box of that size is free in a part of the ground. */
type Find = (part: Window, size: Size) => PagePoint | undefined;

/** Looks in a ground for boxes none of which is smaller than `least`, which is worked out where it is asked for. */
type Finder = (ground: Ground, least: () => Size) => Find;

function placeBy(finder: Finder, writing: Writing, ground: Ground, parts: readonly Window[]): Placed | null {
  const find = finder(ground, () => leastOf(writing, parts));
  for (const part of parts) {
    for (const widthMm of widthsFor(writing, part)) {
      const placed = placeIn(find, { part, widthMm }, writing, ground);
      if (placed !== null) return placed;
    }
  }
  return null;
}

const widthsFor = (writing: Writing, part: Window): readonly number[] =>
  writing.widthsMm ?? sharesOf(part.widthMm);

const sharesOf = (roomMm: number): readonly number[] =>
  WIDTHS.map((share) => share * roomMm).filter((widthMm) => widthMm >= LEAST_WIDTH_MM);

function leastOf(writing: Writing, parts: readonly Window[]): Size {
  const widths = parts.flatMap((part) => widthsFor(writing, part));
  return { widthMm: Math.min(...widths), heightMm: Math.min(...widths.map(writing.leastHeightMm)) };
}

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

const freeAnywhere: Finder =
  (ground) =>
  ({ x, y, widthMm, heightMm }, size) => {
    const blockedTo = blockedSpots(size, ground);
    const [right, bottom] = [widthMm - size.widthMm, heightMm - size.heightMm];
    for (let down = 0; down <= bottom; down += SEEK_MM) {
      for (let across = 0; across <= right; ) {
        const at = { x: x + across, y: y + down };
        const toMm = blockedTo(at);
        if (toMm === null) return at;
        do across += SEEK_MM;
        while (x + across <= toMm);
      }
    }
    return undefined;
  };

/** In a corner of the part, or under, beside or over what already stands: that is the same from every part. */
function freeCorner(ground: Ground, least: () => Size): Find {
  const known: { readonly size: Size; readonly at: PagePoint | undefined }[] = [];
  let spots: readonly Beside[] | null = null;
  return (part, size) => {
    const isFreeAt = freeSpots(size, ground);
    const corner = cornersFor(part, size).find(isFreeAt);
    if (corner !== undefined) return corner;
    const before = known.find((one) => isSame(one.size, size));
    if (before !== undefined) return before.at;
    spots ??= roomySpots(ground, least());
    const at = firstOf(spots, size, isFreeAt);
    known.push({ size, at });
    return at;
  };
}

function firstOf(
  spots: readonly Beside[],
  size: Size,
  isFreeAt: (at: PagePoint) => boolean,
): PagePoint | undefined {
  for (const spot of spots) {
    const at = spot(size);
    if (isFreeAt(at)) return at;
  }
  return undefined;
}

const isSame = (a: Size, b: Size): boolean => a.widthMm === b.widthMm && a.heightMm === b.heightMm;

/** Where a box of a size begins that stands beside another. */
type Beside = (size: Size) => PagePoint;

/**
 * The places beside what stands that have room for the least of the boxes looked for: where that has none, neither has
 * a larger one, as it covers all that the least covers. By a little less than the least, so that nothing hangs on how
 * the last digit is rounded.
 */
function roomySpots(ground: Ground, least: Size): readonly Beside[] {
  const isFreeAt = freeSpots(
    { widthMm: least.widthMm - 2 * EPSILON_MM, heightMm: least.heightMm - 2 * EPSILON_MM },
    ground,
  );
  return ground.taken.flatMap(spotsBy).filter((spot) => {
    const { x, y } = spot(least);
    return isFreeAt({ x: x + EPSILON_MM, y: y + EPSILON_MM });
  });
}

const spotsBy = (box: Window): readonly Beside[] => [
  () => ({ x: box.x, y: box.y + box.heightMm + NEAR_MM }),
  () => ({ x: box.x + box.widthMm + NEAR_MM, y: box.y }),
  ({ heightMm }) => ({ x: box.x, y: box.y - NEAR_MM - heightMm }),
  ({ widthMm }) => ({ x: box.x - NEAR_MM - widthMm, y: box.y }),
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

/** The four quarters that a point makes of a box, with air along the lines between them; fewer where it lies outside. */
export function quartersOf(within: Window, { x, y }: PagePoint): readonly Window[] {
  const far = 1e5;
  const quarters = [
    { x: x + NEAR_MM, y: y + NEAR_MM },
    { x: x - NEAR_MM - far, y: y + NEAR_MM },
    { x: x - NEAR_MM - far, y: y - NEAR_MM - far },
    { x: x + NEAR_MM, y: y - NEAR_MM - far },
  ];
  return quarters.flatMap((corner) => common(within, { ...corner, widthMm: far, heightMm: far }) ?? []);
}
