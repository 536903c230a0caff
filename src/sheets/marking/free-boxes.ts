import type { Item } from "../../drawing/drawing.js";
import type { DrawnLater } from "../../drawing/drawn-later.js";
import type { Box } from "../../drawing/pen.js";
import type { Part } from "../flow.js";

/** Narrower than this no figures can be read; wider than twice this they stand in columns. */
const LEAST_COLUMN_MM = 85;
const WIDE_COLUMN_MM = 150;
const APART_MM = 4;

/** What is left of an area beside a drawing in its top left corner, over its whole height, and below the drawing. */
export function freeBoxes(
  area: Box,
  drawing: { readonly widthMm: number; readonly heightMm: number },
): Box[] {
  const besideMm = area.widthMm - drawing.widthMm - APART_MM;
  const hasBeside = besideMm >= LEAST_COLUMN_MM;
  const beside = { ...area, x: area.x + drawing.widthMm + APART_MM, widthMm: besideMm };
  const below = {
    ...area,
    y: area.y + drawing.heightMm + APART_MM,
    heightMm: area.heightMm - drawing.heightMm - APART_MM,
    widthMm: hasBeside ? drawing.widthMm : area.widthMm,
  };
  return [...(hasBeside ? columns(beside) : []), ...(below.heightMm > 0 ? columns(below) : [])];
}

function columns(box: Box): Box[] {
  const count = Math.max(1, Math.floor(box.widthMm / WIDE_COLUMN_MM));
  const widthMm = (box.widthMm - (count - 1) * APART_MM) / count;
  return Array.from({ length: count }, (_, index) => ({
    ...box,
    x: box.x + index * (widthMm + APART_MM),
    widthMm,
  }));
}

export interface Filled {
  /** Made only where the page is. */
  readonly draw: () => readonly Item[];
  /** Height used of each box. */
  readonly usedMm: readonly number[];
  /** Parts that found no room, in their order. */
  readonly rest: readonly Part[];
}

/** Parts in their order into boxes, one box after the other; what does not fit into the last is left. */
export function fill(parts: readonly Part[], boxes: readonly Box[], gapMm: number): Filled {
  const waiting = [...parts];
  const blocks: DrawnLater[] = [];
  const usedMm = boxes.map((box) => {
    let used = 0;
    for (let part = waiting.shift(); part !== undefined; part = waiting.shift()) {
      const laid = part({ ...box, y: box.y + used, heightMm: box.heightMm - used }, false);
      if (laid !== null) {
        blocks.push(laid);
        used += laid.heightMm + gapMm;
      }
      const rest = laid === null ? part : laid.rest;
      if (rest === null) continue;
      waiting.unshift(rest);
      break;
    }
    return used;
  });
  return { draw: () => blocks.flatMap(({ draw }) => draw()), usedMm, rest: waiting };
}
