import type { Group, Item, PagePoint, PathStep, Window } from "./drawing.js";
import { textBox } from "./text.js";

type Segment = readonly [PagePoint, PagePoint];
type Path = Extract<Item, { kind: "path" }>;
type Circle = Extract<Item, { kind: "circle" }>;
type Rectangle = Extract<Item, { kind: "rectangle" }>;

/** True when any ink of the item falls into the window; a window is in the coordinates that the item is in. */
export function touches(item: Item, window: Window): boolean {
  switch (item.kind) {
    case "line":
      return segmentTouches([item.from, item.to], grown(window, item.stroke.widthMm / 2));
    case "path":
      return pathTouches(item, grown(window, strokeReach(item)));
    case "circle":
      return circleTouches(item, window);
    case "rectangle":
      return rectangleTouches(item, grown(window, strokeReach(item)));
    case "text":
      return boxesMeet(textBox(item), window);
    case "group":
      return groupTouches(item, window);
  }
}

const strokeReach = (item: Path | Circle | Rectangle): number => (item.stroke?.widthMm ?? 0) / 2;

export const grown = (window: Window, byMm: number): Window => ({
  x: window.x - byMm,
  y: window.y - byMm,
  widthMm: window.widthMm + 2 * byMm,
  heightMm: window.heightMm + 2 * byMm,
});

export const boxesMeet = (a: Window, b: Window): boolean =>
  a.x <= b.x + b.widthMm && b.x <= a.x + a.widthMm && a.y <= b.y + b.heightMm && b.y <= a.y + a.heightMm;

/** True when the first box lies wholly in the second. */
export const liesIn = (inner: Window, outer: Window): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.widthMm <= outer.x + outer.widthMm &&
  inner.y + inner.heightMm <= outer.y + outer.heightMm;

/** The part that two windows share; null where they are apart. */
export function common(a: Window, b: Window): Window | null {
  if (!boxesMeet(a, b)) return null;
  const x = Math.max(a.x, b.x);
  const y = Math.max(a.y, b.y);
  const widthMm = Math.min(a.x + a.widthMm, b.x + b.widthMm) - x;
  const heightMm = Math.min(a.y + a.heightMm, b.y + b.heightMm) - y;
  return { x, y, widthMm, heightMm };
}

/** The window as the items inside a group see it; null where the group's own window shows nothing of it. */
export function windowInside(group: Group, window: Window): Window | null {
  const seen = group.window === undefined ? window : common(group.window, window);
  if (seen === null) return null;
  const shift = group.shift ?? { x: 0, y: 0 };
  return { ...seen, x: seen.x - shift.x, y: seen.y - shift.y };
}

function groupTouches(group: Group, window: Window): boolean {
  const inside = windowInside(group, window);
  return inside !== null && group.items.some((item) => touches(item, inside));
}

function circleTouches({ centre, radiusMm, stroke, fill }: Circle, window: Window): boolean {
  const half = (stroke?.widthMm ?? 0) / 2;
  const right = window.x + window.widthMm;
  const bottom = window.y + window.heightMm;
  const nearest = Math.hypot(
    Math.max(window.x - centre.x, 0, centre.x - right),
    Math.max(window.y - centre.y, 0, centre.y - bottom),
  );
  if (nearest > radiusMm + half) return false;
  const farthest = Math.hypot(
    Math.max(Math.abs(window.x - centre.x), Math.abs(right - centre.x)),
    Math.max(Math.abs(window.y - centre.y), Math.abs(bottom - centre.y)),
  );
  return fill !== undefined || farthest >= radiusMm - half;
}

/** A rounded corner counts as a square one: at worst a window with nothing in it counts as touched. */
function rectangleTouches(item: Rectangle, window: Window): boolean {
  const box = { ...item.corner, widthMm: item.widthMm, heightMm: item.heightMm };
  if (item.fill !== undefined) return boxesMeet(box, window);
  return boxesMeet(box, window) && !inside(window, box);
}

const inside = (inner: Window, outer: Window): boolean =>
  inner.x > outer.x &&
  inner.y > outer.y &&
  inner.x + inner.widthMm < outer.x + outer.widthMm &&
  inner.y + inner.heightMm < outer.y + outer.heightMm;

function pathTouches(item: Path, window: Window): boolean {
  const segments = segmentsOf(item.steps);
  if (segments.some((segment) => segmentTouches(segment, window))) return true;
  // No side runs through the window: all of it lies inside, or none.
  return item.fill !== undefined && isWithin(window, segments);
}

/** A path begins with a move; to where it went last it comes back when it is closed. */
function segmentsOf(steps: readonly PathStep[]): Segment[] {
  const segments: Segment[] = [];
  let start: PagePoint = { x: 0, y: 0 };
  let at = start;
  for (const step of steps) {
    const to = step.to === "close" ? start : step.at;
    if (step.to === "move") start = to;
    else segments.push([at, to]);
    at = to;
  }
  return segments;
}

/** Even-odd rule along a ray to the right. */
function isWithin(point: PagePoint, segments: readonly Segment[]): boolean {
  const crossings = segments.filter(([from, to]) => {
    if (from.y > point.y === to.y > point.y) return false;
    return point.x < from.x + ((point.y - from.y) / (to.y - from.y)) * (to.x - from.x);
  });
  return crossings.length % 2 === 1;
}

/** Cuts the segment's parameter down to the window's slab in x, then in y; something left means that it touches. */
function segmentTouches([from, to]: Segment, window: Window): boolean {
  const across = slab(from.x, to.x, window.x, window.x + window.widthMm);
  const down = slab(from.y, to.y, window.y, window.y + window.heightMm);
  return Math.max(across.enter, down.enter, 0) <= Math.min(across.leave, down.leave, 1);
}

function slab(from: number, to: number, low: number, high: number): { enter: number; leave: number } {
  if (from === to) {
    const within = low <= from && from <= high;
    return within
      ? { enter: Number.NEGATIVE_INFINITY, leave: Number.POSITIVE_INFINITY }
      : { enter: 1, leave: 0 };
  }
  const a = (low - from) / (to - from);
  const b = (high - from) / (to - from);
  return { enter: Math.min(a, b), leave: Math.max(a, b) };
}
