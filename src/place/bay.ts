import type { Mounted } from "../listen/mounted.js";
import type { Member } from "../room/room.js";
import { framingAt, type KnownFraming } from "./gaps.js";
import { fromZeroMm, repeats } from "./run.js";

export interface Bay {
  readonly number: number;
  readonly from: string;
}

/**
 * The bay that the opening's centre lies in, as a person counts them from the wall that the framing is measured
 * from: 1 is before the first member, or after it where that one stands against the wall. Null where the framing is
 * unknown.
 */
export function bayOf(mounted: Mounted): Bay | null {
  const framing = framingAt(mounted);
  if (framing === null) return null;
  const lines = linesFound.get(framing) ?? linesOf(framing);
  linesFound.set(framing, lines);
  const passed = countBelow(lines.fromZeroMm, fromZeroMm(framing.layout, mounted.centre));
  return { number: Math.max(1, passed + (lines.isAgainstWall ? 0 : 1)), from: framing.layout.from };
}

/** Members as they are counted: how far from the wall each number comes first, in ascending order. */
interface Lines {
  readonly fromZeroMm: readonly number[];
  readonly isAgainstWall: boolean;
}

/** Of each framing once, however many openings ask. */
const linesFound = new WeakMap<KnownFraming, Lines>();

/** In an L a joist's line may come twice; it is counted once. */
function linesOf(framing: KnownFraming): Lines {
  const members = framing.members.filter(repeats);
  const first = new Map<number, number>();
  for (const { number, from } of members) {
    const mm = fromZeroMm(framing.layout, from);
    first.set(number, Math.min(mm, first.get(number) ?? mm));
  }
  return {
    fromZeroMm: [...first.values()].sort((a, b) => a - b),
    isAgainstWall: members.some((member) => standsAgainstWall(member, framing)),
  };
}

/** How many of ascending figures are less than one. */
function countBelow(ascending: readonly number[], figure: number): number {
  let [least, most] = [0, ascending.length];
  while (least < most) {
    const middle = (least + most) >> 1;
    if ((ascending[middle] ?? figure) < figure) least = middle + 1;
    else most = middle;
  }
  return least;
}

/** Nearer to the wall than its own width, a member leaves no bay that anybody would count. Our own choice. */
const standsAgainstWall = ({ from, widthMm }: Member, framing: KnownFraming): boolean =>
  fromZeroMm(framing.layout, from) - widthMm / 2 < widthMm;
