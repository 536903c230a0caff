import fc from "fast-check";

/** One of these, each as likely; what fails shrinks toward the first, so the least comes first. */
export const leastFirst = <Value>(first: Value, ...more: readonly Value[]): fc.Arbitrary<Value> =>
  fc.noBias(fc.nat({ max: more.length })).map((index) => [first, ...more][index] ?? first);

/** To a tenth of a millimetre, as a laser tells. */
export const mm = (value: number): string => `${Math.round(value * 10) / 10} mm`;

/** So much at least and no finer than it can be written. */
export const atLeast = (...values: readonly number[]): number => Math.ceil(Math.max(...values) * 10) / 10;

export const listOf = <Item>(count: number, item: (index: number) => Item): readonly Item[] =>
  Array.from({ length: count }, (_, index) => item(index));

/** Seen from above, from the room's leftmost and frontmost point. */
export interface Point {
  readonly leftMm: number;
  readonly frontMm: number;
}

export interface Rectangle extends Point {
  readonly widthMm: number;
  readonly lengthMm: number;
}

export const middleOf = ({ leftMm, frontMm, widthMm, lengthMm }: Rectangle): Point => ({
  leftMm: leftMm + widthMm / 2,
  frontMm: frontMm + lengthMm / 2,
});

/** A part of it round the same middle, by its shares of width and length. */
export function centred(rectangle: Rectangle, share: number): Rectangle {
  const { leftMm, frontMm, widthMm, lengthMm } = rectangle;
  return {
    leftMm: leftMm + ((1 - share) / 2) * widthMm,
    frontMm: frontMm + ((1 - share) / 2) * lengthMm,
    widthMm: share * widthMm,
    lengthMm: share * lengthMm,
  };
}

/** One of so many equal parts in rows and columns. */
export function cellOf(
  { leftMm, frontMm, widthMm, lengthMm }: Rectangle,
  index: number,
  count: number,
): Rectangle {
  const side = Math.ceil(Math.sqrt(count));
  const [width, length] = [widthMm / side, lengthMm / side];
  return {
    leftMm: leftMm + (index % side) * width,
    frontMm: frontMm + Math.floor(index / side) * length,
    widthMm: width,
    lengthMm: length,
  };
}

/** Places that follow no grid: primes, so that no two lie on one line. */
export const scattered = ({ leftMm, frontMm, widthMm, lengthMm }: Rectangle, index: number): Point => ({
  leftMm: leftMm + ((index * 7919) % widthMm),
  frontMm: frontMm + ((index * 27_457) % lengthMm),
});
