/** A spool bought, and which of the lengths come off it. */
export interface Packed {
  readonly spoolMm: number;
  /** Indices into the lengths. */
  readonly lengths: readonly number[];
}

export interface Packing {
  readonly spools: readonly Packed[];
  /** True where nothing that is bought could be less. */
  readonly exact: boolean;
}

/** Up to so many lengths every grouping is looked at; it is enough for the rooms that are usual. */
const ALL_GROUPINGS_UP_TO = 12;

/**
 * Spools with the least length bought, and of those the fewest spools. No length may be longer than the longest
 * spool. More lengths than can be tried out are put in longest first, each where it leaves least; that is exact too
 * where it buys no more than the sum of the lengths demands.
 */
export function packed(lengthsMm: readonly number[], spoolsMm: readonly number[]): Packing {
  const stock = [...new Set(spoolsMm)].sort((a, b) => a - b);
  if (lengthsMm.length <= ALL_GROUPINGS_UP_TO) return { spools: bestGrouping(lengthsMm, stock), exact: true };
  const spools = longestFirst(lengthsMm, stock);
  const boughtMm = spools.reduce((sum, { spoolMm }) => sum + spoolMm, 0);
  return { spools, exact: stock.length === 1 && boughtMm <= leastBought(lengthsMm, stock) + TOLERANCE_MM };
}

const TOLERANCE_MM = 1e-6;

const sumOf = (lengths: readonly number[]): number => lengths.reduce((sum, length) => sum + length, 0);

function leastBought(lengthsMm: readonly number[], [spoolMm = 0]: readonly number[]): number {
  return Math.ceil((sumOf(lengthsMm) - TOLERANCE_MM) / spoolMm) * spoolMm;
}

interface Best {
  readonly boughtMm: number;
  readonly spools: number;
  /** The group that is taken off first, as a set of bits, and the spool that it comes off. */
  readonly group: number;
  readonly spoolMm: number;
}

const NOTHING: Best = { boughtMm: 0, spools: 0, group: 0, spoolMm: 0 };

/**
 * Every set of lengths, as the bits of a number, by the best way to buy for it: the spool that serves its first
 * length serves some of the others too, and what is left is a smaller set that is already known.
 */
function bestGrouping(lengthsMm: readonly number[], stock: readonly number[]): readonly Packed[] {
  const sets = 2 ** lengthsMm.length;
  const spoolFor = spoolsBySet(lengthsMm, stock);
  const best: Best[] = [NOTHING];
  for (let set = 1; set < sets; set += 1) best.push(bestFor(set, best, spoolFor));
  return groupsOf(best, sets - 1);
}

/** The shortest spool that a set comes off whole; infinite where none is long enough. */
function spoolsBySet(lengthsMm: readonly number[], stock: readonly number[]): readonly number[] {
  const sums = [0];
  for (const length of lengthsMm) sums.push(...sums.map((sum) => sum + length));
  return sums.map((sum) => stock.find((spool) => spool >= sum - TOLERANCE_MM) ?? Number.POSITIVE_INFINITY);
}

function bestFor(set: number, best: readonly Best[], spoolFor: readonly number[]): Best {
  const first = set & -set;
  const rest = set ^ first;
  let found: Best = { ...NOTHING, boughtMm: Number.POSITIVE_INFINITY };
  for (let others = rest; ; others = (others - 1) & rest) {
    const group = first | others;
    const spoolMm = spoolFor[group] ?? Number.POSITIVE_INFINITY;
    const left = best[set ^ group] ?? NOTHING;
    // Most buy more, and are not worth an object.
    if (spoolMm + left.boughtMm <= found.boughtMm + TOLERANCE_MM) {
      const next = { boughtMm: spoolMm + left.boughtMm, spools: 1 + left.spools, group, spoolMm };
      if (isBetter(next, found)) found = next;
    }
    if (others === 0) return found;
  }
}

const isBetter = (one: Best, other: Best): boolean =>
  one.boughtMm < other.boughtMm - TOLERANCE_MM ||
  (one.boughtMm <= other.boughtMm + TOLERANCE_MM && one.spools < other.spools);

function groupsOf(best: readonly Best[], all: number): readonly Packed[] {
  const groups: Packed[] = [];
  for (let set = all; set > 0; ) {
    const { group, spoolMm } = best[set] ?? NOTHING;
    groups.push({ spoolMm, lengths: bitsOf(group) });
    set ^= group;
  }
  return groups;
}

const bitsOf = (set: number): readonly number[] =>
  Array.from({ length: 32 }, (_, bit) => bit).filter((bit) => (set & (1 << bit)) !== 0);

function longestFirst(lengthsMm: readonly number[], stock: readonly number[]): readonly Packed[] {
  const spoolMm = stock.at(-1) ?? 0;
  const spools: { readonly lengths: number[]; leftMm: number }[] = [];
  const order = lengthsMm.map((length, index) => ({ length, index })).sort((a, b) => b.length - a.length);
  for (const { length, index } of order) {
    const tightest = spools
      .filter(({ leftMm }) => leftMm >= length - TOLERANCE_MM)
      .sort((a, b) => a.leftMm - b.leftMm)[0];
    if (tightest === undefined) spools.push({ lengths: [index], leftMm: spoolMm - length });
    else {
      tightest.lengths.push(index);
      tightest.leftMm -= length;
    }
  }
  // Each is then bought in the shortest spool that it comes off.
  return spools.map(({ lengths, leftMm }) => ({
    spoolMm: stock.find((spool) => spool >= spoolMm - leftMm - TOLERANCE_MM) ?? spoolMm,
    lengths,
  }));
}
