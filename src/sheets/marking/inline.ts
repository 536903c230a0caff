import type { Item, PagePoint } from "../../drawing/drawing.js";
import { point } from "../../drawing/pen.js";
import type { Part } from "../flow.js";

/** Something that stands in a line with others: a box to tick with its id, a sample of a line with its meaning. */
export interface Inline {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly draw: (corner: PagePoint) => readonly Item[];
}

const APART_MM = 5;
const LINE_GAP_MM = 1;

/** Inlines in lines from the left, as many as fit beside each other; the rest goes on where the part goes on. */
export const inlines =
  (all: readonly Inline[]): Part =>
  (free, fresh) => {
    const drawings: (() => Item[])[] = [];
    let heightMm = 0;
    let taken = 0;
    for (const line of linesOf(all, free.widthMm)) {
      const high = Math.max(...line.map((each) => each.heightMm)) + LINE_GAP_MM;
      if (heightMm + high > free.heightMm && !(fresh && taken === 0)) break;
      const corner = point(free.x, free.y + heightMm);
      drawings.push(() => lineAt(line, corner));
      heightMm += high;
      taken += line.length;
    }
    if (taken === 0 && all.length > 0) return null;
    return {
      heightMm,
      draw: () => drawings.flatMap((draw) => draw()),
      rest: taken === all.length ? null : inlines(all.slice(taken)),
    };
  };

function linesOf(all: readonly Inline[], widthMm: number): Inline[][] {
  const lines: Inline[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const each of all) {
    if (used + each.widthMm > widthMm) {
      lines.push([]);
      used = 0;
    }
    lines.at(-1)?.push(each);
    used += each.widthMm + APART_MM;
  }
  return lines;
}

function lineAt(line: readonly Inline[], corner: PagePoint): Item[] {
  let x = corner.x;
  return line.flatMap((each) => {
    const items = each.draw(point(x, corner.y));
    x += each.widthMm + APART_MM;
    return [...items];
  });
}
