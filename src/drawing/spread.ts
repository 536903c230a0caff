/** A label that wants to stand at `at` along a line and takes `sizeMm` of it. */
export interface Wish {
  readonly at: number;
  readonly sizeMm: number;
}

/**
 * Places along a line for labels that must not touch: each as near its wish as the others allow, in the order of
 * the wishes, inside `from`..`to` as far as they fit (they run over the far end when they do not: ask `spreadFits`).
 * Returns the labels' middles in the order given.
 */
export function spread(
  wishes: readonly Wish[],
  range: { from: number; to: number; gapMm: number },
): number[] {
  const order = wishes
    .map((wish, index) => ({ ...wish, index }))
    .sort((a, b) => a.at - b.at || a.index - b.index);
  const clusters: Cluster[] = [];
  for (const wish of order) {
    const low = wish.at - wish.sizeMm / 2;
    let next = settled({ low, wanted: low, sizeMm: wish.sizeMm, count: 1, members: [wish] }, range);
    for (
      let last = clusters.at(-1);
      last !== undefined && touch(last, next, range.gapMm);
      last = clusters.at(-1)
    ) {
      clusters.pop();
      next = joined(last, next, range);
    }
    clusters.push(next);
  }
  const middles = new Array<number>(wishes.length).fill(0);
  for (const cluster of clusters) {
    let low = cluster.low;
    for (const member of cluster.members) {
      middles[member.index] = low + member.sizeMm / 2;
      low += member.sizeMm + range.gapMm;
    }
  }
  return middles;
}

interface Cluster {
  readonly low: number;
  readonly sizeMm: number;
  /** Mean of where its members would have its low end. */
  readonly wanted: number;
  readonly count: number;
  readonly members: readonly { readonly sizeMm: number; readonly index: number }[];
}

const touch = (first: Cluster, second: Cluster, gapMm: number): boolean =>
  first.low + first.sizeMm + gapMm > second.low;

function settled(cluster: Cluster, range: { from: number; to: number }): Cluster {
  return { ...cluster, low: Math.max(range.from, Math.min(cluster.wanted, range.to - cluster.sizeMm)) };
}

function joined(
  first: Cluster,
  second: Cluster,
  range: { from: number; to: number; gapMm: number },
): Cluster {
  const offset = first.sizeMm + range.gapMm;
  const count = first.count + second.count;
  const wanted = (first.wanted * first.count + (second.wanted - offset) * second.count) / count;
  const sizeMm = offset + second.sizeMm;
  return settled(
    { low: wanted, wanted, sizeMm, count, members: [...first.members, ...second.members] },
    range,
  );
}

/** True when labels of these sizes fit side by side in a length: the same wherever on the page that begins. */
export function spreadFits(
  wishes: readonly Wish[],
  { lengthMm, gapMm }: { lengthMm: number; gapMm: number },
): boolean {
  const needed = wishes.reduce((sum, wish) => sum + wish.sizeMm, 0) + gapMm * Math.max(0, wishes.length - 1);
  return needed <= lengthMm;
}
