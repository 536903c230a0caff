import { type Box, isIn } from "../box.js";
import type { Axis } from "../field.js";
import type { Spot } from "../lanes.js";

/** How far what holds a spot reaches; the spot alone where nothing does. */
export function heldBy({ field, at }: Spot): Box {
  const holding = field.blocks.filter((block) => isIn(block, at));
  const reach = (axis: Axis, pick: (...values: number[]) => number, end: "min" | "max"): number =>
    pick(at[axis], ...holding.map((block) => block[end][axis]));
  return {
    min: { u: reach("u", Math.min, "min"), v: reach("v", Math.min, "min") },
    max: { u: reach("u", Math.max, "max"), v: reach("v", Math.max, "max") },
  };
}
