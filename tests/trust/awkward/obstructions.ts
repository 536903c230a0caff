import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import { cellOf, leastFirst, listOf, middleOf, mm, type Point, type Rectangle, scattered } from "./choice.js";
import type { Plan } from "./plan.js";

/*
 * As many obstructions as there may be, in patterns that make the most of edges, corners and gaps.
 */

export interface ObstructionsChoice {
  readonly count: number;
  readonly pattern: keyof typeof PATTERNS;
  readonly keepMm: number;
  /** Starting at five depths behind the face of the framing. */
  readonly behind: boolean;
}

type Pattern = (core: Rectangle, index: number, count: number) => Rectangle;

const boxAt = ({ leftMm, frontMm }: Point, widthMm: number, lengthMm: number): Rectangle => ({
  ...{ leftMm, frontMm, widthMm, lengthMm },
});

const tiles =
  (gapMm: number): Pattern =>
  (core, index, count) => {
    const cell = cellOf(core, index, count);
    const less = Math.min(gapMm, cell.widthMm / 2, cell.lengthMm / 2);
    return boxAt(cell, cell.widthMm - less, cell.lengthMm - less);
  };

/** A rectangle by its shares of the room's. */
const share = (core: Rectangle, left: number, front: number, width: number, length: number): Rectangle => ({
  leftMm: core.leftMm + left * core.widthMm,
  frontMm: core.frontMm + front * core.lengthMm,
  widthMm: width * core.widthMm,
  lengthMm: length * core.lengthMm,
});

const sized = ({ leftMm, frontMm }: Point, sideMm: number): Rectangle =>
  boxAt({ leftMm: leftMm - sideMm / 2, frontMm: frontMm - sideMm / 2 }, sideMm, sideMm);

const PATTERNS = {
  "small ones no two in line": (core, index) =>
    boxAt(scattered(core, index), 150 + (index % 97), 150 + (index % 89)),
  "tiles 10 mm apart": tiles(10),
  "tiles 40 mm apart": tiles(40),
  "tiles 300 mm apart": tiles(300),
  "overlapping boxes": (core, index) => {
    const at = scattered({ ...core, widthMm: 0.8 * core.widthMm, lengthMm: 0.8 * core.lengthMm }, index);
    const [across, along] = [0.06 + 0.02 * (index % 7), 0.06 + 0.029 * (index % 5)];
    return boxAt(at, across * core.widthMm, along * core.lengthMm);
  },
  "teeth from two sides": (core, index, count) =>
    share(core, index / count, index % 2 === 0 ? 0.1 : 0, 0.8 / count, 0.9),
  "a heap in the middle": (core, index) => {
    const { leftMm, frontMm } = middleOf(core);
    const across = (index * 719) % Math.min(2500, core.widthMm / 4);
    const along = (index * 877) % Math.min(2300, core.lengthMm / 4);
    return boxAt({ leftMm: leftMm + across, frontMm: frontMm + along }, 20, 20);
  },
  "a line from wall to wall": (core, index, count) => {
    const { leftMm, frontMm, widthMm } = share(core, index / count, 0.5, 1.5 / count, 0);
    return boxAt({ leftMm, frontMm: frontMm + (index % 50) }, widthMm, 300);
  },
  "a diagonal": (core, index, count) => share(core, index / count, index / count, 3 / count, 3 / count),
  "round ones side by side": (core, index, count) => {
    const cell = cellOf(core, index, count);
    const least = Math.min(cell.widthMm, cell.lengthMm);
    return sized(middleOf(cell), least * (0.7 + 0.006 * ((index * 37) % 100)));
  },
  "rings round the middle": (core, index, count) =>
    sized(middleOf(core), (Math.min(core.widthMm, core.lengthMm) * (index + 1)) / (count + 2)),
} as const satisfies Record<string, Pattern>;

const ROUND: ReadonlySet<string> = new Set(["round ones side by side", "rings round the middle"]);

export const obstructionsChoice: fc.Arbitrary<ObstructionsChoice> = fc.record({
  count: leastFirst(0, 10, 50, 250, 250, 250),
  pattern: leastFirst("small ones no two in line", ...(Object.keys(PATTERNS) as (keyof typeof PATTERNS)[])),
  keepMm: leastFirst(0, 50, 400),
  behind: leastFirst(false, false, true),
});

export function obstructionsOf(choice: ObstructionsChoice, plan: Plan): readonly Parts[] {
  const { count, pattern, keepMm, behind } = choice;
  return listOf(count, (index) => {
    const place = within(plan.core, PATTERNS[pattern](plan.core, index, count));
    const isRound = ROUND.has(pattern) || !plan.isSquare;
    return {
      ...{ name: `obstruction ${index}`, on: "ceiling" },
      ...(isRound ? roundAt(plan, place) : cornersAt(plan, place)),
      ...(keepMm > 0 ? { keep: mm(keepMm) } : {}),
      ...(behind ? { behind: mm(30 + 40 * (index % 5)) } : {}),
    };
  });
}

/** What of it lies in the room. */
function within(core: Rectangle, { leftMm, frontMm, widthMm, lengthMm }: Rectangle): Rectangle {
  return {
    ...{ leftMm, frontMm },
    widthMm: Math.min(widthMm, core.leftMm + core.widthMm - leftMm),
    lengthMm: Math.min(lengthMm, core.frontMm + core.lengthMm - frontMm),
  };
}

const cornersAt = ({ tapes }: Plan, { leftMm, frontMm, widthMm, lengthMm }: Rectangle): Parts => ({
  corner: tapes({ leftMm, frontMm }),
  opposite: tapes({ leftMm: leftMm + widthMm, frontMm: frontMm + lengthMm }),
});

const roundAt = ({ tapes }: Plan, place: Rectangle): Parts => ({
  at: tapes(middleOf(place)),
  round: mm(Math.max(1, Math.min(place.widthMm, place.lengthMm))),
});
