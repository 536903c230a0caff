import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimension } from "../../src/drawing/dimension.js";
import type { Window } from "../../src/drawing/drawing.js";
import { label } from "../../src/drawing/label.js";
import {
  boxAbout,
  inTurn,
  type LabelWish,
  leader,
  middlesAround,
  middlesOver,
  middlesWithin,
  placeLabels,
} from "../../src/drawing/label-places.js";
import { dot, point } from "../../src/drawing/pen.js";
import { textBox } from "../../src/drawing/text.js";
import { liesIn } from "../../src/drawing/touches.js";

const BOUNDS: Window = { x: 0, y: 0, widthMm: 100, heightMm: 80 };

const box = fc.record({
  x: fc.double({ min: 0, max: 95, noNaN: true }),
  y: fc.double({ min: 0, max: 75, noNaN: true }),
  widthMm: fc.double({ min: 0.5, max: 20, noNaN: true }),
  heightMm: fc.double({ min: 0.5, max: 20, noNaN: true }),
});

const meet = (a: Window, b: Window): boolean =>
  a.x < b.x + b.widthMm && b.x < a.x + a.widthMm && a.y < b.y + b.heightMm && b.y < a.y + a.heightMm;

/** A label that draws a dot at its middle, so that the test sees where it went. */
function wish(at: Window, size: { widthMm: number; heightMm: number }): LabelWish {
  const near = { ...size, draw: (middle: { x: number; y: number }) => [dot(middle, 1)] };
  const centre = point(at.x + at.widthMm / 2, at.y + at.heightMm / 2);
  return {
    ...near,
    middles: middlesAround(at, size, [1, 4]),
    otherwise: () => ({ ...near, middles: middlesOver(BOUNDS, centre, 3) }),
  };
}

describe("places of labels", () => {
  it("lie inside the bounds, clear of what is taken and of each other", () => {
    fc.assert(
      fc.property(
        fc.array(box, { maxLength: 12 }),
        fc.record({
          widthMm: fc.double({ min: 2, max: 30, noNaN: true }),
          heightMm: fc.double({ min: 2, max: 15, noNaN: true }),
        }),
        (taken, size) => {
          const placed = placeLabels(
            taken.map((at) => wish(at, size)),
            { taken, bounds: BOUNDS },
          ).flatMap((items) => items ?? []);
          const boxes = placed.map((item) =>
            boxAbout(item.kind === "circle" ? item.centre : point(0, 0), size),
          );
          boxes.forEach((each, index) => {
            expect(each.x).toBeGreaterThanOrEqual(0);
            expect(each.y).toBeGreaterThanOrEqual(0);
            expect(each.x + each.widthMm).toBeLessThanOrEqual(100);
            expect(each.y + each.heightMm).toBeLessThanOrEqual(80);
            expect([...taken, ...boxes.slice(index + 1)].filter((other) => meet(each, other))).toEqual([]);
          });
        },
      ),
    );
  });

  it("are left out and said so where nothing is free, rather than printed over something", () => {
    const size = { widthMm: 90, heightMm: 70 };
    const at = { x: 45, y: 35, widthMm: 10, heightMm: 10 };
    expect(placeLabels([wish(at, size)], { taken: [at], bounds: BOUNDS })).toEqual([null]);
  });

  it("go to those who ask first", () => {
    const free: Window = { x: 0, y: 0, widthMm: 20, heightMm: 10 };
    const size = { widthMm: 18, heightMm: 8 };
    const one = {
      ...size,
      middles: [point(10, 5)],
      draw: (middle: { x: number; y: number }) => [dot(middle, 1)],
    };
    const [first, second] = placeLabels([one, one], { taken: [], bounds: free });
    expect(first).not.toBeNull();
    expect(second).toBeNull();
  });

  it("can be kept to the inside of a box", () => {
    const size = { widthMm: 10, heightMm: 10 };
    expect(middlesWithin([point(2, 50), point(50, 50)], size, BOUNDS)).toEqual([point(50, 50)]);
  });

  it("are tried in turn, each form where the one before it has no place", () => {
    const form = (widthMm: number): LabelWish => ({
      ...{ widthMm, heightMm: 5, middles: [point(50, 40)] },
      draw: () => [dot(point(0, 0), widthMm)],
    });
    const place = (...widths: readonly number[]) => {
      const [first = 0, ...others] = widths;
      return placeLabels([inTurn(form(first), ...others.map((width) => () => form(width)))], {
        taken: [],
        bounds: BOUNDS,
      })[0];
    };
    expect(place(120, 110, 30, 20)).toMatchObject([{ radiusMm: 30 }]);
    expect(place(90, 30)).toMatchObject([{ radiusMm: 90 }]);
    expect(place(120, 110)).toBeNull();
  });

  it("are joined by a line to what they are about once they stand apart", () => {
    const opening = { x: 10, y: 10, widthMm: 5, heightMm: 5 };
    expect(leader(opening, { x: 16, y: 10, widthMm: 20, heightMm: 5 })).toEqual([]);
    const [line] = leader(opening, { x: 40, y: 10, widthMm: 20, heightMm: 5 });
    expect(line).toMatchObject({ kind: "line", from: { x: 15 }, to: { x: 40 } });
  });
});

describe("a direct dimension", () => {
  it("has its ends exactly where they are measured, and its figure on the line", () => {
    const { items, figure } = dimension(point(10, 20), point(60, 20), {
      words: "914 mm",
      capMm: 2.5,
      face: "bold",
    });
    expect(items[0]).toMatchObject({ kind: "line", from: point(10, 20), to: point(60, 20) });
    const tips = items.slice(1).map((item) => (item.kind === "path" ? item.steps[0] : null));
    expect(tips).toEqual([
      { to: "move", at: point(10, 20) },
      { to: "move", at: point(60, 20) },
    ]);
    for (const middle of figure.middles) expect(middle.y).toBe(20);
    expect(figure.middles[0]).toEqual(point(35, 20));
  });

  it("is no line to nowhere where both ends are one point", () => {
    const { items } = dimension(point(5, 5), point(5, 5), { words: "0 mm", capMm: 2.5, face: "bold" });
    for (const item of items) {
      const figures = JSON.stringify(item);
      expect(figures).not.toContain("null");
    }
  });
});

describe("a label", () => {
  it("holds its words on its panel, accents and tails too", () => {
    const words = label([
      { words: "ÉÑÚ SOLERA", capMm: 3.5, face: "bold" },
      { words: "gjpqy (1/2)", capMm: 2.5, face: "regular" },
    ]);
    const [panel, ...texts] = words.draw(point(50, 40));
    expect(panel).toMatchObject({ kind: "rectangle", widthMm: words.widthMm, heightMm: words.heightMm });
    const boxes = texts.flatMap((item) => (item.kind === "text" ? [textBox(item)] : []));
    expect(boxes).toHaveLength(2);
    const panelBox = boxAbout(point(50, 40), words);
    for (const each of boxes) expect(liesIn(each, panelBox)).toBe(true);
    expect(boxes.some((each, index) => boxes.slice(index + 1).some((other) => meet(each, other)))).toBe(
      false,
    );
  });
});
