/* Places in ascending lists of figures, by halving. */

/** How many of an ascending list's figures are less than one: where it would stand before its equals. */
export function countBelow(values: ArrayLike<number>, value: number): number {
  let [low, high] = [0, values.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How many of an ascending list's figures are no more than one: where it would stand after its equals. */
export function countUpTo(values: ArrayLike<number>, value: number): number {
  let [low, high] = [0, values.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
