import { type Item, WHITE } from "../drawing/drawing.js";
import { type Box, filled, PEN, point, rectangle, text } from "../drawing/pen.js";
import { measureText } from "../drawing/text.js";
import { stack, textBlock } from "../drawing/text-block.js";
import { boxesMeet, liesIn } from "../drawing/touches.js";
import type { LabelStock } from "../room/room.js";
import { frameArea } from "./frame.js";
import { labelBox, labelsPerSheet, type Remark } from "./label-stock.js";
import type { Amount } from "./label-words.js";
import type { Labelling, Refusal } from "./labelling.js";
import type { Body, FrameFacts, Order } from "./sheet.js";

/** Smaller label sheets have no room for the frame and its rulers: their test page is the paper that is read. */
const LEAST_FRAMED = { widthMm: 180, heightMm: 220 };
const NOTE_MM = 3;

/** The outline of every label, true to scale, framed and on plain paper; and what a person must know about the labels. */
export function labelTestPage(order: Order, labelling: Labelling): Body {
  const { stock } = labelling;
  const facts = factsOf(order);
  const own = stock.pageWidthMm >= LEAST_FRAMED.widthMm && stock.pageHeightMm >= LEAST_FRAMED.heightMm;
  const size = own ? { widthMm: stock.pageWidthMm, heightMm: stock.pageHeightMm } : order.reading;
  const area = frameArea(order, facts, size);
  const shift = own ? point(0, 0) : point(area.x, area.y);
  const panel = notesPanel(order, labelling, area);
  const outlines = [
    ...(own ? [] : pageEdge(stock)),
    ...labelOutlines(stock, { area, shift, panel: panel.box }),
  ];
  return {
    widthMm: size.widthMm,
    heightMm: size.heightMm,
    title: facts.title,
    frame: facts,
    items: [{ kind: "group", shift, window: area, items: outlines }, ...panel.items],
  };
}

function factsOf({ words }: Order): FrameFacts {
  return {
    title: words.labels.test.title,
    view: null,
    hold: null,
    front: null,
    scale: words.frame.trueScale,
    faces: null,
  };
}

const pageEdge = (stock: LabelStock): Item[] => [
  rectangle({ x: 0, y: 0, widthMm: stock.pageWidthMm, heightMm: stock.pageHeightMm }, PEN.thin),
];

/** Outlines in the stock's own coordinates; each with its number where that is free of the panel and inside the frame. */
function labelOutlines(
  stock: LabelStock,
  { area, shift, panel }: { area: Box; shift: { x: number; y: number }; panel: Box },
): Item[] {
  const first = stock.used % labelsPerSheet(stock);
  return Array.from({ length: labelsPerSheet(stock) }, (_, index) => index).flatMap((index) => {
    const box = labelBox(stock, index);
    const outline = rectangle(box, index === first ? PEN.cut : PEN.fine);
    const number = numberItem(box, index + 1);
    const shown = { ...number.box, x: number.box.x + shift.x, y: number.box.y + shift.y };
    const free = liesIn(shown, area) && !boxesMeet(shown, panel);
    return free ? [outline, number.item] : [outline];
  });
}

function numberItem(label: Box, number: number): { item: Item; box: Box } {
  const capMm = 3.5;
  const words = String(number);
  const { widthMm } = measureText(words, { capMm, face: "regular" });
  const at = point(label.x + label.widthMm / 2, label.y + label.heightMm / 2 + capMm / 2);
  return {
    item: text(at, words, { capMm, anchor: "middle" }),
    box: { x: at.x - widthMm / 2, y: at.y - capMm, widthMm, heightMm: capMm },
  };
}

/** What is to be said, on a white panel over the middle of the outlines. */
function notesPanel(order: Order, labelling: Labelling, area: Box): { items: Item[]; box: Box } {
  const widthMm = Math.min(area.widthMm - 20, 140);
  const x = area.x + (area.widthMm - widthMm) / 2;
  const notes = notesOf(order, labelling);
  const at = (y: number) =>
    stack(
      y,
      notes.map(
        ({ words, face }) =>
          (top: number) =>
            textBlock(words, { x: x + 3, y: top, widthMm: widthMm - 6, capMm: NOTE_MM, face }),
      ),
      1.5,
    );
  const heightMm = at(0).heightMm + 4;
  const y = area.y + Math.max(0, (area.heightMm - heightMm) / 2);
  const box = { x, y, widthMm, heightMm };
  return { items: [filled(box, WHITE), rectangle(box, PEN.thin), ...at(y + 3).items], box };
}

interface Note {
  readonly words: string;
  readonly face: "regular" | "bold";
}

const said = (words: string): Note => ({ words, face: "regular" });
const stressed = (words: string): Note => ({ words, face: "bold" });

function notesOf(order: Order, labelling: Labelling): Note[] {
  const { test, refused } = order.words.labels;
  const { stock } = labelling;
  const geometry = said(
    test.stock(
      stock.columns,
      stock.rows,
      lengthOf(order, stock.labelWidthMm),
      lengthOf(order, stock.labelHeightMm),
    ),
  );
  if (labelling.kind === "refused") {
    return [stressed(refused.heading), stressed(refusalText(order, labelling.why)), geometry];
  }
  const runs = order.job.room.speakers.length;
  return [
    stressed(test.hold),
    said(test.moved),
    geometry,
    ...(order.job.room.labels === null ? [stressed(test.assumed)] : []),
    said(test.count(runs, runs * 2, labelling.pages.length)),
    said(test.start((stock.used % labelsPerSheet(stock)) + 1)),
    ...leftOff(order, labelling.amount),
    ...labelling.zones.remarks.map((remark) => stressed(remarkText(order, remark))),
    said(test.put),
  ];
}

const lengthOf = ({ measure }: Order, mm: number): string => measure.length(mm);

function leftOff({ words }: Order, amount: Amount): Note[] {
  const { route, cable, allButId } = words.labels.test.leftOff;
  const left: Readonly<Record<Amount, string | null>> = {
    all: null,
    "no-route": route,
    least: cable,
    id: allButId,
  };
  const note = left[amount];
  return note === null ? [] : [stressed(note)];
}

function remarkText(order: Order, remark: Remark): string {
  const { wrap } = order.words.labels;
  switch (remark.kind) {
    case "laps":
      return wrap.laps(lengthOf(order, remark.printedMm), lengthOf(order, remark.aroundMm));
    case "short-tail":
      return wrap.shortTail(lengthOf(order, remark.tailMm), lengthOf(order, remark.aroundMm));
    case "no-cable-fits":
      return wrap.noCable(lengthOf(order, remark.tailMm), lengthOf(order, remark.printedMm));
    case "diameter-not-given":
      return wrap.around(lengthOf(order, remark.leastMm), lengthOf(order, remark.mostMm));
  }
}

/** Why the stock cannot hold the labels, in words. */
export function refusalText(order: Order, refusal: Refusal): string {
  const { refused } = order.words.labels;
  switch (refusal.why) {
    case "flag-without-diameter":
      return refused.flagNoDiameter;
    case "wrap-without-printed-part":
      return refused.noPrintedPart;
    case "too-small":
      return refusal.flagMm === null
        ? refused.tooSmall(refusal.id)
        : refused.flagTooSmall(lengthOf(order, Math.max(0, refusal.flagMm)), refusal.id);
  }
}
