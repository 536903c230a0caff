import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import { centred, leastFirst, listOf, mm, type Point, scattered } from "./choice.js";
import type { Plan } from "./plan.js";

/*
 * Cables of all loudspeakers, by points that they are told to go by and round where none may lie.
 */

export interface CablesChoice {
  readonly equipment: "none" | "in a corner" | "beside a corner" | "in the middle";
  readonly upMm: number;
  /** Points that each cable goes by, unless that makes more of them than a file has words for. */
  readonly via: number;
  /** Areas where no cable may lie. */
  readonly avoid: number;
}

export const cablesChoice: fc.Arbitrary<CablesChoice> = fc.record({
  equipment: leastFirst("none", "in a corner", "beside a corner", "in the middle"),
  upMm: leastFirst(0, 500, 1000),
  via: leastFirst(0, 0, 1, 3, 10),
  avoid: leastFirst(0, 0, 0, 200),
});

const SHARE_OF_CORE = { "in a corner": 0, "beside a corner": 0.05, "in the middle": 0.5 } as const;

/** Keys of the room file. */
export function equipmentOf({ equipment, upMm, avoid }: CablesChoice, plan: Plan): Parts {
  if (equipment === "none") return {};
  const { leftMm, frontMm, widthMm, lengthMm } = plan.core;
  const share = SHARE_OF_CORE[equipment];
  const at = plan.tapes({ leftMm: leftMm + share * widthMm, frontMm: frontMm + share * lengthMm });
  const areas = listOf(plan.isSquare ? avoid : 0, avoided(plan));
  return { equipment: { at, up: mm(upMm) }, ...(areas.length > 0 ? { cable: { avoid: areas } } : {}) };
}

/** Long and narrow, one across the other's end. */
const avoided =
  ({ core, tapes }: Plan) =>
  (index: number): Parts => {
    const { leftMm, frontMm, widthMm, lengthMm } = core;
    const corner: Point = {
      leftMm: leftMm + ((index * 5003) % (0.8 * widthMm)),
      frontMm: frontMm + ((index * 3001) % (0.8 * lengthMm)),
    };
    const opposite = { leftMm: corner.leftMm + 0.1 * widthMm, frontMm: corner.frontMm + 100 };
    return { on: "ceiling", corner: tapes(corner), opposite: tapes(opposite) };
  };

const MOST_VIA = 1000;

/** Keys of each of so many loudspeakers. */
export function cableOf(
  { equipment, via }: CablesChoice,
  plan: Plan,
  count: number,
): (index: number) => Parts {
  const each = Math.min(via, Math.floor(MOST_VIA / count));
  if (equipment === "none" || each === 0) return () => ({});
  const field = centred(plan.core, 0.95);
  return (index) => {
    const points = listOf(each, (number) => plan.tapes(scattered(field, 11 * index + 501 * number)));
    return { cable: { via: points.map((at) => ({ on: "ceiling", at })) } };
  };
}
