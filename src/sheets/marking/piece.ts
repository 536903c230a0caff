import type { Item, Layer, Window } from "../../drawing/drawing.js";
import { type LabelWish, placeLabels } from "../../drawing/label-places.js";
import { layer } from "../../drawing/pen.js";

/** One kind of thing in a drawing: its lines, the words that look for a place, and what no words may cover. */
export interface Piece {
  readonly layer: Layer;
  readonly items: readonly Item[];
  readonly wishes?: readonly WordsWish[];
  readonly taken?: readonly Window[];
  /** Whose words choose their places first: the lowest. */
  readonly rank: number;
}

/** Words that look for a place; what is optional is said elsewhere on the drawing too. */
export interface WordsWish extends LabelWish {
  readonly optional?: boolean;
}

export interface Placed {
  readonly items: readonly Item[];
  /** Words that found no place and are said nowhere else on the drawing. */
  readonly leftOut: number;
}

/** The lines of all pieces in their order, then their words over them, where none touches another. */
export function drawPieces(
  pieces: readonly Piece[],
  { bounds, taken = [] }: { bounds: Window; taken?: readonly Window[] },
): Placed {
  const wishes = [...pieces]
    .sort((a, b) => a.rank - b.rank)
    .flatMap((piece) => (piece.wishes ?? []).map((wish) => ({ wish, layer: piece.layer })));
  const placed = placeLabels(
    wishes.map(({ wish }) => wish),
    { taken: [...taken, ...pieces.flatMap((piece) => piece.taken ?? [])], bounds },
  );
  const wordsOf = (name: Layer): Item[] =>
    wishes.flatMap((wish, index) => (wish.layer === name ? (placed[index] ?? []) : []));
  const layers = [...new Set(wishes.map((wish) => wish.layer))];
  return {
    items: [
      ...pieces.filter(({ items }) => items.length > 0).map((piece) => layer(piece.layer, piece.items)),
      ...layers.map((name) => layer(name, wordsOf(name))).filter(({ items }) => items.length > 0),
    ],
    leftOut: wishes.filter(({ wish }, index) => placed[index] === null && wish.optional !== true).length,
  };
}
