import type { Item, PagePoint, Text, Window } from "./drawing.js";
import { point } from "./pen.js";
import { textBox } from "./text.js";
import { liesIn, touches, windowInside } from "./touches.js";

/**
 * What of a drawing a window on it shows. Words that some window shows whole are left out where an edge would cut them; other
 * items print wherever they touch.
 */
export function seenIn(items: readonly Item[], view: Window, whole: ReadonlySet<Text>): Item[] {
  return items.flatMap((item): Item[] => {
    if (item.kind === "text") {
      return (whole.has(item) ? liesIn(textBox(item), view) : touches(item, view)) ? [item] : [];
    }
    if (item.kind !== "group") return touches(item, view) ? [item] : [];
    const inside = windowInside(item, view);
    if (inside === null) return [];
    const seen = seenIn(item.items, inside, whole);
    return seen.length === 0 ? [] : [{ ...item, items: seen }];
  });
}

/** The words that one of the windows shows whole. */
export function shownWhole(items: readonly Item[], views: readonly Window[]): ReadonlySet<Text> {
  const whole = items.flatMap((item): Text[] => {
    if (item.kind === "text") {
      const box = textBox(item);
      return views.some((view) => liesIn(box, view)) ? [item] : [];
    }
    if (item.kind !== "group") return [];
    return [
      ...shownWhole(
        item.items,
        views.flatMap((view) => windowInside(item, view) ?? []),
      ),
    ];
  });
  return new Set(whole);
}

/** Boxes of all the words in a drawing, in its own coordinates. */
export function textBoxes(items: readonly Item[], shift: PagePoint = point(0, 0)): Window[] {
  return items.flatMap((item) => {
    if (item.kind === "group") {
      const more = item.shift ?? point(0, 0);
      return textBoxes(item.items, point(shift.x + more.x, shift.y + more.y));
    }
    if (item.kind !== "text") return [];
    const box = textBox(item);
    return [{ ...box, x: box.x + shift.x, y: box.y + shift.y }];
  });
}
