import { placeBlock, type Writing } from "../../drawing/free-block.js";
import type { Ground, Placed } from "../../drawing/free-place.js";
import { point } from "../../drawing/pen.js";
import type { Block } from "../../drawing/text-block.js";
import { bandData } from "./band.js";
import { type Datum, dataBoxes, leastBoxMm } from "./data-boxes.js";
import type { Task } from "./lie.js";

/**
 * The figures of a template where its drawing leaves room: inside the cut line, on what falls out, or off the flange.
 * What says the size keeps together, and so does the place; else two and two do. Null where a page has no room.
 */
export function figuresPlacer(task: Task): (ground: Ground) => Placed | null {
  const { size, place } = bandData(task);
  const whole = [size, place].map(writing);
  const inPairs = [...inTwos(size), ...inTwos(place)].map(writing);
  return (ground) => placeAll(whole, ground) ?? placeAll(inPairs, ground);
}

const inTwos = (data: readonly Datum[]): readonly (readonly Datum[])[] =>
  Array.from({ length: Math.ceil(data.length / 2) }, (_, index) => data.slice(2 * index, 2 * index + 2));

function placeAll(groups: readonly Writing[], ground: Ground): Placed | null {
  return groups.reduce<Placed | null>(
    (done, group) => {
      if (done === null) return null;
      const next = placeBlock(group, done.ground, point(0, 0));
      return next === null ? null : { items: [...done.items, ...next.items], ground: next.ground };
    },
    { items: [], ground },
  );
}

/** Wider than the figures alone, so that what they mean breaks into fewer lines. */
const WIDER = [1.4, 1.2, 1] as const;

function writing(data: readonly Datum[]): Writing {
  const least = leastBoxMm(data);
  const rowsOf = (columns: number): number => Math.ceil(data.length / columns);
  // Every part of every template asks for the same few widths.
  const written = new Map<number, Block>();
  return {
    write: (place) => {
      const block = written.get(place.widthMm) ?? dataBoxes(data, place);
      written.set(place.widthMm, block);
      return block;
    },
    leastHeightMm: (widthMm) =>
      written.get(widthMm)?.heightMm ?? rowsOf(Math.floor(widthMm / least.widthMm)) * least.heightMm,
    widthsMm: data.flatMap((_, index) => WIDER.map((times) => (index + 1) * least.widthMm * times)),
  };
}
