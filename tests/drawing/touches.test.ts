import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BLACK, type Item, type PagePoint, type Window } from "../../src/drawing/drawing.js";
import { circle, dot, line, point, rectangle, shifted, text } from "../../src/drawing/pen.js";
import { textBox } from "../../src/drawing/text.js";
import {
  anyMeets,
  anyTouches,
  boxesMeet,
  common,
  grown,
  liesIn,
  touches,
  windowInside,
} from "../../src/drawing/touches.js";

/*
 * Which tiles a piece of ink falls on. Paper from x = 10 to 30 and from y = 10 to 20, and pens 2 mm wide, so that ink
 * reaches 1 mm to either side of its line.
 */

const PAPER: Window = { x: 10, y: 10, widthMm: 20, heightMm: 10 };
const PEN = { widthMm: 2, ink: BLACK };
const window = (x: number, y: number, widthMm: number, heightMm: number): Window => ({
  x,
  y,
  widthMm,
  heightMm,
});

const isOn = (item: Item): boolean => touches(item, PAPER);
const straight = (...[x1, y1, x2, y2]: readonly [number, number, number, number]): Item =>
  line(point(x1, y1), point(x2, y2), PEN);
/** The same ink drawn from its other end. */
const turned = (item: Item): Item =>
  item.kind === "line" ? { ...item, from: item.to, to: item.from } : item;

describe("a line", () => {
  it.each([
    ["down, left of the paper", straight(8.9, 0, 8.9, 40), false],
    ["down, its edge on the paper", straight(9.1, 0, 9.1, 40), true],
    ["down, its edge still on the paper", straight(30.9, 0, 30.9, 40), true],
    ["down, right of the paper", straight(31.1, 0, 31.1, 40), false],
    ["across, above the paper", straight(0, 8.9, 40, 8.9), false],
    ["across, its edge on the paper", straight(0, 9.1, 40, 9.1), true],
    ["across, its edge still on the paper", straight(0, 20.9, 40, 20.9), true],
    ["across, under the paper", straight(0, 21.1, 40, 21.1), false],
    ["that ends before the paper", straight(0, 15, 8.9, 15), false],
    ["that ends on it", straight(0, 15, 9.1, 15), true],
    ["that begins after it", straight(31.1, 15, 40, 15), false],
    ["that ends over it", straight(20, 0, 20, 8.9), false],
    ["that begins under it", straight(20, 21.1, 20, 40), false],
    ["wholly on it", straight(15, 12, 16, 13), true],
    // Corners of the paper grown by half the pen: (9, 9), (31, 9), (31, 21), (9, 21).
    ["past its top left corner, x + y = 17.9", straight(0, 17.9, 17.9, 0), false],
    ["over its top left corner, x + y = 18.1", straight(0, 18.1, 18.1, 0), true],
    ["over its bottom right corner, x + y = 51.9", straight(11.9, 40, 51.9, 0), true],
    ["past its bottom right corner, x + y = 52.1", straight(12.1, 40, 52.1, 0), false],
    ["over its top right corner, x - y = 21.9", straight(21.9, 0, 41.9, 20), true],
    ["past its top right corner, x - y = 22.1", straight(22.1, 0, 42.1, 20), false],
    ["over its bottom left corner, x - y = -11.9", straight(0, 11.9, 20, 31.9), true],
    ["past its bottom left corner, x - y = -12.1", straight(0, 12.1, 20, 32.1), false],
    // Ink that ends just where the paper begins is on it: better a tile too many than a line that stops.
    ["down, just along its left edge", straight(9, 0, 9, 40), true],
    ["down, just along its right edge", straight(31, 0, 31, 40), true],
    ["across, just along its top", straight(0, 9, 40, 9), true],
    ["across, just along its bottom", straight(0, 21, 40, 21), true],
    ["just to its left edge", straight(0, 15, 9, 15), true],
    ["just over its corner", straight(0, 18, 18, 0), true],
    ["that has no length, on the paper", straight(20, 15, 20, 15), true],
    ["that has no length, beside it", straight(5, 15, 5, 15), false],
  ])("%s", (_, item, on) => {
    expect(isOn(item)).toBe(on);
    expect(isOn(turned(item))).toBe(on);
  });
});

describe("a circle", () => {
  const ring = (x: number, y: number, radiusMm: number): Item => circle(point(x, y), radiusMm, PEN);

  it.each([
    // Ink from radius - 1 to radius + 1; the paper's nearest point is (10, 15).
    ["left of the paper", ring(0, 15, 8.9), false],
    ["left of it, its edge on it", ring(0, 15, 9.1), true],
    ["right of the paper", ring(40, 15, 8.9), false],
    ["right of it, its edge on it", ring(40, 15, 9.1), true],
    ["over the paper", ring(20, 0, 8.9), false],
    ["over it, its edge on it", ring(20, 0, 9.1), true],
    ["under the paper", ring(20, 30, 8.9), false],
    ["under it, its edge on it", ring(20, 30, 9.1), true],
    // 3, 4 and 5: the centre is 3 and 4 off the corner.
    ["off the top left corner", ring(7, 6, 3.9), false],
    ["over the top left corner", ring(7, 6, 4.1), true],
    ["off the bottom right corner", ring(33, 24, 3.9), false],
    ["over the bottom right corner", ring(33, 24, 4.1), true],
    // Round the whole paper: the furthest corner from (18, 14) is (30, 20), 12 and 6 away.
    ["round the paper from its left half", ring(18, 14, Math.hypot(12, 6) + 1.1), false],
    ["through its far corner from there", ring(18, 14, Math.hypot(12, 6) + 0.9), true],
    ["round the paper from its right half", ring(22, 16, Math.hypot(12, 6) + 1.1), false],
    ["through its far corner from there", ring(22, 16, Math.hypot(12, 6) + 0.9), true],
    ["wholly on it", ring(20, 15, 3), true],
    // 12 and 5 from (18, 15) to the far corners: 13.
    ["just to its edge", ring(0, 15, 9), true],
    ["just through its far corners", ring(18, 15, 14), true],
  ])("%s", (_, item, on) => expect(isOn(item)).toBe(on));

  it("that is filled is on the paper also where its edge goes round it", () => {
    expect(isOn(circle(point(20, 15), 40, PEN))).toBe(false);
    expect(isOn(dot(point(20, 15), 40))).toBe(true);
    // Without a line its ink ends at its radius.
    expect(isOn(dot(point(0, 15), 9.9))).toBe(false);
    expect(isOn(dot(point(0, 15), 10.1))).toBe(true);
  });
});

describe("a rectangle", () => {
  const frame = (...[x, y, widthMm, heightMm]: readonly [number, number, number, number]): Item =>
    rectangle(window(x, y, widthMm, heightMm), PEN);

  it.each([
    ["left of the paper", frame(0, 12, 8.9, 5), false],
    ["left of it, its edge on it", frame(0, 12, 9.1, 5), true],
    ["right of the paper", frame(31.1, 12, 5, 5), false],
    ["over the paper", frame(12, 0, 5, 8.9), false],
    ["under the paper", frame(12, 21.1, 5, 5), false],
    ["on the paper", frame(15, 12, 5, 5), true],
    // Its four sides 1.1 outside of the paper, then each of them 0.9.
    ["round the paper", frame(8.9, 8.9, 22.2, 12.2), false],
    ["round it, its left side on it", frame(9.1, 8.9, 22, 12.2), true],
    ["round it, its right side on it", frame(8.9, 8.9, 22, 12.2), true],
    ["round it, its top on it", frame(8.9, 9.1, 22.2, 12), true],
    ["round it, its bottom on it", frame(8.9, 8.9, 22.2, 12), true],
    ["round it, just along all its edges", frame(9, 9, 22, 12), true],
    ["round it, just along its left edge", frame(9, 0, 40, 40), true],
    ["round it, just along its top", frame(0, 9, 40, 40), true],
    ["round it, just along its right edge", frame(0, 0, 31, 40), true],
    ["round it, just along its bottom", frame(0, 0, 40, 21), true],
  ])("%s", (_, item, on) => expect(isOn(item)).toBe(on));

  it("that is filled is on the paper also where its sides go round it, and beside it not", () => {
    const whole = frame(0, 0, 60, 60);
    expect(isOn(whole)).toBe(false);
    expect(isOn({ ...whole, fill: BLACK } as Item)).toBe(true);
    expect(isOn({ ...frame(40, 0, 5, 5), fill: BLACK } as Item)).toBe(false);
  });
});

describe("a path", () => {
  const path = (corners: readonly PagePoint[], more: { closed?: boolean; filled?: boolean } = {}): Item => ({
    kind: "path",
    steps: [
      ...corners.map((at, index) => ({ to: index === 0 ? ("move" as const) : ("line" as const), at })),
      ...(more.closed === true ? [{ to: "close" as const }] : []),
    ],
    ...(more.filled === true ? { fill: BLACK } : { stroke: PEN }),
  });
  /** Round the paper on three sides; what closes it runs along y = 15, over the paper. */
  const hook = [point(0, 15), point(0, 40), point(40, 40), point(40, 15)];

  it("is its lines, and the one that closes it", () => {
    expect(isOn(path(hook))).toBe(false);
    expect(isOn(path(hook, { closed: true }))).toBe(true);
    expect(isOn(path([point(0, 0), point(0, 9.1), point(40, 9.1)]))).toBe(true);
    expect(isOn(path([point(0, 0), point(0, 8.9), point(40, 8.9)]))).toBe(false);
  });

  it("has no ink where the pen is lifted from one part to the next", () => {
    const parts: Item = {
      kind: "path",
      stroke: PEN,
      steps: [
        { to: "move", at: point(0, 0) },
        { to: "line", at: point(0, 30) },
        { to: "move", at: point(40, 0) },
        { to: "line", at: point(40, 30) },
        { to: "close" },
      ],
    };
    expect(isOn(parts)).toBe(false);
    // Closed to where the second part began, never to the first.
    expect(touches(parts, window(2, 10, 30, 1))).toBe(false);
  });

  it("that is filled holds what lies inside it, not what lies in its notch", () => {
    const closed = { closed: true, filled: true };
    const round = [point(0, 0), point(0, 40), point(40, 40), point(40, 0)];
    expect(isOn(path(round, closed))).toBe(true);
    expect(isOn(path(round, { closed: true }))).toBe(false);
    // Notched from above down to y = 30: the paper lies in the notch.
    const notched = [
      ...[point(-20, 0), point(-20, 40), point(60, 40), point(60, 0)],
      ...[point(50, 0), point(50, 30), point(-10, 30), point(-10, 0)],
    ];
    expect(isOn(path(notched, closed))).toBe(false);
    expect(touches(path(notched, closed), window(52, 5, 5, 5))).toBe(true);
    expect(touches(path(notched, closed), window(-18, 5, 5, 5))).toBe(true);
    expect(touches(path(notched, closed), window(62, 5, 5, 5))).toBe(false);
    // Level with its left and its right corner too.
    const kite = [point(20, -10), point(60, 16), point(20, 50), point(-20, 16)];
    for (const y of [10, 16, 20]) expect(touches(path(kite, closed), window(20, y, 2, 2))).toBe(true);
    for (const x of [-25, 65]) expect(touches(path(kite, closed), window(x, 16, 2, 2))).toBe(false);
    // Ink without a line of its own ends at its slanting side: 40 - 2 x / 3 down from the top at x.
    const under = [point(0, 0), point(0, 40), point(60, 0)];
    expect(touches(path(under, closed), window(29, 5, 2, 2))).toBe(true);
    expect(touches(path(under, closed), window(29, 21, 2, 2))).toBe(false);
    expect(touches(path(under, closed), window(9, 32, 2, 1))).toBe(true);
    expect(touches(path(under, closed), window(9, 35, 2, 2))).toBe(false);
    expect(touches(path(under, closed), window(-5, 5, 2, 2))).toBe(false);
    // Triangles: under the long side of the one the paper's near corner, beyond the other's a window.
    expect(isOn(path([point(-10, -10), point(-10, 40), point(60, -10)], closed))).toBe(true);
    expect(touches(path([point(0, 0), point(0, 40), point(60, 0)], closed), window(40, 20, 5, 5))).toBe(
      false,
    );
  });
});

describe("a group", () => {
  it("is where its shift takes it, and only what its window shows", () => {
    const inside = [dot(point(0, 0), 1)];
    expect(isOn(shifted(inside, point(0, 0)))).toBe(false);
    expect(isOn(shifted(inside, point(20, 15)))).toBe(true);
    expect(isOn(shifted(inside, point(20, 25)))).toBe(false);
    expect(isOn(shifted([...inside, dot(point(90, 0), 1)], point(20, 15)))).toBe(true);
    const seen = (through: Window): boolean =>
      isOn({ kind: "group", shift: point(20, 15), window: through, items: inside });
    expect(seen(window(15, 12, 10, 10))).toBe(true);
    expect(seen(window(22, 12, 10, 10))).toBe(false);
    expect(seen(window(40, 12, 10, 10))).toBe(false);
  });

  it("sees a window in its own coordinates", () => {
    const group = { kind: "group" as const, shift: point(5, 3), items: [] };
    expect(windowInside(group, PAPER)).toEqual(window(5, 7, 20, 10));
    expect(windowInside({ ...group, window: window(25, 0, 20, 18) }, PAPER)).toEqual(window(20, 7, 5, 8));
    expect(windowInside({ ...group, window: window(31, 0, 20, 18) }, PAPER)).toBeNull();
  });
});

it("words are where their box is", () => {
  const words = (x: number, y: number): Item => text(point(x, y), "TFL", { capMm: 4 });
  const { widthMm } = textBox(text(point(0, 0), "TFL", { capMm: 4 }));
  expect(isOn(words(9.9 - widthMm, 15))).toBe(false);
  expect(isOn(words(10.1 - widthMm, 15))).toBe(true);
});

describe("any two windows", () => {
  const side = fc.integer({ min: 0, max: 12 });
  const anyWindow = fc.record({ x: side, y: side, widthMm: side, heightMm: side });
  /** Whole and half millimetres, so that borders are among them. */
  const points = Array.from({ length: 49 * 49 }, (_, index) =>
    point((index % 49) / 2, Math.floor(index / 49) / 2),
  );
  const holds = ({ x, y, widthMm, heightMm }: Window, at: PagePoint): boolean =>
    at.x >= x && at.x <= x + widthMm && at.y >= y && at.y <= y + heightMm;

  it("share just the points that both hold", () => {
    fc.assert(
      fc.property(anyWindow, anyWindow, (a, b) => {
        const both = points.filter((at) => holds(a, at) && holds(b, at));
        const shared = common(a, b);
        expect(boxesMeet(a, b)).toBe(both.length > 0);
        expect(points.filter((at) => shared !== null && holds(shared, at))).toEqual(both);
        expect(liesIn(a, a)).toBe(true);
        expect(liesIn(a, b)).toBe(points.filter((at) => holds(a, at)).every((at) => holds(b, at)));
      }),
      { numRuns: 60 },
    );
  });
});

describe("one of many", () => {
  const side = fc.integer({ min: 0, max: 12 });
  const box = fc
    .tuple(side, side, side, side)
    .map(([x, y, widthMm, heightMm]) => window(x, y, widthMm, heightMm));

  it("meets a box where any one of them does, on whole millimetres, where sides often touch", () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 3 }), box, (boxes, other) => {
        expect(anyMeets(boxes, other)).toBe(boxes.some((each) => boxesMeet(each, other)));
      }),
    );
  });

  it("falls on a window where any one of them does", () => {
    const items = [straight(0, 5, 40, 5), straight(15, 0, 15, 40)];
    expect(anyTouches(items, PAPER)).toBe(true);
    expect(anyTouches(items.slice(0, 1), PAPER)).toBe(false);
    expect(anyTouches([], PAPER)).toBe(false);
  });

  it("a window with 2 mm more on every side", () => {
    expect(grown(PAPER, 2)).toEqual({ x: 8, y: 8, widthMm: 24, heightMm: 14 });
  });
});
