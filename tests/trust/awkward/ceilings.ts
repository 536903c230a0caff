import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import { cellOf, centred, leastFirst, listOf, mm, type Point, type Rectangle } from "./choice.js";
import { cornersOf, type Plan, roundIn } from "./plan.js";

/*
 * Soffits, trays and slopes, as many and with as many corners as there may be.
 */

export interface CeilingsChoice {
  readonly count: number;
  /** Of each, unless that makes more than all of them may have. */
  readonly corners: number;
  readonly shape: "round" | "star" | "slope";
}

export const ceilingsChoice: fc.Arbitrary<CeilingsChoice> = fc.record({
  count: leastFirst(0, 0, 0, 1, 10, 30),
  corners: leastFirst(4, 12, 60),
  shape: leastFirst("round", "slope", "star"),
});

/** A ceiling beside the main one. */
export interface Ceiling {
  readonly name: string;
  readonly parts: Parts;
  /** A rectangle that lies in it. */
  readonly core: Rectangle;
  readonly isSlope: boolean;
  readonly isStar: boolean;
}

const MOST_CORNERS_OF_ALL = 600;
const OF_ITS_CELL = 0.9;
/** What lies in a diamond and in a star too. */
const OF_ITSELF = 0.25;
const HEIGHT_MM = 4000;
const LOW_END_MM = 3000;
const RISE = 0.01;

export function ceilingsOf({ count, corners, shape }: CeilingsChoice, plan: Plan): readonly Ceiling[] {
  const most = Math.floor(MOST_CORNERS_OF_ALL / Math.max(1, count));
  return listOf(count, (index) => {
    const around = centred(cellOf(plan.core, index, count), OF_ITS_CELL);
    const outline = roundIn(around, Math.min(corners, most), shape === "star");
    const name = `c${index}`;
    const core = centred(around, OF_ITSELF);
    return {
      ...{ name, core, isSlope: shape === "slope", isStar: shape === "star" },
      parts: { name, corners: cornersOf(outline), ...heightsOf(outline, shape) },
    };
  });
}

const heightsOf = (outline: readonly Point[], shape: CeilingsChoice["shape"]): Parts =>
  shape === "slope"
    ? { heights: outline.map(({ leftMm }) => mm(LOW_END_MM + RISE * leftMm)) }
    : { height: mm(HEIGHT_MM) };
