import type { UnitSystem } from "../room/room.js";
import { feetInches, inches, millimetres } from "../units/format.js";
import { unbroken } from "./unbroken.js";

/** One length as it is read on site: the job's own units large, the others beside it, so that nobody converts. */
export interface Figures {
  readonly main: string;
  /** The other notations, joined; empty never. */
  readonly others: string;
}

/** Feet and inches to 1/16, total inches and millimetres of one length; the job's units first. No figure breaks over lines. */
export function figuresOf(mm: number, units: UnitSystem): Figures {
  const feet = unbroken(feetInches(mm).text);
  const total = unbroken(inches(mm).text);
  const imperial = feet === total ? [feet] : [feet, total];
  const metric = unbroken(millimetres(mm).text);
  if (units === "metric") return { main: metric, others: imperial.join(" · ") };
  return { main: feet, others: [...imperial.slice(1), metric].join(" · ") };
}
