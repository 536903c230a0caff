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

const costAt = (heap: readonly Reached[], index: number): number =>
  heap[index]?.total ?? Number.POSITIVE_INFINITY;

function exchange(heap: Reached[], one: number, other: number): void {
  const [a, b] = [heap[one], heap[other]];
  if (a === undefined || b === undefined) return;
  heap[one] = b;
  heap[other] = a;
}

function push(heap: Reached[], reached: Reached): void {
  heap.push(reached);
  let index = heap.length - 1;
  while (index > 0) {
    const parent = (index - 1) >> 1;
    if (costAt(heap, parent) <= costAt(heap, index)) return;
    exchange(heap, parent, index);
    index = parent;
  }
}

function pop(heap: Reached[]): Reached | undefined {
  exchange(heap, 0, heap.length - 1);
  const least = heap.pop();
  let index = 0;
  for (;;) {
    const [left, right] = [2 * index + 1, 2 * index + 2];
    const child = costAt(heap, right) < costAt(heap, left) ? right : left;
    if (costAt(heap, child) >= costAt(heap, index)) return least;
    exchange(heap, index, child);
    index = child;
  }
}
