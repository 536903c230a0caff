import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import type { Ceiling } from "./ceilings.js";
import { atLeast, cellOf, leastFirst, listOf, mm } from "./choice.js";
import type { Plan } from "./plan.js";

/*
 * Areas to be filled evenly: as many over each other as may be, or side by side.
 */

export interface AreasChoice {
  readonly count: number;
  readonly spacingMm: number;
  readonly pattern: "square" | "hexagon";
}

export const areasChoice: fc.Arbitrary<AreasChoice> = fc.record({
  count: leastFirst(0, 0, 0, 1, 4, 30),
  spacingMm: leastFirst(8000, 6000, 4000, 2000),
  pattern: leastFirst("square", "hexagon"),
});

/** Loudspeakers of the file beside which the areas are filled: all together are 500 at most. */
export const MOST_BESIDE_AREAS = 100;
/** With those along the ends of the rows there are half as many again. */
const MOST_IN_AREAS = 250;
/** More than lie over each other in one place are laid side by side, where no other ceiling takes the place of one. */
const MOST_OVER_EACH_OTHER = 4;

export function areasOf(
  { count, spacingMm, pattern }: AreasChoice,
  plan: Plan,
  ceilings: readonly Ceiling[],
): readonly Parts[] {
  const isOver = count <= MOST_OVER_EACH_OTHER || !plan.isSquare || ceilings.length > 0;
  const layers = isOver ? Math.min(count, MOST_OVER_EACH_OTHER) : 1;
  const leastMm = Math.sqrt((layers * plan.widthMm * plan.lengthMm) / MOST_IN_AREAS);
  return listOf(isOver ? layers : count, (index) => ({
    ...{ name: `A${index}`, on: "ceiling", model: "m0", ear: "1.2 m", prefix: `P${index}-`, pattern },
    ...{ spacing: mm(atLeast(spacingMm, leastMm)), ...(isOver ? {} : rectangleOf(plan, index, count)) },
  }));
}

function rectangleOf({ core, tapes }: Plan, index: number, count: number): Parts {
  const { leftMm, frontMm, widthMm, lengthMm } = cellOf(core, index, count);
  return {
    corner: tapes({ leftMm, frontMm }),
    opposite: tapes({ leftMm: leftMm + widthMm, frontMm: frontMm + lengthMm }),
  };
}
