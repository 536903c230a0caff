import type { Item, PagePoint, Text, Window } from "../../src/drawing/drawing.js";
import { textCorners } from "../../src/drawing/text.js";
import { frameArea, frameItems, printable } from "../../src/sheets/frame.js";
import type { Body, Order } from "../../src/sheets/sheet.js";

/*
 * Every text of a page against every other and against the page: by the corners of its ink, turned with it.
 */

/** A text where it stands on the page. */
export interface Placed {
  readonly text: Text;
  readonly corners: readonly PagePoint[];
}

/** Ink that meets by less than this cannot be seen to touch, in mm. */
const TOUCH_MM = 0.05;

/** All texts of a page, groups opened; what a group's window hides is left out. */
export function textsOf(items: readonly Item[], shift: PagePoint = { x: 0, y: 0 }): Placed[] {
  return items.flatMap((item): Placed[] => {
    if (item.kind === "text")
      return [{ text: item, corners: textCorners(item).map((at) => moved(at, shift)) }];
    if (item.kind !== "group") return [];
    const inner = moved(item.shift ?? { x: 0, y: 0 }, shift);
    const window = item.window === undefined ? null : { ...item.window, ...moved(item.window, shift) };
    const inside = textsOf(item.items, inner);
    if (window === null) return inside;
    return inside
      .filter(({ corners }) => isSeen(corners, window))
      .map((placed) => ({ ...placed, corners: seenOf(placed.corners, window) }));
  });
}

/** What a window shows of a text: upright boxes for what it cuts. */
function seenOf(corners: readonly PagePoint[], { x, y, widthMm, heightMm }: Window): readonly PagePoint[] {
  const across = spanOf(corners.map((corner) => corner.x));
  const down = spanOf(corners.map((corner) => corner.y));
  const [left, right] = [Math.max(across.low, x), Math.min(across.high, x + widthMm)];
  const [top, bottom] = [Math.max(down.low, y), Math.min(down.high, y + heightMm)];
  if (left === across.low && right === across.high && top === down.low && bottom === down.high)
    return corners;
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

const moved = (at: PagePoint, by: PagePoint): PagePoint => ({ x: at.x + by.x, y: at.y + by.y });

const spanOf = (values: readonly number[]) => ({ low: Math.min(...values), high: Math.max(...values) });

function isSeen(corners: readonly PagePoint[], window: Window): boolean {
  const across = spanOf(corners.map(({ x }) => x));
  const down = spanOf(corners.map(({ y }) => y));
  return (
    across.high > window.x &&
    across.low < window.x + window.widthMm &&
    down.high > window.y &&
    down.low < window.y + window.heightMm
  );
}

/** How far two convex outlines overlap along the direction in which they overlap least, in mm; negative where apart. */
function overlapMm(a: readonly PagePoint[], b: readonly PagePoint[]): number {
  const normals = [...normalsOf(a), ...normalsOf(b)];
  return Math.min(
    ...normals.map((normal) => {
      const along = (outline: readonly PagePoint[]) =>
        spanOf(outline.map(({ x, y }) => x * normal.x + y * normal.y));
      const [first, second] = [along(a), along(b)];
      return Math.min(first.high, second.high) - Math.max(first.low, second.low);
    }),
  );
}

function normalsOf(outline: readonly PagePoint[]): PagePoint[] {
  return outline.flatMap((from, index) => {
    const to = outline[(index + 1) % outline.length] ?? from;
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    return long === 0 ? [] : [{ x: (to.y - from.y) / long, y: (from.x - to.x) / long }];
  });
}

const spansOf = ({ corners }: Placed) => ({
  across: spanOf(corners.map(({ x }) => x)),
  down: spanOf(corners.map(({ y }) => y)),
});

const meet = (a: ReturnType<typeof spanOf>, b: ReturnType<typeof spanOf>): boolean =>
  a.low < b.high && b.low < a.high;

/** Pairs of texts whose ink meets, by their words. */
export function collisions(texts: readonly Placed[]): string[] {
  const inked = texts
    .filter(({ text }) => text.text.trim() !== "")
    .map((text) => ({ ...text, ...spansOf(text) }));
  return inked.flatMap((one, index) =>
    inked
      .slice(index + 1)
      .filter((other) => meet(one.across, other.across) && meet(one.down, other.down))
      .filter((other) => overlapMm(one.corners, other.corners) > TOUCH_MM)
      .map((other) => `"${one.text.text}" on "${other.text.text}"`),
  );
}

/** Texts that reach out of a box, by their words. */
export function outside(texts: readonly Placed[], box: Window): string[] {
  const isOut = ({ x, y }: PagePoint): boolean =>
    x < box.x - TOUCH_MM ||
    y < box.y - TOUCH_MM ||
    x > box.x + box.widthMm + TOUCH_MM ||
    y > box.y + box.heightMm + TOUCH_MM;
  return texts
    .filter(({ corners }) => corners.some(isOut))
    .map(
      ({ text, corners }) =>
        `${text.text} (${corners.map(({ x, y }) => `${x.toFixed(1)}, ${y.toFixed(1)}`).join("; ")})`,
    );
}

/** What is wrong with the lettering of a page: texts that meet, that leave their box, or are under 2.5 mm high. */
export function letteringFaults(order: Order, body: Body): string[] {
  const own = textsOf(body.items);
  const box = body.frame === null ? printable(order, body) : frameArea(order, body.frame, body);
  const frame = textsOf(frameItems(order, body, { number: 1, of: 99 }));
  const small = [...own, ...frame].filter(({ text }) => text.capMm < 2.5 - 1e-9).map(({ text }) => text.text);
  return [
    ...collisions([...own, ...frame]).map((pair) => `collision: ${pair}`),
    ...outside(own, box).map((words) => `outside its area: ${words}`),
    ...outside(frame, printable(order, body)).map((words) => `outside the printable page: ${words}`),
    ...small.map((words) => `smaller than 2.5 mm: ${words}`),
  ];
}
