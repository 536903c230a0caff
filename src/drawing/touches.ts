import type { Group, Item, PagePoint, Window } from "./drawing.js";
import { textBox } from "./text.js";

type Path = Extract<Item, { kind: "path" }>;
type Circle = Extract<Item, { kind: "circle" }>;
type Rectangle = Extract<Item, { kind: "rectangle" }>;

/** A box by its four sides: asked of so often that the far ones are not reckoned anew each time. */
interface Edges {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const edgesOf = ({ x, y, widthMm, heightMm }: Window): Edges => ({
  left: x,
  top: y,
  right: x + widthMm,
  bottom: y + heightMm,
});

/** True when any ink of the item falls into the window; a window is in the coordinates that the item is in. */
export const touches = (item: Item, window: Window): boolean => touchesWithin(item, window, edgesOf(window));

/** Whether one of the items does. */
export function anyTouches(items: readonly Item[], window: Window): boolean {
  const edges = edgesOf(window);
  for (const item of items) if (touchesWithin(item, window, edges)) return true;
  return false;
}

function touchesWithin(item: Item, window: Window, edges: Edges): boolean {
  switch (item.kind) {
    case "line":
      return segmentTouches(item.from, item.to, edges, item.stroke.widthMm / 2);
    case "path":
      return pathTouches(item, edges);
    case "circle":
      return circleTouches(item, edges);
    case "rectangle":
      return rectangleTouches(item, edges);
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

/** Whether one of the boxes meets another. */
export function anyMeets(boxes: readonly Window[], { x, y, widthMm, heightMm }: Window): boolean {
  const right = x + widthMm;
  const bottom = y + heightMm;
  for (const box of boxes) {
    if (box.x <= right && x <= box.x + box.widthMm && box.y <= bottom && y <= box.y + box.heightMm)
      return true;
  }
  return false;
}

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
  return inside !== null && anyTouches(group.items, inside);
}

function circleTouches({ centre, radiusMm, stroke, fill }: Circle, edges: Edges): boolean {
  const half = (stroke?.widthMm ?? 0) / 2;
  const { left, top, right, bottom } = edges;
  const [toLeft, toRight] = [left - centre.x, right - centre.x];
  const [toTop, toBottom] = [top - centre.y, bottom - centre.y];
  const reach = radiusMm + half;
  // Most of what is asked about is far away.
  if (toLeft > reach || toRight < -reach || toTop > reach || toBottom < -reach) return false;
  const nearest = Math.hypot(Math.max(toLeft, 0, -toRight), Math.max(toTop, 0, -toBottom));
  if (nearest > reach) return false;
  if (fill !== undefined) return true;
  const farthest = Math.hypot(
    Math.max(Math.abs(toLeft), Math.abs(toRight)),
    Math.max(Math.abs(toTop), Math.abs(toBottom)),
  );
  return farthest >= radiusMm - half;
}

/** A rounded corner counts as a square one: at worst a window with nothing in it counts as touched. */
function rectangleTouches(item: Rectangle, { left, top, right, bottom }: Edges): boolean {
  const { corner, widthMm, heightMm } = item;
  const half = strokeReach(item);
  const [toRight, toBottom] = [corner.x + widthMm, corner.y + heightMm];
  const meets =
    corner.x <= right + half && left - half <= toRight && corner.y <= bottom + half && top - half <= toBottom;
  if (!meets || item.fill !== undefined) return meets;
  const isInside =
    left - half > corner.x && top - half > corner.y && right + half < toRight && bottom + half < toBottom;
  return !isInside;
}

/** A path begins with a move; to where it went last it comes back when it is closed. */
function pathTouches(item: Path, edges: Edges): boolean {
  const half = strokeReach(item);
  const corner = { x: edges.left - half, y: edges.top - half };
  let start: PagePoint = { x: 0, y: 0 };
  let at = start;
  let isAround = false;
  for (const step of item.steps) {
    const to = step.to === "close" ? start : step.at;
    if (step.to === "move") start = to;
    else if (segmentTouches(at, to, edges, half)) return true;
    else if (isRightOf(corner, at, to)) isAround = !isAround;
    at = to;
  }
  // No side runs through the window: all of it lies inside, or none, by the even-odd rule.
  return item.fill !== undefined && isAround;
}

/** Whether a ray from the point to the right crosses the segment. */
const isRightOf = (point: PagePoint, from: PagePoint, to: PagePoint): boolean =>
  from.y > point.y !== to.y > point.y &&
  point.x < from.x + ((point.y - from.y) / (to.y - from.y)) * (to.x - from.x);

/** Cuts the segment's parameter down to the box's slab in x, then in y; something left means that it touches. */
function segmentTouches(from: PagePoint, to: PagePoint, edges: Edges, byMm: number): boolean {
  const [left, right] = [edges.left - byMm, edges.right + byMm];
  const [top, bottom] = [edges.top - byMm, edges.bottom + byMm];
  if (from.x === to.x) return left <= from.x && from.x <= right && spansMeet(from.y, to.y, top, bottom);
  if (from.y === to.y) return top <= from.y && from.y <= bottom && spansMeet(from.x, to.x, left, right);
  const [leftAt, rightAt] = [(left - from.x) / (to.x - from.x), (right - from.x) / (to.x - from.x)];
  const [topAt, bottomAt] = [(top - from.y) / (to.y - from.y), (bottom - from.y) / (to.y - from.y)];
  const enter = Math.max(Math.min(leftAt, rightAt), Math.min(topAt, bottomAt), 0);
  return enter <= Math.min(Math.max(leftAt, rightAt), Math.max(topAt, bottomAt), 1);
}

const spansMeet = (one: number, other: number, low: number, high: number): boolean =>
  (one >= low || other >= low) && (one <= high || other <= high);
