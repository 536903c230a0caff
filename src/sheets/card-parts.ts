import type { Item, PagePoint } from "../drawing/drawing.js";
import { circle, line, PEN, point, rectangle } from "../drawing/pen.js";
import { measureText } from "../drawing/text.js";
import { type Block, textBlock } from "../drawing/text-block.js";

/** A place on a card whose left edge is the card's. */
export interface Across {
  readonly y: number;
  readonly widthMm: number;
}

export interface Spot extends Across {
  readonly x: number;
}

/** Least height of a row about one conductor. */
export const ROW_MM = 11;

type Maker = (y: number) => Block;

export const rule =
  (widthMm: number): Maker =>
  (y) => ({ items: [line(point(0, y + 0.5), point(widthMm, y + 0.5), PEN.fine)], heightMm: 2.5 });

export const title =
  (words: string, widthMm: number): Maker =>
  (y) =>
    textBlock(words, { x: 0, y, widthMm, capMm: 2.5, face: "bold" });

/** A square with a plus, or a circle with a minus: told apart by shape and sign where colour fails. */
export function signMark(sign: "+" | "-", centre: PagePoint, sizeMm: number): Item[] {
  const half = sizeMm / 2;
  const arm = sizeMm * 0.3;
  const across = line(point(centre.x - arm, centre.y), point(centre.x + arm, centre.y), PEN.cut);
  if (sign === "-") return [circle(centre, half, PEN.outline), across];
  const box = { x: centre.x - half, y: centre.y - half, widthMm: sizeMm, heightMm: sizeMm };
  const up = line(point(centre.x, centre.y - arm), point(centre.x, centre.y + arm), PEN.cut);
  return [rectangle(box, PEN.outline), across, up];
}

/** Bold words about the middle of a row, `y`, on as many lines as the width asks for. */
export function centred(
  words: string,
  place: { x: number; y: number; widthMm: number; capMm: number },
): Block {
  const { heightMm } = textBlock(words, { ...place, face: "bold" });
  const lettersMm = heightMm - place.capMm * 0.75;
  return textBlock(words, { ...place, y: place.y - lettersMm / 2, face: "bold" });
}

/** A name with a line to write on under it. */
export function blank(name: string, { x, y, widthMm }: Spot): Block {
  const words = textBlock(name, { x, y: y + 0.5, widthMm, capMm: 2.5 });
  const heightMm = Math.max(ROW_MM, words.heightMm + 6);
  const foot = y + heightMm - 1;
  return { items: [...words.items, line(point(x, foot), point(x + widthMm, foot), PEN.fine)], heightMm };
}

/** A name and its value on one line, or a line to write on where it is not given. */
export function field(name: string, value: string | null, { y, widthMm }: Across): Block {
  const nameMm = Math.min(measureText(name, { capMm: 2.5, face: "regular" }).widthMm, widthMm * 0.7);
  const named = textBlock(name, { x: 0, y: y + 1.5, widthMm: nameMm, capMm: 2.5 });
  const x = nameMm + 3;
  const foot = y + 5;
  const toWrite: Block = { items: [line(point(x, foot), point(widthMm, foot), PEN.fine)], heightMm: 6 };
  const said =
    value === null
      ? toWrite
      : textBlock(value, { x, y: y + 1, widthMm: widthMm - x, capMm: 3.5, face: "bold" });
  return {
    items: [...named.items, ...said.items],
    heightMm: Math.max(7, named.heightMm + 1.5, said.heightMm + 1),
  };
}
