import type { Item } from "../../drawing/drawing.js";
import { type DrawnLater, drawnOnce } from "../../drawing/drawn-later.js";
import { placeBlock, spacesFor, type Writing } from "../../drawing/free-block.js";
import type { Ground, Placed } from "../../drawing/free-place.js";
import { point } from "../../drawing/pen.js";
import type { BandData } from "./band.js";
import { boxesLater, type Datum, leastBoxes } from "./data-boxes.js";

/**
 * The figures of a template where its drawing leaves room: inside the cut line, on what falls out, or off the flange.
 * What says the size keeps together, and so does the place; else two and two do. Null where a page has no room.
 */
export function figuresPlacer({ size, place }: BandData): (ground: Ground) => Placed | null {
  const whole = [size, place].map(writing);
  const inPairs = [...inTwos(size), ...inTwos(place)].map(writing);
  return (ground) => placeAll(whole, ground) ?? placeAll(inPairs, ground);
}

const inTwos = (data: readonly Datum[]): readonly (readonly Datum[])[] =>
  Array.from({ length: Math.ceil(data.length / 2) }, (_, index) => data.slice(2 * index, 2 * index + 2));

function placeAll(groups: readonly Writing[], ground: Ground): Placed | null {
  const items: Item[] = [];
  let spaces = spacesFor(groups, ground, point(0, 0));
  for (const group of groups) {
    const next = placeBlock(group, spaces);
    if (next === null) return null;
    items.push(...next.items);
    spaces = next.spaces;
  }
  return { items, ground: spaces.ground };
}

/** Wider than the figures alone, so that what they mean breaks into fewer lines. */
const WIDER = [1.4, 1.2, 1] as const;

function writing(data: readonly Datum[]): Writing {
  const least = leastBoxes(data);
  // Every part of every template asks for the same few widths.
  const written = new Map<number, DrawnLater>();
  return {
    write: (widthMm) => {
      const block = written.get(widthMm) ?? drawnOnce(boxesLater(data, { x: 0, y: 0, widthMm }));
      written.set(widthMm, block);
      return block;
    },
    leastHeightMm: (widthMm) => written.get(widthMm)?.heightMm ?? least.heightMm(widthMm),
    widthsMm: data.flatMap((_, index) => WIDER.map((times) => (index + 1) * least.columnMm * times)),
  };
}
