import type { PagePoint, Window } from "../../drawing/drawing.js";
import type { Label } from "../../drawing/label.js";
import {
  boxAbout,
  inTurn,
  type LabelWish,
  leader,
  middleOf,
  middlesAround,
  middlesOver,
  middlesWithin,
} from "../../drawing/label-places.js";
import type { View } from "./view.js";

/** What a label is about, and how far from it the label may stand to be read as its own. */
export interface Spot {
  readonly box: Window;
  readonly reachMm: readonly number[];
  /** A place that is better than any beside it. */
  readonly inside?: PagePoint | null;
  /** What comes first once nothing near is free in the outline: near it but outside, or in it but further off. */
  readonly next: "outside" | "further";
}

/** Distance of the places looked at all over a drawing. */
const STEP_MM = 4;

/**
 * A label beside what it is about: in its wider form inside the outline, in its narrower one, then near but outside the
 * outline, or further off in it with a line to it.
 */
export function beside(
  { box, reachMm, inside = null, next }: Spot,
  [wide, narrow]: readonly [Label, Label],
  view: View,
): LabelWish {
  const wish = (words: Label, middles: readonly PagePoint[]): LabelWish => ({
    ...words,
    draw: (middle) => [...leader(box, boxAbout(middle, words)), ...words.draw(middle)],
    middles,
  });
  const near = (words: Label, distancesMm: readonly number[]): PagePoint[] =>
    middlesAround(box, words, distancesMm);
  // One distance after the other: nearly every label finds its place at the first.
  const within = (words: Label): (() => LabelWish)[] =>
    reachMm.map((mm) => () => wish(words, middlesWithin(near(words, [mm]), words, view.box)));
  const over = (): PagePoint[] => middlesOver(view.box, middleOf(box), STEP_MM);
  const outside = (): LabelWish => wish(narrow, near(narrow, reachMm));
  const further = (): LabelWish => wish(narrow, middlesWithin(over(), narrow, view.box));
  return inTurn(
    wish(wide, inside === null ? [] : [inside]),
    ...within(wide),
    ...within(narrow),
    ...(next === "outside" ? [outside, further] : [further, outside]),
    () => wish(narrow, over()),
  );
}
