import { WHITE } from "../../drawing/drawing.js";
import { type Ground, type Placed, taking } from "../../drawing/free-place.js";
import { filled, PEN, rectangle } from "../../drawing/pen.js";
import { fitText } from "../../drawing/text.js";
import { type Block, stack, textBlock } from "../../drawing/text-block.js";
import type { Opening } from "../../job.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import type { Order } from "../sheet.js";
import { reasonsOf } from "./notes.js";

const STOP_MM = { least: 5, most: 10 };
/** Letters of the reasons: large where all of them fit, else small. */
const REASON_MM = [3.5, 2.5];
const PAD_MM = 2.5;
const MOST_WIDE_MM = 170;
/** Share of a page's width that the plate takes at most: the broken line stays in sight around it. */
const SHARE = 0.86;

interface Place {
  readonly x: number;
  readonly widthMm: number;
}

/** DO NOT CUT large across a page, why, and where to move to, on a plate of its own; as many reasons as there is room for. */
export function stopPlate(order: Order, opening: Opening): (ground: Ground) => Placed {
  const reasons = reasonsOf(order, opening);
  return (ground) => plateOn(order, reasons, ground);
}

type Reasons = readonly (readonly string[])[];

function plateOn(order: Order, reasons: Reasons, ground: Ground): Placed {
  const { within } = ground;
  const widthMm = Math.min(within.widthMm * SHARE, MOST_WIDE_MM);
  const x = within.x + (within.widthMm - widthMm) / 2;
  const place = { x: x + PAD_MM, widthMm: widthMm - 2 * PAD_MM };
  const write = fitting(order, reasons, place, within.heightMm - 2 * PAD_MM);
  const { heightMm } = write(0);
  const y = within.y + (within.heightMm - heightMm) / 2;
  const box = { x, y: y - PAD_MM, widthMm, heightMm: heightMm + PAD_MM };
  return {
    items: [filled(box, WHITE), rectangle(box, PEN.outline), ...write(y).items],
    ground: taking(ground, box),
  };
}

type Write = (y: number) => Block;

/** All reasons in large letters, in small ones, then fewer of them: the first that is no higher than the page allows. */
function fitting(order: Order, reasons: Reasons, place: Place, mostMm: number): Write {
  const stop = stopLines(order, place);
  for (let count = reasons.length; count > 0; count -= 1) {
    const more = reasons.length - count;
    const said = [
      ...reasons.slice(0, count).flat(),
      ...(more === 0 ? [] : [order.words.template.more(more)]),
    ];
    for (const capMm of REASON_MM) {
      const write = written([...stop, ...said.map((words) => lineOf(words, place, capMm))]);
      if (write(0).heightMm <= mostMm) return write;
    }
  }
  return written(stop);
}

const written =
  (lines: readonly Write[]): Write =>
  (y) =>
    stack(y, lines, 0.5);

const lineOf =
  (words: string, place: Place, capMm: number): Write =>
  (y) =>
    textBlock(words, { ...place, y, capMm });

/** One line for each language, all of one height. */
function stopLines({ words }: Order, place: Place): Write[] {
  const lines = words.frame.doNotCut.split(BETWEEN_LANGUAGES);
  const { least, most } = STOP_MM;
  const sizes = lines.map((line) =>
    fitText(line, { face: "bold", widthMm: place.widthMm, leastMm: least, mostMm: most }),
  );
  const capMm = Math.min(...sizes);
  return lines.map((line) => (y) => textBlock(line, { ...place, y, capMm, face: "bold", anchor: "middle" }));
}
