/** Something with a figure to be taken in the order of. */
export interface Queued {
  readonly costDeg: number;
}

/** Takes the least first; of equal ones the one that came first, so that every run goes the same way. */
export interface Queue<Item extends Queued> {
  add(item: Item): void;
  /** The one that is to be taken next. */
  next(): Item | undefined;
  take(): Item | undefined;
}

interface Place<Item> {
  readonly item: Item;
  readonly turn: number;
}

/** A binary heap. */
export function queueOf<Item extends Queued>(): Queue<Item> {
  const heap: Place<Item>[] = [];
  let turns = 0;
  return {
    add(item) {
      heap.push({ item, turn: turns });
      turns += 1;
      rise(heap, heap.length - 1);
    },
    next: () => heap[0]?.item,
    take() {
      const [first] = heap;
      const last = heap.pop();
      if (first === undefined || last === undefined) return undefined;
      if (heap.length > 0) {
        heap[0] = last;
        sink(heap, 0);
      }
      return first.item;
    },
  };
}

function comesBefore<Item extends Queued>(a: Place<Item> | undefined, b: Place<Item> | undefined): boolean {
  if (a === undefined || b === undefined) return b === undefined && a !== undefined;
  return a.item.costDeg < b.item.costDeg || (a.item.costDeg === b.item.costDeg && a.turn < b.turn);
}

function rise<Item extends Queued>(heap: Place<Item>[], from: number): void {
  let at = from;
  while (at > 0) {
    const above = (at - 1) >> 1;
    if (!comesBefore(heap[at], heap[above])) return;
    exchange(heap, at, above);
    at = above;
  }
}

function sink<Item extends Queued>(heap: Place<Item>[], from: number): void {
  let at = from;
  for (;;) {
    const [left, right] = [2 * at + 1, 2 * at + 2];
    const least = comesBefore(heap[right], heap[left]) ? right : left;
    if (!comesBefore(heap[least], heap[at])) return;
    exchange(heap, at, least);
    at = least;
  }
}

function exchange<Item>(heap: Item[], a: number, b: number): void {
  const [first, second] = [heap[a], heap[b]];
  if (first === undefined || second === undefined) return;
  heap[a] = second;
  heap[b] = first;
}
