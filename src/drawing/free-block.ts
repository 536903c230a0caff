import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Item, PagePoint, Window } from "./drawing.js";
import type { DrawnLater } from "./drawn-later.js";
import { blockedSpots, type Ground, isFree, NEAR_MM, type Size, taking } from "./free-place.js";
import { shifted } from "./pen.js";
import { common } from "./touches.js";

/** Words that can be as wide as there is room for. */
export interface Writing {
  readonly write: (widthMm: number) => DrawnLater;
  /** No less than this is needed at a width: known without writing, so that most places are passed over at once. */
  readonly leastHeightMm: (widthMm: number) => number;
  /** Widths worth trying, the most wanted first; shares of the room unless said. */
  readonly widthsMm?: readonly number[];
}

const LEAST_WIDTH_MM = 32;
const WIDTHS = [1, 0.85, 0.7, 0.55, 0.45, 0.35, 0.25] as const;

/**
 * Where on a page blocks of words may still be put, one after the other. A place that has no room for the least of the
 * blocks has none for any, now or when more stands there: it is left out from then on.
 */
export interface Spaces {
  readonly ground: Ground;
  readonly parts: readonly Part[];
  /** Under, beside and over what stands: the same from every part. */
  readonly beside: readonly Spot[];
  /** No block to be placed is smaller. */
  readonly least: Size;
}

/** One of the parts that a point makes of the ground. */
interface Part {
  readonly box: Window;
  readonly corners: readonly Spot[];
}

/** Where a box of a size lies. */
type Spot = (size: Size) => PagePoint;

/** The spaces for some writings in the four quarters that the point `about` makes of a ground. */
export function spacesFor(writings: readonly Writing[], ground: Ground, about: PagePoint): Spaces {
  const boxes = quartersOf(ground.within, about);
  return stillOpen({
    ground,
    parts: boxes.map((box) => ({ box, corners: cornersOf(box) })),
    beside: ground.taken.flatMap(besideOf),
    least: leastOf(writings, boxes),
  });
}

function leastOf(writings: readonly Writing[], parts: readonly Window[]): Size {
  const sizes = writings.flatMap((writing) =>
    parts.flatMap((part) =>
      widthsFor(writing, part).map((widthMm) => ({ widthMm, heightMm: writing.leastHeightMm(widthMm) })),
    ),
  );
  return {
    widthMm: Math.min(...sizes.map(({ widthMm }) => widthMm)),
    heightMm: Math.min(...sizes.map(({ heightMm }) => heightMm)),
  };
}

/** Without the spots that do not hold the least; by a little less than that, so that nothing hangs on how the last digit is rounded. */
function stillOpen(spaces: Spaces): Spaces {
  const { ground, least } = spaces;
  const [widthMm, heightMm] = [least.widthMm - 2 * EPSILON_MM, least.heightMm - 2 * EPSILON_MM];
  const isOpen = (spot: Spot): boolean => {
    const { x, y } = spot(least);
    return isFree({ x: x + EPSILON_MM, y: y + EPSILON_MM, widthMm, heightMm }, ground);
  };
  return {
    ...spaces,
    parts: spaces.parts.map(({ box, corners }) => ({ box, corners: corners.filter(isOpen) })),
    beside: spaces.beside.filter(isOpen),
  };
}

const without = (spaces: Spaces, box: Window): Spaces =>
  stillOpen({ ...spaces, ground: taking(spaces.ground, box), beside: [...spaces.beside, ...besideOf(box)] });

/** A block of words where it stands, and the spaces that it leaves. */
interface PlacedBlock {
  readonly items: readonly Item[];
  readonly spaces: Spaces;
}

/**
 * A block of words where the drawing leaves room: in a corner of one of the parts of the ground, as wide as fits there,
 * or under, beside or over what already stands. Null where there is no such room.
 */
export const placeBlock = (writing: Writing, spaces: Spaces): PlacedBlock | null =>
  placeBy(freeSpot, writing, spaces);

/** The same anywhere in those parts, `SEEK_MM` apart: slower, for words that found no such corner on any page. */
export const seekBlock = (writing: Writing, spaces: Spaces): PlacedBlock | null =>
  placeBy(freeAnywhere, writing, spaces);

const SEEK_MM = 4;

/** Where a box of that size is free in a part of the ground. */
type Find = (spaces: Spaces, part: Part, size: Size) => PagePoint | undefined;

function placeBy(find: Find, writing: Writing, spaces: Spaces): PlacedBlock | null {
  for (const part of spaces.parts) {
    for (const widthMm of widthsFor(writing, part.box)) {
      const placed = placeIn(find, { part, widthMm }, writing, spaces);
      if (placed !== null) return placed;
    }
  }
  return null;
}

const widthsFor = (writing: Writing, part: Window): readonly number[] =>
  writing.widthsMm ?? sharesOf(part.widthMm);

const sharesOf = (partMm: number): readonly number[] =>
  WIDTHS.map((share) => share * partMm).filter((widthMm) => widthMm >= LEAST_WIDTH_MM);

function placeIn(
  find: Find,
  { part, widthMm }: { part: Part; widthMm: number },
  writing: Writing,
  spaces: Spaces,
): PlacedBlock | null {
  if (find(spaces, part, { widthMm, heightMm: writing.leastHeightMm(widthMm) }) === undefined) return null;
  const { heightMm, draw } = writing.write(widthMm);
  const free = find(spaces, part, { widthMm, heightMm });
  if (free === undefined) return null;
  return { items: [shifted(draw(), free)], spaces: without(spaces, { ...free, widthMm, heightMm }) };
}

const freeAnywhere: Find = ({ ground }, { box: { x, y, widthMm, heightMm } }, size) => {
  const blockedTo = blockedSpots(size, ground);
  const [toRightMm, toBottomMm] = [widthMm - size.widthMm, heightMm - size.heightMm];
  for (let downMm = 0; downMm <= toBottomMm; downMm += SEEK_MM) {
    for (let acrossMm = 0; acrossMm <= toRightMm; ) {
      const at = { x: x + acrossMm, y: y + downMm };
      const toMm = blockedTo(at);
      if (toMm === null) return at;
      do acrossMm += SEEK_MM;
      while (x + acrossMm <= toMm);
    }
  }
  return undefined;
};

/** In a corner of the part, or under, beside or over what already stands. */
const freeSpot: Find = ({ ground, beside }, { corners }, size) =>
  firstFree(corners, size, ground) ?? firstFree(beside, size, ground);

function firstFree(spots: readonly Spot[], size: Size, ground: Ground): PagePoint | undefined {
  for (const spot of spots) {
    const at = spot(size);
    const box = { x: at.x, y: at.y, widthMm: size.widthMm, heightMm: size.heightMm };
    if (isFree(box, ground)) return at;
  }
  return undefined;
}

const besideOf = (box: Window): readonly Spot[] => [
  () => ({ x: box.x, y: box.y + box.heightMm + NEAR_MM }),
  () => ({ x: box.x + box.widthMm + NEAR_MM, y: box.y }),
  ({ heightMm }) => ({ x: box.x, y: box.y - NEAR_MM - heightMm }),
  ({ widthMm }) => ({ x: box.x - NEAR_MM - widthMm, y: box.y }),
];

const cornersOf = ({ x, y, widthMm, heightMm }: Window): readonly Spot[] => {
  const right = (size: Size): number => x + widthMm - size.widthMm;
  const bottom = (size: Size): number => y + heightMm - size.heightMm;
  return [
    () => ({ x, y }),
    (size) => ({ x: right(size), y }),
    (size) => ({ x, y: bottom(size) }),
    (size) => ({ x: right(size), y: bottom(size) }),
  ];
};

/** The four quarters that a point makes of a box, with air along the lines between them; fewer where it lies outside. */
function quartersOf(within: Window, { x, y }: PagePoint): readonly Window[] {
  const far = 1e5;
  const quarters = [
    { x: x + NEAR_MM, y: y + NEAR_MM },
    { x: x - NEAR_MM - far, y: y + NEAR_MM },
    { x: x - NEAR_MM - far, y: y - NEAR_MM - far },
    { x: x + NEAR_MM, y: y - NEAR_MM - far },
  ];
  return quarters.flatMap((corner) => common(within, { ...corner, widthMm: far, heightMm: far }) ?? []);
}
