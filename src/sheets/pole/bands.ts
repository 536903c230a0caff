import type { Item, PagePoint } from "../../drawing/drawing.js";
import { shifted } from "../../drawing/pen.js";
import { type Lie, OVERLAP_MM, type Tile, type Tiling, tile } from "../../drawing/tiles.js";
import { InternalError } from "../../findings/internal-error.js";
import type { Order } from "../sheet.js";
import { poleMarks, type Rise } from "./marks.js";
import { heightsOf, LEAST_CLEAR_MM, nameItems, namesOf, type PartOf } from "./names.js";
import type { Pole, Stretch } from "./pole.js";

/** One part of a pole, to be stacked with others on a page. */
export interface Band {
  /** Parts of its pole. */
  readonly of: number;
  readonly heightMm: number;
  readonly draw: (corner: PagePoint) => readonly Item[];
}

/** Past both ends, so that the line there is printed whole. */
const END_MM = 1;

/** Length that a pole's drawing takes. */
export const drawnMm = ({ far }: Pole): number => far.mm + 2 * END_MM;

interface Asked {
  readonly widthMm: number;
  /** Said of every part where the page holds several poles. */
  readonly title: string | null;
}

/** A pole in as few parts as a width holds, all of one height; null where the width has no room for its words. */
export function bandsOf(order: Order, pole: Pole, asked: Asked): readonly Band[] | null {
  // How a pole is parted does not depend on its height, but its height depends on which words stand on one part.
  const trial = layOut(order, pole, asked, TRIAL);
  if (trial.kind === "too-large") return null;
  const parts = trial.tiles.map((part) => between(pole, partOf(part, trial.tiles.length)));
  if (parts.some(({ clear }) => lengthOf(clear) < LEAST_CLEAR_MM)) return null;
  const names = parts.map((part) => namesOf(order, pole, part));
  const heights = heightsOf(pole, names);
  const headMm = trial.lie.heightMm - (trial.tiles[0]?.window.heightMm ?? 0);
  const laid = layOut(order, pole, asked, { ...heights, headMm });
  if (laid.kind === "too-large" || laid.grid.rows > 1) {
    throw new InternalError("a story pole is parted in another way than before");
  }
  return laid.tiles.map((part, index): Band => {
    const own = names[index];
    const items = [
      ...part.items,
      ...(own === undefined ? [] : [shifted(nameItems(own, heights), part.shift)]),
    ];
    return {
      of: laid.tiles.length,
      heightMm: laid.lie.heightMm,
      draw: (corner) => [shifted(items, corner)],
    };
  });
}

interface Trial extends Rise {
  /** Room over the strip for its name and the map of its parts. */
  readonly headMm: number;
}

const TRIAL: Trial = { membersMm: 10, barMm: 12, stripMm: 50, headMm: 30 };

function layOut(order: Order, pole: Pole, { widthMm, title }: Asked, rise: Trial): Tiling<Lie> {
  const extent = {
    x: -END_MM,
    y: -rise.stripMm - END_MM,
    widthMm: drawnMm(pole),
    heightMm: rise.stripMm + 2 * END_MM,
  };
  const heightMm = rise.headMm + extent.heightMm;
  const lies = [{ widthMm, heightMm, area: { x: 0, y: 0, widthMm, heightMm } }];
  const words = { part: partNamed(order, title), join: null };
  return tile({ drawing: poleMarks(pole, rise), extent, lies, words, forced: true });
}

const partNamed =
  ({ words }: Order, title: string | null) =>
  (name: string, of: number): string =>
    [title, words.template.tiles.part(name, of)].filter((said) => said !== null).join("  ·  ");

/** Letters of crosses reach so far into the clear part where there are so many that each has three. */
const LETTERS_MM = 3;

function partOf({ cell: { column }, window, clear, shift }: Tile, of: number): PartOf {
  const half = OVERLAP_MM / 2;
  const from = window.x - shift.x;
  return {
    own: {
      fromMm: column === 0 ? Number.NEGATIVE_INFINITY : from + half,
      toMm: column === of - 1 ? Number.POSITIVE_INFINITY : from + window.widthMm - half,
    },
    clear: {
      fromMm: clear.x - shift.x + LETTERS_MM,
      toMm: clear.x - shift.x + clear.widthMm - LETTERS_MM,
    },
  };
}

const lengthOf = ({ fromMm, toMm }: Stretch): number => toMm - fromMm;

/** From the lines at the ends to their words. */
const OFF_END_MM = 1.2;

/** Words stay between the ends of the pole, where that leaves them room. */
function between({ far }: Pole, part: PartOf): PartOf {
  const clear = {
    fromMm: Math.max(part.clear.fromMm, OFF_END_MM),
    toMm: Math.min(part.clear.toMm, far.mm - OFF_END_MM),
  };
  return lengthOf(clear) < LEAST_CLEAR_MM ? part : { ...part, clear };
}
