/**
 * Rows that may still hold something: of those that were found to hold nothing, however many lie next to each other,
 * the next one that may is found at once.
 */
export interface RowsLeft {
  /** The row itself where it may hold something, else the next one below it that may. */
  below(row: number): number;
  /** The same above it. */
  above(row: number): number;
  leaveOut(row: number): void;
}

/** All from the first to the last; asked about none past these but the ones next to them. */
export function allRowsLeft(first: number, last: number): RowsLeft {
  /** Of each row how far it is to the next one that may hold something, as far as that is known. */
  let steps: { readonly down: Int32Array; readonly up: Int32Array } | null = null;
  const length = last - first + 3;
  return {
    below: (row) => (steps === null ? row : row - walk(steps.down, row - first + 1, -1)),
    above: (row) => (steps === null ? row : row + walk(steps.up, row - first + 1, 1)),
    leaveOut(row) {
      steps ??= { down: new Int32Array(length), up: new Int32Array(length) };
      steps.down[row - first + 1] = 1;
      steps.up[row - first + 1] = 1;
    },
  };
}

/** How far the way of steps from a row leads; each row on the way then leads there in one step. */
function walk(steps: Int32Array, from: number, way: 1 | -1): number {
  let end = from;
  for (let step = steps[end] ?? 0; step > 0; step = steps[end] ?? 0) end += way * step;
  for (let at = from; at !== end; ) {
    const step = steps[at] ?? 0;
    steps[at] = Math.abs(end - at);
    at += way * step;
  }
  return Math.abs(end - from);
}
