import { type Box, point, rectangle, text } from "../../drawing/pen.js";
import { measureText } from "../../drawing/text.js";
import { LINE_PITCH, stack, textBlock } from "../../drawing/text-block.js";
import type { Opening } from "../../job.js";
import { headed, type Part } from "../flow.js";
import type { Order } from "../sheet.js";
import { type Inline, inlines } from "./inline.js";
import type { SurfaceStage } from "./surface-stage.js";

const ID_MM = 3.5;
const SMALL_MM = 2.5;
const TICK_MM = 4;

/**
 * How many openings there are, and a box to tick for each that is to be cut. Where little is free the number alone, so
 * that it is on the page of the drawing.
 */
export function countPart(order: Order, { openings, surface }: SurfaceStage): Part {
  const { job, words } = order;
  const said = words.marking.count(openings.length, job.openings.length);
  const unplaced = job.room.speakers.filter(
    ({ id, surface: on }) => on === surface.name && !openings.some(({ speaker }) => speaker.id === id),
  );
  const ticks = [
    ...openings.map((opening) => tick(order, opening)),
    ...unplaced.map(({ id }) => plain(`${id}: ${words.schedules.notPlaced}`)),
  ];
  return numbered([said, ...notFrozen(order, openings)], inlines(ticks));
}

/** Which places may still move. */
export function notFrozen({ words }: Order, openings: readonly Opening[]): string[] {
  const computed = openings.filter(({ placed }) => placed === "best").map(({ speaker }) => speaker.id);
  return computed.length === 0 ? [] : [`${words.frame.computedNotFrozen}: ${computed.join(", ")}`];
}

/** A number in words, and what goes with it, over what is to be ticked; smaller, and alone, where that is all that fits. */
export function numbered(said: readonly string[], ticks: Part): Part {
  const at =
    (capMm: number) =>
    ({ x, y, widthMm }: Box) =>
      stack(
        y,
        said.map((words) => (top: number) => textBlock(words, { x, y: top, widthMm, capMm, face: "bold" })),
      );
  return (free, fresh) =>
    headed(at(ID_MM), ticks)(free, fresh) ?? headed(at(SMALL_MM), later(ticks))(free, fresh);
}

/** A part that goes on in the next place. */
const later =
  (part: Part): Part =>
  ({ heightMm }) =>
    heightMm < 0 ? null : { heightMm: 0, draw: () => [], rest: part };

function tick({ words }: Order, { speaker, mustNotCut }: Opening): Inline {
  return mustNotCut ? plain(`${speaker.id}: ${words.frame.doNotCut}`) : ticked(speaker.id);
}

/** Words among the boxes for what has none. */
function plain(words: string): Inline {
  const { widthMm } = measureText(words, { capMm: SMALL_MM, face: "regular" });
  return {
    widthMm,
    heightMm: ID_MM * LINE_PITCH,
    draw: ({ x, y }) => [text(point(x, y + TICK_MM), words, { capMm: SMALL_MM })],
  };
}

/** A box to tick and what it stands for. */
export function ticked(words: string): Inline {
  const { widthMm } = measureText(words, { capMm: ID_MM, face: "bold" });
  return {
    widthMm: TICK_MM + 1.5 + widthMm,
    heightMm: ID_MM * LINE_PITCH,
    draw: ({ x, y }) => [
      rectangle({ x, y: y + 0.2, widthMm: TICK_MM, heightMm: TICK_MM }),
      text(point(x + TICK_MM + 1.5, y + TICK_MM), words, { capMm: ID_MM, face: "bold" }),
    ],
  };
}
