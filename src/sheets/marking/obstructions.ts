import type { Item, PagePoint, Stroke, Window } from "../../drawing/drawing.js";
import { label } from "../../drawing/label.js";
import { boxAbout, type LabelWish, leader, middlesAround } from "../../drawing/label-places.js";
import { circle, line, PEN, point, rectangle } from "../../drawing/pen.js";
import { wrapText } from "../../drawing/text.js";
import { grown } from "../../drawing/touches.js";
import type { Obstruction, Surface } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { LINES } from "./lines.js";
import type { Piece } from "./sketch.js";
import { boxBetween, type View } from "./view.js";

const LABEL_MM = 34;

/** What an opening must stay away from: its outline, the outline to keep off it, its name; said so where it lies behind. */
export function obstructionsPiece(order: Order, surface: Surface, view: View): Piece {
  return {
    layer: "obstructions",
    rank: 2,
    items: surface.obstructions.flatMap((obstruction) => obstructionItems(obstruction, view)),
    wishes: surface.obstructions.map((obstruction) => nameOf(order, obstruction, view)),
  };
}

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
  const { x, y, widthMm, heightMm } = boxOf(obstruction, view);
  const inset = obstruction.area.kind === "round" ? (1 - Math.SQRT1_2) / 2 : 0;
  const at = (across: number, down: number): PagePoint =>
    point(x + widthMm * (inset + across * (1 - 2 * inset)), y + heightMm * (inset + down * (1 - 2 * inset)));
  return [line(at(0, 0), at(1, 1), PEN.fine), line(at(0, 1), at(1, 0), PEN.fine)];
}

function boxOf({ area }: Obstruction, view: View): Window {
  if (area.kind === "rectangle") return boxBetween(view.place(area.min), view.place(area.max));
  const { x, y } = view.place(area.centre);
  const radius = view.shrunk(area.diameterMm / 2);
  return { x: x - radius, y: y - radius, widthMm: 2 * radius, heightMm: 2 * radius };
}

function nameOf(order: Order, obstruction: Obstruction, view: View): LabelWish {
  const { words, measure } = order;
  const { name, keepMm, behindMm } = obstruction;
  const { smallMm: capMm } = view.heights;
  const said = [
    ...(keepMm > 0 ? [words.marking.keep(measure.tape(keepMm))] : []),
    ...(behindMm === null ? [] : [words.marking.behind(measure.tape(behindMm))]),
  ].flatMap((phrase) => wrapText(phrase, { capMm, face: "regular", widthMm: LABEL_MM }));
  const names = wrapText(name, { capMm, face: "bold", widthMm: LABEL_MM });
  const all = label([
    ...names.map((line) => ({ words: line, capMm, face: "bold" as const })),
    ...said.map((line) => ({ words: line, capMm, face: "regular" as const })),
  ]);
  const box = boxOf(obstruction, view);
  const [x, y] = [box.x + box.widthMm / 2, box.y + box.heightMm / 2];
  const inside = [0.5, 0.3, 0.7, 0.15, 0.85].map((part) =>
    box.widthMm > box.heightMm ? point(box.x + box.widthMm * part, y) : point(x, box.y + box.heightMm * part),
  );
  return {
    ...all,
    draw: (middle) => [...leader(box, boxAbout(middle, all)), ...all.draw(middle)],
    middles: [...inside, ...middlesAround(box, all, [1, 4, 8, 14])],
  };
}
