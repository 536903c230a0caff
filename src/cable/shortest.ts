/*
 * Shortest way through a graph whose nodes are whole numbers from 0 (A*: Dijkstra's algorithm that looks first where
 * what is still to go is least), with a binary heap.
 */

export interface Link {
  readonly to: number;
  readonly cost: number;
}

interface Reached {
  readonly node: number;
  readonly cost: number;
  /** The cost with the least that is still to go. */
  readonly total: number;
}

export interface Graph {
  readonly count: number;
  /** Costs are 0 or more. */
  linksOf(node: number): readonly Link[];
  /** The least that it can cost from a node to the end; never more than a link's cost less after that link. */
  leastToGo(node: number): number;
}

/** Nodes from start to end, both included; null where no way leads there. */
export function shortestWay(
  { count, linksOf, leastToGo }: Graph,
  [start, end]: readonly [number, number],
): readonly number[] | null {
  const costs = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(count).fill(-1);
  const heap: Reached[] = [];
  costs[start] = 0;
  push(heap, { node: start, cost: 0, total: leastToGo(start) });
  for (let next = pop(heap); next !== undefined && next.node !== end; next = pop(heap)) {
    const { node, cost } = next;
    if (cost > (costs[node] ?? 0)) continue;
    for (const link of linksOf(node)) {
      const reached = cost + link.cost;
      if (reached >= (costs[link.to] ?? 0)) continue;
      costs[link.to] = reached;
      before[link.to] = node;
      push(heap, { node: link.to, cost: reached, total: reached + leastToGo(link.to) });
    }
  }
  return costs[end] === Number.POSITIVE_INFINITY ? null : walkedBack(before, start, end);
}

function walkedBack(before: Int32Array, start: number, end: number): readonly number[] {
  const way = [end];
  for (let node = end; node !== start; ) {
    node = before[node] ?? start;
    way.push(node);
  }
  return way.reverse();
}

/** The heap's first is the least; each is no more than the two after it, at twice its place and one and two more. */
function push(heap: Reached[], reached: Reached): void {
  let index = heap.length;
  while (index > 0) {
    const parent = (index - 1) >> 1;
    const above = heap[parent];
    if (above === undefined || above.total <= reached.total) break;
    heap[index] = above;
    index = parent;
  }
  heap[index] = reached;
}

function pop(heap: Reached[]): Reached | undefined {
  const least = heap[0];
  const last = heap.pop();
  if (least === undefined || last === undefined || heap.length === 0) return least;
  let index = 0;
  for (;;) {
    const child = lesserChild(heap, index);
    const below = heap[child];
    if (below === undefined || below.total >= last.total) break;
    heap[index] = below;
    index = child;
  }
  heap[index] = last;
  return least;
}

/** Of the two after a place the first, where neither is less. */
function lesserChild(heap: readonly Reached[], index: number): number {
  const [left, right] = [heap[2 * index + 1], heap[2 * index + 2]];
  return left !== undefined && right !== undefined && right.total < left.total
    ? 2 * index + 2
    : 2 * index + 1;
}
