import { type Item, WHITE } from "../drawing/drawing.js";
import { arrow, type Box, filled, line, PEN, point, rectangle, text } from "../drawing/pen.js";
import { checkRuler, FOUR_INCHES_MM } from "../drawing/ruler.js";
import { fitText, measureText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import type { Body, FrameFacts, Order } from "./sheet.js";

/** Width of the strip on the left that holds the ruler down the page. */
const STRIP_MM = 15;
const GAP_MM = 2;
/** Width and height of the box with the arrow to FRONT; wider where words say it, which then are fewer lines. */
const FRONT_BOX_MM = { arrow: 20, words: 44 };
const HEADLINE_MM = { apart: 3.5, least: 4.5, most: 6 };
const SMALL_MM = 2.5;

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
  return areas(order, keyOf(facts, size), () => areaOf(order, facts, size));
}

/** Each way for the paper to lie and for figures to stand on it asks for the same few. */
const areas = perOrder<Box>();
/** Of a page's kind: laid out to know the area, and drawn on each of its pages. */
const headers = perOrder<Block>();
/** Of nearly every sheet the same. */
const footHeights = perOrder<number>();
const footNotes = perOrder<Block>();
const rulers = perOrder<readonly Item[]>();

/** A memory of what was worked out for an order; it goes with the order. */
function perOrder<Value>(): (order: Order, key: string, work: () => Value) => Value {
  const orders = new WeakMap<Order, Map<string, Value>>();
  return (order, key, work) => {
    const known = orders.get(order) ?? new Map<string, Value>();
    orders.set(order, known);
    const value = known.get(key) ?? work();
    known.set(key, value);
    return value;
  };
}

const keyOf = (facts: FrameFacts, { widthMm, heightMm }: PageSize): string =>
  JSON.stringify([facts, widthMm, heightMm]);

const headerOf = (order: Order, facts: FrameFacts, size: PageSize): Block =>
  headers(order, keyOf(facts, size), () => header(order, facts, framed(order, facts, size)));

function footHeightMm(order: Order, facts: FrameFacts, inside: Box): number {
  const key = JSON.stringify([facts.scale, facts.faces, inside.widthMm]);
  const widest = { number: 888, of: 888 };
  return footHeights(order, key, () => footer(order, facts, widest, inside).heightMm);
}

function areaOf(order: Order, facts: FrameFacts, size: PageSize): Box {
  const inside = framed(order, facts, size);
  const head = headerOf(order, facts, size).heightMm + GAP_MM;
  const foot = footHeightMm(order, facts, inside) + GAP_MM;
  return {
    x: inside.x + STRIP_MM,
    y: inside.y + head,
    widthMm: inside.widthMm - STRIP_MM,
    heightMm: inside.heightMm - head - foot,
  };
}

/** The page inside the printer's margins. */
export function printable(order: Pick<Order, "margins">, size: PageSize): Box {
  const { topMm, rightMm, bottomMm, leftMm } = order.margins;
  return {
    x: leftMm,
    y: topMm,
    widthMm: size.widthMm - leftMm - rightMm,
    heightMm: size.heightMm - topMm - bottomMm,
  };
}

/** What a page's own axis marks need at the top and bottom of the printable area; the sides leave it anyway. */
export const AXIS_MARK_MM = 1.5;
/** Over the title's capitals a mark reads as a letter of it sooner than over the small print at the foot. */
const AXIS_AIR_MM = { top: 0.9, bottom: 0.1 };

/** Where the frame itself stands: the printable area, less the marks of a page that has axes. */
function framed(order: Order, facts: FrameFacts, size: PageSize): Box {
  const inside = printable(order, size);
  if (facts.axes !== true) return inside;
  const [top, bottom] = [AXIS_MARK_MM + AXIS_AIR_MM.top, AXIS_MARK_MM + AXIS_AIR_MM.bottom];
  return { ...inside, y: inside.y + top, heightMm: inside.heightMm - top - bottom };
}

/** Header, footer and both check rulers of a numbered page; nothing for label stock, which carries none. */
export function frameItems(order: Order, body: Body, numbering: Numbering): Item[] {
  if (body.frame === null) return [];
  const inside = framed(order, body.frame, body);
  const head = headerOf(order, body.frame, body);
  const foot = footer(order, body.frame, numbering, inside);
  const shift = inside.y + inside.heightMm - foot.heightMm;
  return [
    ...head.items,
    { kind: "group", shift: point(0, shift), items: foot.items },
    ...downRuler(order, inside, head.heightMm, foot.heightMm),
  ];
}

function downRuler(order: Order, inside: Box, headMm: number, footMm: number): readonly Item[] {
  const free = inside.heightMm - headMm - footMm;
  const y = inside.y + headMm + Math.max(GAP_MM, (free - FOUR_INCHES_MM) / 2);
  return rulerAt(order, { x: inside.x + 7.5, y, direction: "down" });
}

const rulerAt = (order: Order, place: Parameters<typeof checkRuler>[0]): readonly Item[] =>
  rulers(order, `${place.direction} ${place.x} ${place.y}`, () => checkRuler(place));

function header(order: Order, facts: FrameFacts, inside: Box): Block {
  const mark = frontMark(order, facts, inside);
  const widthMm = inside.widthMm - mark.widthMm;
  const risenMm = accentsMm(facts);
  const words = stack(inside.y + risenMm, [
    (y) => headline(facts, { x: inside.x, y, widthMm }),
    (y) =>
      facts.hold === null
        ? nothing
        : textBlock(facts.hold, { x: inside.x, y, widthMm, capMm: 3.5, face: "bold" }),
    (y) => textBlock(jobLine(order), { x: inside.x, y, widthMm, capMm: 2.5 }),
  ]);
  const heightMm = Math.max(risenMm + words.heightMm, mark.heightMm);
  const y = inside.y + heightMm + 1;
  return {
    items: [
      ...words.items,
      ...mark.items,
      line(point(inside.x, y), point(inside.x + inside.widthMm, y), PEN.outline),
    ],
    heightMm: heightMm + 1,
  };
}

/** How far accents and tall letters of the headline rise over its capitals: they are to be printed too. */
function accentsMm({ title, view }: FrameFacts): number {
  const size = { capMm: HEADLINE_MM.most, face: "bold" } as const;
  return measureText(title + (view ?? ""), size).ascentMm - size.capMm;
}

const nothing: Block = { items: [], heightMm: 0 };

/** Title and view on one line where they fit in full size, else each on its own, so that no language mixes with another. */
function headline(facts: FrameFacts, place: { x: number; y: number; widthMm: number }): Block {
  const face = "bold";
  const whole = facts.view === null ? facts.title : `${facts.title} — ${facts.view}`;
  const fits = measureText(whole, { capMm: HEADLINE_MM.least, face }).widthMm <= place.widthMm;
  const lines = fits || facts.view === null ? [whole] : [facts.title, facts.view];
  return stack(
    place.y,
    lines.map((words) => (y: number) => {
      const { apart, least, most } = HEADLINE_MM;
      const sizes = fits ? { leastMm: least, mostMm: most } : { leastMm: apart, mostMm: least };
      const capMm = fitText(words, { ...sizes, face, widthMm: place.widthMm });
      return textBlock(words, { ...place, y, capMm, face });
    }),
  );
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

/** An arrow to FRONT in a square box; only words, in a lower one, where the front wall is faced or behind. */
function frontMark(order: Order, { front }: FrameFacts, inside: Box): Block & { readonly widthMm: number } {
  if (front === null) return { ...nothing, widthMm: 0 };
  const isArrow = typeof front === "number";
  const { frame } = order.words;
  const widthMm = isArrow ? FRONT_BOX_MM.arrow : FRONT_BOX_MM.words;
  const corner = point(inside.x + inside.widthMm - widthMm, inside.y);
  const label = textBlock(isArrow ? frame.front : frame.facing[front], {
    x: corner.x + 1,
    y: corner.y + 1.5,
    widthMm: widthMm - 2,
    capMm: SMALL_MM,
    face: "bold",
    anchor: "middle",
  });
  const heightMm = isArrow ? widthMm : label.heightMm + 1.5;
  const free = {
    ...corner,
    y: corner.y + label.heightMm + 1.5,
    widthMm,
    heightMm: heightMm - label.heightMm - 3,
  };
  return {
    items: [
      rectangle({ ...corner, widthMm, heightMm }, PEN.thin),
      ...label.items,
      ...(isArrow ? frontArrow(front, free) : []),
    ],
    heightMm,
    widthMm: widthMm + GAP_MM,
  };
}

function frontArrow(frontDeg: number, box: Box): Item[] {
  const centre = point(box.x + box.widthMm / 2, box.y + box.heightMm / 2);
  const turn = (frontDeg * Math.PI) / 180;
  const reachMm = box.heightMm / 2.2;
  const reach = point(Math.sin(turn) * reachMm, -Math.cos(turn) * reachMm);
  const tail = point(centre.x - reach.x, centre.y - reach.y);
  const tip = point(centre.x + reach.x, centre.y + reach.y);
  return arrow(tail, tip, PEN.cut);
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
  const key = JSON.stringify([facts.faces, inside.x, inside.widthMm, rulerMm]);
  const notes = footNotes(order, key, () => notesBelow(order, facts, { ...inside, y: rulerMm }));
  return {
    items: [
      line(point(inside.x, 0), point(inside.x + inside.widthMm, 0), PEN.outline),
      ...rulerAt(order, { x: inside.x + 2, y: 7, direction: "across" }),
      ...scale.items,
      ...notes.items,
    ],
    heightMm: rulerMm + notes.heightMm,
  };
}

const notesBelow = (order: Order, facts: FrameFacts, { x, y, widthMm }: Omit<Box, "heightMm">): Block =>
  stack(
    y,
    [order.words.frame.printAtFull, ...factsLines(order, facts, widthMm)].map(
      (note) => (from: number) => textBlock(note, { x, y: from, widthMm, capMm: 2.5 }),
    ),
  );

/** Facts side by side, as many on a line as fit. */
function factsLines(order: Order, facts: FrameFacts, widthMm: number): string[] {
  const { words, job } = order;
  const parts = [
    facts.faces,
    words.frame.units[job.room.units],
    words.frame.file(job.fingerprint.slice(0, 8)),
    order.correction,
  ];
  const lines: string[] = [];
  for (const part of parts) {
    if (part === null) continue;
    const longer = [...lines.slice(-1), part].join("  ·  ");
    const fits = measureText(longer, { capMm: SMALL_MM, face: "regular" }).widthMm <= widthMm;
    if (fits) lines.splice(-1, 1, longer);
    else lines.push(part);
  }
  return lines;
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
