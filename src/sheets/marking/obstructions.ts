import type { Face, Item, PagePoint, Stroke, Window } from "../../drawing/drawing.js";
import { type Label, type LabelLine, label } from "../../drawing/label.js";
import { type LabelWish, middleOf } from "../../drawing/label-places.js";
import { circle, line, PEN, point, rectangle } from "../../drawing/pen.js";
import { wrapText } from "../../drawing/text.js";
import { grown } from "../../drawing/touches.js";
import type { Obstruction, Surface } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { beside } from "./beside.js";
import { LINES } from "./lines.js";
import type { Piece } from "./piece.js";
import { boxBetween, type View } from "./view.js";

const WIDE_MM = 46;
const LABEL_MM = 28;

/** What an opening must stay away from: its outline, the outline to keep off it, its name; said so where it lies behind. */
export function obstructionsPiece(order: Order, surface: Surface, view: View): Piece {
  return {
    layer: "obstructions",
    rank: 2,
    items: surface.obstructions.flatMap((obstruction) => obstructionItems(obstruction, view)),
    wishes: surface.obstructions.map((obstruction) => nameOf(order, obstruction, view)),
    taken: surface.obstructions.map((obstruction) => obstructionBox(obstruction, view)).filter(isSmall),
  };
}

/** Smaller than words: they would hide it. */
const isSmall = ({ widthMm, heightMm }: Window): boolean => widthMm < LABEL_MM && heightMm < LABEL_MM / 2;

function obstructionItems(obstruction: Obstruction, view: View): Item[] {
  const body = obstruction.behindMm === null ? PEN.outline : LINES.behind;
  const keep = LINES.keep;
  return [
    shape(obstruction, view, { byMm: 0, stroke: body }),
    ...crossed(obstruction, view),
    ...(obstruction.keepMm > 0 ? [shape(obstruction, view, { byMm: obstruction.keepMm, stroke: keep })] : []),
  ];
}

function shape({ area }: Obstruction, view: View, { byMm, stroke }: { byMm: number; stroke: Stroke }): Item {
  const by = view.shrunk(byMm);
  if (area.kind === "round") {
    return circle(view.place(area.centre), view.shrunk(area.diameterMm / 2) + by, stroke);
  }
  const box = grown(boxBetween(view.place(area.min), view.place(area.max)), by);
  const plain = rectangle(box, stroke);
  return plain.kind === "rectangle" && by > 0 ? { ...plain, cornerRadiusMm: by } : plain;
}

/** A cross over what stands in the plane itself, as a void or a duct is drawn. */
function crossed(obstruction: Obstruction, view: View): Item[] {
  if (obstruction.behindMm !== null) return [];
  const { x, y, widthMm, heightMm } = obstructionBox(obstruction, view);
  const inset = obstruction.area.kind === "round" ? (1 - Math.SQRT1_2) / 2 : 0;
  const at = (across: number, down: number): PagePoint =>
    point(x + widthMm * (inset + across * (1 - 2 * inset)), y + heightMm * (inset + down * (1 - 2 * inset)));
  return [line(at(0, 0), at(1, 1), PEN.fine), line(at(0, 1), at(1, 0), PEN.fine)];
}

/** What it covers on the page, without what is kept off it. */
export function obstructionBox({ area }: Obstruction, view: View): Window {
  if (area.kind === "rectangle") return boxBetween(view.place(area.min), view.place(area.max));
  const { x, y } = view.place(area.centre);
  const radius = view.shrunk(area.diameterMm / 2);
  return { x: x - radius, y: y - radius, widthMm: 2 * radius, heightMm: 2 * radius };
}

/** In it where it is large enough, else beside it. */
function nameOf(order: Order, obstruction: Obstruction, view: View): LabelWish {
  const box = obstructionBox(obstruction, view);
  const form = (widthMm: number): Label =>
    label(linesOf(order, obstruction, { widthMm, capMm: view.heights.smallMm }));
  const wide = form(WIDE_MM);
  const holds = wide.widthMm < box.widthMm && wide.heightMm < box.heightMm;
  const spot = {
    box,
    reachMm: [1, 4, 8, 14],
    inside: holds ? middleOf(box) : null,
    next: "further",
  } as const;
  return beside(spot, [wide, form(LABEL_MM)], view);
}

function linesOf(
  { words, measure }: Order,
  { name, keepMm, behindMm }: Obstruction,
  { widthMm, capMm }: { widthMm: number; capMm: number },
): LabelLine[] {
  const keep = keepMm > 0 ? measure.tape(keepMm) : null;
  const behind = behindMm === null ? null : measure.tape(behindMm);
  const said = keep === null && behind === null ? [] : [words.marking.obstruction(keep, behind)];
  const wrapped = (phrase: string, face: Face): LabelLine[] =>
    wrapText(phrase, { capMm, face, widthMm }).map((line) => ({ words: line, capMm, face }));
  return [...wrapped(name, "bold"), ...said.flatMap((phrase) => wrapped(phrase, "regular"))];
}
