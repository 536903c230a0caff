import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import { atLeast, leastFirst, mm } from "./choice.js";
import type { Plan } from "./plan.js";

/** Sheets of the ceiling's board, for as many joints as there may be. */
export interface BoardChoice {
  readonly sheets: "none" | "long joints along the front" | "long joints along the left";
  readonly widthMm: number;
  readonly lengthMm: number;
}

export const boardChoice: fc.Arbitrary<BoardChoice> = fc.record({
  sheets: leastFirst("none", "none", "long joints along the front", "long joints along the left"),
  widthMm: leastFirst(1200, 600, 400),
  lengthMm: leastFirst(2400, 600, 400),
});

/** Of the 20,000 that there may be, but for those at the ends of the rows. */
const MOST_JOINTS = 17_000;

export function boardOf(choice: BoardChoice, plan: Plan): Parts {
  const board = { ceiling: "12.5 mm", walls: "12.5 mm" };
  if (choice.sheets === "none" || !plan.isSquare) return board;
  const [front, left] = plan.hooks;
  const [from, endsFrom] = choice.sheets === "long joints along the front" ? [front, left] : [left, front];
  const lengthMm = atLeast(choice.lengthMm, (plan.widthMm * plan.lengthMm) / choice.widthMm / MOST_JOINTS);
  const ceiling = {
    ...{ from, first: "100 mm", width: mm(choice.widthMm), length: mm(lengthMm) },
    ends: { from: endsFrom, first: "50 mm", stagger: mm(lengthMm / 2) },
  };
  return { ...board, sheets: { ceiling } };
}
