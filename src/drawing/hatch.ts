import type { Item, PagePoint, Stroke } from "./drawing.js";
import { line, PEN, point } from "./pen.js";

/**
 * Lines at 45 degrees over the inside of a closed outline on the page, `pitchMm` apart, cut off at its edge
 * (even-odd rule). They stand on one raster for the whole page, so that neighbouring areas hatch as one.
 */
export function hatch(corners: readonly PagePoint[], pitchMm: number, stroke: Stroke = PEN.fine): Item[] {
  const sums = corners.map(({ x, y }) => x + y);
  const step = pitchMm * Math.SQRT2;
  const first = Math.ceil(Math.min(...sums) / step);
  const last = Math.floor(Math.max(...sums) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * step).flatMap(
    (sum) =>
      stretches(corners, sum).map(([from, to]) => line(point(from, sum - from), point(to, sum - to), stroke)),
  );
}

/** Stretches in x of the line x + y = sum that lie inside. */
function stretches(corners: readonly PagePoint[], sum: number): [number, number][] {
  const crossings = corners
    .flatMap((from, index) => {
      const to = corners[(index + 1) % corners.length] ?? from;
      const a = from.x + from.y - sum;
      const b = to.x + to.y - sum;
      return a > 0 === b > 0 ? [] : [from.x + ((to.x - from.x) * a) / (a - b)];
    })
    .sort((a, b) => a - b);
  return crossings.flatMap((from, index): [number, number][] => {
    const to = crossings[index + 1];
    return index % 2 === 0 && to !== undefined ? [[from, to]] : [];
  });
}
