import { expect, it } from "vitest";
import { point, shifted, text } from "../../src/drawing/pen.js";
import { collisions, outside, textsOf } from "./no-collisions.js";

/* The checker that the sheets are held to must itself be able to find something. */

const words = (said: string, x: number, y: number, turnDeg = 0) =>
  text(point(x, y), said, { capMm: 5, turnDeg });

it("finds texts that meet, also through shifted groups", () => {
  const items = [words("first", 10, 10), shifted([words("second", 0, 0)], point(12, 11))];
  expect(collisions(textsOf(items))).toEqual(['"first" on "second"']);
});

it("leaves alone texts that only come near, and turned ones whose upright boxes overlap", () => {
  expect(collisions(textsOf([words("first", 10, 10), words("second", 10, 17)]))).toEqual([]);
  expect(collisions(textsOf([words("a long line", 10, 10, 45), words("x", 26, 12)]))).toEqual([]);
  expect(collisions(textsOf([words("a long line", 10, 10, 45), words("x", 18, 20)]))).toHaveLength(1);
});

it("finds what leaves a box, and what a window hides does not count", () => {
  const box = { x: 0, y: 0, widthMm: 30, heightMm: 30 };
  expect(outside(textsOf([words("in", 5, 10), words("out of it", 20, 10)]), box)).toHaveLength(1);
  const hidden = { kind: "group" as const, window: box, items: [words("hidden", 40, 40)] };
  expect(textsOf([hidden])).toEqual([]);
});
