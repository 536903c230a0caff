import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hatch } from "../../src/drawing/hatch.js";
import { point } from "../../src/drawing/pen.js";

/** Area of an outline by its corners (the shoelace formula). */
const area = (corners: readonly { x: number; y: number }[]): number =>
  Math.abs(
    corners.reduce((sum, from, index) => {
      const to = corners[(index + 1) % corners.length] ?? from;
      return sum + from.x * to.y - to.x * from.y;
    }, 0),
  ) / 2;

const lengths = (items: ReturnType<typeof hatch>): number =>
  items.reduce(
    (sum, item) =>
      sum + (item.kind === "line" ? Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y) : 0),
    0,
  );

const SQUARE = [point(10, 10), point(60, 10), point(60, 40), point(10, 40)];
const NOTCHED = [point(0, 0), point(60, 0), point(60, 20), point(20, 20), point(20, 50), point(0, 50)];

describe("hatching", () => {
  it.each([
    ["a rectangle", SQUARE],
    ["an L", NOTCHED],
  ])("covers %s: lines times their distance are its area", (_, corners) => {
    expect(lengths(hatch(corners, 0.05)) * 0.05).toBeCloseTo(area(corners), 0);
  });

  it("stays inside and keeps its angle and its distance", () => {
    const sums = hatch(NOTCHED, 4).map((item) => {
      if (item.kind !== "line") throw new Error("not a line");
      const { from, to } = item;
      expect(from.x + from.y).toBeCloseTo(to.x + to.y, 9);
      const middle = point((from.x + to.x) / 2, (from.y + to.y) / 2);
      expect(middle.x < 20 || middle.y < 20).toBe(true);
      return from.x + from.y;
    });
    const steps = [...new Set(sums.map((sum) => Math.round(sum / (4 * Math.SQRT2))))];
    expect(steps.length).toBeGreaterThan(5);
    for (const sum of sums) {
      const step = sum / (4 * Math.SQRT2);
      expect(step).toBeCloseTo(Math.round(step), 9);
    }
  });

  it("gives nothing for an outline without area, and figures for any other", () => {
    expect(hatch([], 4)).toEqual([]);
    expect(hatch([point(3, 3), point(3, 3)], 4)).toEqual([]);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 })), {
          minLength: 3,
          maxLength: 9,
        }),
        (corners) => {
          const items = hatch(
            corners.map(([x, y]) => point(x, y)),
            5,
          );
          for (const item of items) {
            if (item.kind !== "line") throw new Error("not a line");
            expect(Number.isFinite(item.from.x + item.from.y + item.to.x + item.to.y)).toBe(true);
          }
        },
      ),
    );
  });
});
