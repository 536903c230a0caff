import { type Item, WHITE } from "../drawing/drawing.js";
import { arrow, type Box, filled, line, PEN, point, rectangle, text } from "../drawing/pen.js";
import { checkRuler, FOUR_INCHES_MM } from "../drawing/ruler.js";
import { fitText, measureText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import type { Body, FrameFacts, Order } from "./sheet.js";

/** Width of the strip on the left that holds the ruler down the page. */
const STRIP_MM = 15;
const GAP_MM = 2;
const FRONT_BOX_MM = 24;

export interface PageSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

interface Numbering {
  readonly number: number;
  readonly of: number;
}

/** Room that the frame leaves for the drawing, in page coordinates. The widest numbering is assumed, so it does not change with the packet. */
export function frameArea(order: Order, facts: FrameFacts, size: PageSize): Box {
  const inside = printable(order, size);
  const head = header(order, facts, inside).heightMm + GAP_MM;
  const foot = footer(order, facts, { number: 888, of: 888 }, inside).heightMm + GAP_MM;
  return {
    x: inside.x + STRIP_MM,
    y: inside.y + head,
    widthMm: inside.widthMm - STRIP_MM,
    heightMm: inside.heightMm - head - foot,
  };
}

/** The page inside the printer's margins. */
export function printable(order: Order, size: PageSize): Box {
  const { topMm, rightMm, bottomMm, leftMm } = order.margins;
  return {
    x: leftMm,
    y: topMm,
    widthMm: size.widthMm - leftMm - rightMm,
    heightMm: size.heightMm - topMm - bottomMm,
  };
}

/** Header, footer and both check rulers of a numbered page; nothing for label stock, which carries none. */
export function frameItems(order: Order, body: Body, numbering: Numbering): Item[] {
  if (body.frame === null) return [];
  const inside = printable(order, body);
  const head = header(order, body.frame, inside);
  const foot = footer(order, body.frame, numbering, inside);
  const shift = inside.y + inside.heightMm - foot.heightMm;
  return [
    ...head.items,
    { kind: "group", shift: point(0, shift), items: foot.items },
    ...downRuler(inside, head.heightMm, foot.heightMm),
  ];
}

function downRuler(inside: Box, headMm: number, footMm: number): Item[] {
  const free = inside.heightMm - headMm - footMm;
  const y = inside.y + headMm + Math.max(GAP_MM, (free - FOUR_INCHES_MM) / 2);
  return checkRuler({ x: inside.x + 7.5, y, direction: "down" });
}

function header(order: Order, facts: FrameFacts, inside: Box): Block {
  const frontMm = facts.front === null ? 0 : FRONT_BOX_MM + GAP_MM;
  const widthMm = inside.widthMm - frontMm;
  const words = stack(inside.y, [
    (y) => headline(facts, { x: inside.x, y, widthMm }),
    (y) =>
      facts.hold === null
        ? nothing
        : textBlock(facts.hold, { x: inside.x, y, widthMm, capMm: 3.5, face: "bold" }),
    (y) => textBlock(jobLine(order), { x: inside.x, y, widthMm, capMm: 2.5 }),
  ]);
  const heightMm = Math.max(words.heightMm, facts.front === null ? 0 : FRONT_BOX_MM);
  const y = inside.y + heightMm + 1;
  return {
    items: [
      ...words.items,
      ...frontMark(order, facts, { x: inside.x + inside.widthMm - FRONT_BOX_MM, y: inside.y }),
      line(point(inside.x, y), point(inside.x + inside.widthMm, y), PEN.outline),
    ],
    heightMm: heightMm + 1,
  };
}

const nothing: Block = { items: [], heightMm: 0 };

function headline(facts: FrameFacts, place: { x: number; y: number; widthMm: number }): Block {
  const words = facts.view === null ? facts.title : `${facts.title} — ${facts.view}`;
  const capMm = fitText(words, { leastMm: 4.5, mostMm: 6, face: "bold", widthMm: place.widthMm });
  return textBlock(words, { ...place, capMm, face: "bold" });
}

function jobLine(order: Order): string {
  const { job, words } = order;
  const { name, number, revision, date } = job.room.job;
  const parts = [
    name,
    number === null ? null : words.frame.number(number),
    words.frame.revision(revision),
    date,
  ];
  return parts.filter((part) => part !== null).join("  ·  ");
}

function frontMark(order: Order, facts: FrameFacts, corner: { x: number; y: number }): Item[] {
  if (facts.front === null) return [];
  const box = { x: corner.x, y: corner.y, widthMm: FRONT_BOX_MM, heightMm: FRONT_BOX_MM };
  const words =
    typeof facts.front === "number" ? order.words.frame.front : order.words.frame.facing[facts.front];
  const label = textBlock(words, {
    x: box.x + 1,
    y: box.y + 1.5,
    widthMm: box.widthMm - 2,
    capMm: 2.5,
    face: "bold",
    anchor: "middle",
  });
  if (typeof facts.front !== "number") return [rectangle(box, PEN.thin), ...label.items];
  const free = box.heightMm - label.heightMm - 3;
  const centre = point(box.x + box.widthMm / 2, box.y + label.heightMm + 1.5 + free / 2);
  const turn = (facts.front * Math.PI) / 180;
  const reach = point((Math.sin(turn) * free) / 2.2, (-Math.cos(turn) * free) / 2.2);
  const tail = point(centre.x - reach.x, centre.y - reach.y);
  const tip = point(centre.x + reach.x, centre.y + reach.y);
  return [rectangle(box, PEN.thin), ...label.items, ...arrow(tail, tip, PEN.cut)];
}

function footer(order: Order, facts: FrameFacts, numbering: Numbering, inside: Box): Block {
  const { words } = order;
  const beside = { x: inside.x + FOUR_INCHES_MM + 8, widthMm: inside.widthMm - FOUR_INCHES_MM - 8 };
  const sheet = words.frame.sheet(numbering.number, numbering.of);
  const scale = stack(1.2, [
    (y) => textBlock(facts.scale, { ...beside, y, capMm: 3.5, face: "bold", anchor: "end" }),
    (y) => textBlock(sheet, { ...beside, y, capMm: 2.5, face: "bold", anchor: "end" }),
  ]);
  const rulerMm = Math.max(14.5, scale.heightMm + 1.2);
  const notes = stack(
    rulerMm,
    [words.frame.printAtFull, factsLine(order, facts)].map(
      (note) => (y: number) => textBlock(note, { x: inside.x, y, widthMm: inside.widthMm, capMm: 2.5 }),
    ),
  );
  return {
    items: [
      line(point(inside.x, 0), point(inside.x + inside.widthMm, 0), PEN.outline),
      ...checkRuler({ x: inside.x + 2, y: 7, direction: "across" }),
      ...scale.items,
      ...notes.items,
    ],
    heightMm: rulerMm + notes.heightMm,
  };
}

function factsLine(order: Order, facts: FrameFacts): string {
  const { words, job } = order;
  const parts = [
    facts.faces,
    words.frame.units[job.room.units],
    words.frame.file(job.fingerprint.slice(0, 8)),
    order.correction,
  ];
  return parts.filter((part) => part !== null).join("  ·  ");
}

/** A white panel behind words that stand on a drawing, so that no line runs through them. */
export function plate(
  words: string,
  at: { x: number; y: number },
  capMm: number,
  face: "regular" | "bold" = "bold",
): Item[] {
  const { widthMm } = measureText(words, { capMm, face });
  const box = {
    x: at.x - widthMm / 2 - 0.8,
    y: at.y - capMm / 2 - 0.8,
    widthMm: widthMm + 1.6,
    heightMm: capMm + 1.6,
  };
  return [filled(box, WHITE), text(point(at.x, at.y + capMm / 2), words, { capMm, face, anchor: "middle" })];
}
