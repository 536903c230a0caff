import { type Apart, apartIn, type Field } from "./field.js";
import type { Hull } from "./marks.js";
import { isSingle } from "./marks.js";
import { type Queued, queueOf } from "./queue.js";
import { areTooClose, branchesOf, comeTooClose, type Found, lookAt, type Node, rootOf } from "./search.js";

/*
 * Two decisions whose openings come too close to each other where each is best: the same branch and bound over both at
 * once. What they cost is the sum of both, so that the one that loses less gives way.
 */

export type FoundBoth = readonly [Found, Found];

interface Both extends Queued {
  readonly first: Node;
  readonly second: Node;
}

interface Fields {
  readonly first: Field;
  readonly second: Field;
  /** Between one's loudspeakers and the other's; those of the second count on from the first's. */
  readonly apart: readonly Apart[];
  readonly branches: (side: "first" | "second", node: Node) => readonly Node[];
}

export const costOfBoth = ([first, second]: FoundBoth): number => first.costDeg + second.costDeg;

/** Sums nearer to each other than this are not told apart: a millimetre is more, from any seat. */
export const ENOUGH_DEG = 0.02;

/** How many boxes of two may yet be looked at for a room. */
export interface Allowance {
  boxes: number;
}

/**
 * What searches of two may take for one room: where hundreds of narrow places lie beside each other they would go on for
 * minutes. None of the examples needs any. Past it, what was found one after the other is kept. It is a count and no time,
 * so that a file has one answer everywhere.
 */
export const allowance = (): Allowance => ({ boxes: 40_000 });

/**
 * The places of both that cost least together, if that is less than `belowDeg` by enough to matter, as far as the
 * allowance goes; else null.
 */
export function bestOfBoth(
  first: Field,
  second: Field,
  { belowDeg, left }: { readonly belowDeg: number; readonly left: Allowance },
): FoundBoth | null {
  const fields = fieldsOf(first, second);
  const queue = queueOf<Both>();
  const [a, b] = [rootOf(first), rootOf(second)];
  if (a !== null && b !== null) queue.add(bothOf(a, b));
  let best: FoundBoth | null = null;
  let limitDeg = belowDeg - ENOUGH_DEG;
  for (let both = queue.take(); both !== undefined; both = queue.take()) {
    left.boxes -= 1;
    if (both.costDeg >= limitDeg || left.boxes < 0) return best;
    const tried = tryAt(fields, both);
    if (tried !== null && costOfBoth(tried) < limitDeg) {
      best = tried;
      limitDeg = costOfBoth(tried) - ENOUGH_DEG;
    }
    for (const branch of bothBranches(fields, both)) if (branch.costDeg < limitDeg) queue.add(branch);
  }
  return best;
}

const bothOf = (first: Node, second: Node): Both => ({
  first,
  second,
  costDeg: first.costDeg + second.costDeg,
});

function fieldsOf(first: Field, second: Field): Fields {
  const askings = [...first.spots, ...second.spots].map(({ asking }) => asking);
  const size = first.spots.length;
  const known = new Map<Node, readonly Node[]>();
  return {
    first,
    second,
    apart: apartIn(askings).filter((apart) => apart.first < size && apart.second >= size),
    branches: (side, node) => {
      const found = known.get(node) ?? branchesOf(side === "first" ? first : second, node);
      known.set(node, found);
      return found;
    },
  };
}

/** The larger of the two is halved. */
function bothBranches(fields: Fields, { first, second }: Both): readonly Both[] {
  const pairs = isLarger(first, second)
    ? fields.branches("first", first).map((half) => bothOf(half, second))
    : isSingle(second.box)
      ? []
      : fields.branches("second", second).map((half) => bothOf(first, half));
  return pairs.filter((both) => !meet(fields, both.first.hulls, both.second.hulls));
}

const radiusMm = ({ hulls }: Node): number => Math.max(...hulls.map((hull) => hull.radiusMm));

const isLarger = (first: Node, second: Node): boolean =>
  !isSingle(first.box) && (isSingle(second.box) || radiusMm(first) >= radiusMm(second));

const meet = ({ apart }: Fields, first: readonly Hull[], second: readonly Hull[]): boolean =>
  apart.some((one) => areTooClose(one, [...first, ...second]));

/** What the two are at the middle marks of their boxes; null where that is not clear. */
function tryAt({ first, second, apart }: Fields, both: Both): FoundBoth | null {
  const a = lookAt(first, middleOf(both.first));
  const b = a && lookAt(second, middleOf(both.second));
  if (a === null || b === null) return null;
  const centres = [...a.centres, ...b.centres];
  return apart.some((one) => comeTooClose(one, centres)) ? null : [a, b];
}

function middleOf({ box: { least, most } }: Node) {
  const middle = [Math.floor((least[0] + most[0]) / 2), Math.floor((least[1] + most[1]) / 2)] as const;
  return { least: middle, most: middle };
}
