import type { Gap } from "../check/gap.js";
import { times } from "../geometry/surface-point.js";
import type { Opening } from "../job.js";
import { edgeToward } from "../listen/edges.js";
import type { WrittenGap } from "../words/details.js";

/** What is left to a member, and the wall on whose side it stands; null where that is not known. */
interface SideGap {
  readonly gap: Gap;
  readonly toward: string | null;
}

/** The gaps on both sides across the members' run, and in front the one to what is nearest of all where that is neither. */
function gapsBeside(opening: Opening, nearest: Gap): SideGap[] {
  const { sides } = opening;
  const ways = waysOf(opening);
  const both = (["before", "after"] as const).flatMap((side): SideGap[] => {
    const gap = sides[side];
    return gap === null ? [] : [{ gap, toward: ways[side] }];
  });
  return both.some(({ gap }) => isSame(gap, nearest)) ? both : [{ gap: nearest, toward: null }, ...both];
}

const isSame = (one: Gap, other: Gap): boolean =>
  one.member.kind === other.member.kind && one.member.number === other.member.number;

/** Walls on both sides across the members' run: before is the one that the framing is measured from. */
function waysOf(opening: Opening): { before: string | null; after: string | null } {
  const { surface } = opening;
  const { framing } = surface;
  if (framing.kind === "unknown") return { before: null, after: null };
  const { away } = framing.layout.zero;
  return { before: edgeToward(opening, times(away, -1)), after: edgeToward(opening, away) };
}

/** The gaps beside an opening as they are said, their lengths written by `figure`; null where the framing is not known. */
export function writtenGaps(opening: Opening, figure: (mm: number) => string): WrittenGap[] | null {
  if (opening.gap === null) return null;
  return gapsBeside(opening, opening.gap).map(({ gap, toward }) => ({
    member: gap.member,
    figure: figure(Math.abs(gap.mm)),
    isCut: gap.mm < 0,
    toward,
  }));
}
