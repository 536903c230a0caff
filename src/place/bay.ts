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
  const atMm = fromZeroMm(framing.layout, mounted.centre);
  const members = framing.members.filter(repeats);
  const passed = numbersOf(members.filter(({ from }) => fromZeroMm(framing.layout, from) < atMm));
  const against = members.some((member) => standsAgainstWall(member, framing));
  return { number: Math.max(1, passed.size + (against ? 0 : 1)), from: framing.layout.from };
}

/** In an L a joist's line may come twice; it is counted once. */
const numbersOf = (members: readonly Member[]): ReadonlySet<number> =>
  new Set(members.map(({ number }) => number));

/** Nearer to the wall than its own width, a member leaves no bay that anybody would count. Our own choice. */
const standsAgainstWall = ({ from, widthMm }: Member, framing: KnownFraming): boolean =>
  fromZeroMm(framing.layout, from) - widthMm / 2 < widthMm;
