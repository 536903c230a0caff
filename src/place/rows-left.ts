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

export function allRowsLeft(): RowsLeft {
  const [down, up] = [new Map<number, number>(), new Map<number, number>()];
  return {
    below: (row) => endOf(down, row),
    above: (row) => endOf(up, row),
    leaveOut(row) {
      down.set(row, row - 1);
      up.set(row, row + 1);
    },
  };
}

/** Where the way of steps from a row ends; each row on the way then leads there in one step. */
function endOf(next: Map<number, number>, row: number): number {
  let end = row;
  for (let step = next.get(end); step !== undefined; step = next.get(end)) end = step;
  for (let at = row; at !== end; ) {
    const step = next.get(at) ?? end;
    next.set(at, end);
    at = step;
  }
  return end;
}
