import type { Item } from "../../drawing/drawing.js";
import { type Box, point } from "../../drawing/pen.js";
import { textBlock } from "../../drawing/text-block.js";
import { flow, type Part, whole } from "../flow.js";
import { frameArea, type PageSize } from "../frame.js";
import type { Body, FrameFacts, Order } from "../sheet.js";
import { fill, freeBoxes } from "./free-boxes.js";
import { ratiosFor, ratioText } from "./scale.js";
import { drawSketch, type Sketch, sketchSize } from "./sketch.js";
import type { Heights } from "./view.js";

const HEIGHTS: Heights = { smallMm: 2.5, wallMm: 3.5, idMm: 3.5 };
const GAP_MM = 2;
const AIR_MM = 1;
/** A drawing is not made smaller than this to bring its figures onto its page. Our own choice: at 1:50 a stud is 1 mm. */
const LEAST_READABLE = 50;

/** A drawing at a round ratio with its figures. */
export interface Fitted {
  readonly sketch: Sketch;
  /** Of the page with the drawing, but for the scale. */
  readonly facts: Omit<FrameFacts, "scale">;
  /** Title of the pages that hold only figures. */
  readonly figuresTitle: string;
  /** The first belongs beside the drawing; the others follow where there is room, else on pages of their own. */
  readonly parts: readonly Part[];
  /** What follows where the running chains had no room for every figure: all of them. */
  readonly allFigures: readonly Part[];
}

interface ScaledPage {
  readonly ratio: number;
  readonly size: PageSize;
  readonly facts: FrameFacts;
  readonly area: Box;
  readonly drawing: Box;
}

interface Candidate extends ScaledPage {
  /** Parts that found no room on the page of the drawing. */
  readonly waiting: number;
}

/**
 * The page with the drawing and those that its figures run over to. The scale is the largest round one that fits the
 * paper either way up, or half of it where everything then stands on one page: one sheet is not lost from another.
 */
export function fittedPages(order: Order, fitted: Fitted): { pages: Body[]; whole: Body } {
  const chosen = choose(order, fitted);
  const { items, leftOut, dropped } = drawSketch(
    fitted.sketch,
    { ratio: chosen.ratio, heights: HEIGHTS },
    chosen.drawing,
  );
  const parts = [
    ...withNote(order, fitted.parts, leftOut + dropped),
    ...(dropped === 0 ? [] : fitted.allFigures),
  ];
  const beside = fill(parts, freeBoxes(chosen.area, chosen.drawing), GAP_MM);
  const first = body(chosen.size, chosen.facts, [...items, ...beside.items]);
  if (beside.rest.length === 0) return { pages: [first], whole: first };
  return {
    pages: [first, ...figurePages(order, fitted, beside.rest)],
    whole: wholeBody(chosen, items, parts),
  };
}

const body = (size: PageSize, frame: FrameFacts, items: readonly Item[]): Body => ({
  ...size,
  title: frame.title,
  frame,
  items,
});

function withNote(order: Order, parts: readonly Part[], leftOut: number): readonly Part[] {
  if (leftOut === 0) return parts;
  const said = order.words.marking.moreInTable(leftOut);
  const note = whole(({ x, y, widthMm }) => textBlock(said, { x, y, widthMm, capMm: 2.5, face: "bold" }));
  return [...parts.slice(0, 1), note, ...parts.slice(1)];
}

function choose(order: Order, fitted: Fitted): Candidate {
  const ratios = ratiosFor(order.job.room.units);
  const largest = firstOf(ratios, (ratio) => bestAt(order, fitted, ratio));
  if (largest === null) return forced(order, fitted);
  if (largest.waiting === 0) return largest;
  const smaller = ratios.filter(
    (ratio) => ratio > largest.ratio && ratio <= Math.min(2 * largest.ratio, LEAST_READABLE),
  );
  const onOnePage = (ratio: number): Candidate | null => {
    const best = bestAt(order, fitted, ratio);
    return best?.waiting === 0 ? best : null;
  };
  return firstOf(smaller, onOnePage) ?? largest;
}

/** The first answer that is one; nothing is asked after it. */
function firstOf<Asked, Answer>(
  all: readonly Asked[],
  answer: (asked: Asked) => Answer | null,
): Answer | null {
  for (const each of all) {
    const found = answer(each);
    if (found !== null) return found;
  }
  return null;
}

/** Of both ways up at one ratio the one that leaves fewer parts waiting; null where neither holds the drawing. */
function bestAt(order: Order, fitted: Fitted, ratio: number): Candidate | null {
  const fitting = liesOf(order)
    .map((size) => scaled(order, fitted, ratio, size))
    .filter(({ area, drawing }) => drawing.widthMm <= area.widthMm && drawing.heightMm <= area.heightMm)
    .map((placed) => candidate(fitted, placed));
  return fitting.reduce<Candidate | null>(
    (best, each) => (best === null || each.waiting < best.waiting ? each : best),
    null,
  );
}

function liesOf({ reading: { widthMm, heightMm } }: Order): PageSize[] {
  return [
    { widthMm, heightMm },
    { widthMm: heightMm, heightMm: widthMm },
  ];
}

function scaled(order: Order, fitted: Fitted, ratio: number, size: PageSize): ScaledPage {
  const facts = { ...fitted.facts, scale: order.words.frame.fitted(ratioText(ratio)) };
  const area = inside(frameArea(order, facts, size));
  const drawing = { ...point(area.x, area.y), ...sketchSize(fitted.sketch, { ratio, heights: HEIGHTS }) };
  return { ratio, size, facts, area, drawing };
}

function candidate({ parts }: Fitted, page: ScaledPage): Candidate {
  const { area, drawing } = page;
  const { rest } = fill(parts, freeBoxes(area, drawing), GAP_MM);
  return { ...page, drawing: centred(area, drawing), waiting: rest.length };
}

/** In the middle of the page where nothing finds room beside it. */
function centred(area: Box, drawing: Box): Box {
  const aside = freeBoxes(area, drawing).some(({ x }) => x > area.x);
  return aside ? drawing : { ...drawing, x: area.x + Math.max(0, (area.widthMm - drawing.widthMm) / 2) };
}

/** The smallest ratio on paper that holds it in no way: its words may leave the page, its figures stand in the table. */
function forced(order: Order, fitted: Fitted): Candidate {
  const ratio = ratiosFor(order.job.room.units).at(-1) ?? 1;
  const [size = order.reading] = liesOf(order);
  return candidate(fitted, scaled(order, fitted, ratio, size));
}

/** Without a strip at the top and the bottom, for accents over capitals and tails under lines. */
const inside = (area: Box): Box => ({ ...area, y: area.y + AIR_MM, heightMm: area.heightMm - 2 * AIR_MM });

function figurePages(order: Order, { facts, figuresTitle }: Fitted, parts: readonly Part[]): Body[] {
  const frame: FrameFacts = {
    ...facts,
    title: figuresTitle,
    view: null,
    hold: null,
    front: null,
    scale: order.words.frame.notToScale,
  };
  const area = inside(frameArea(order, frame, order.reading));
  return flow(parts, area, GAP_MM).map((items) => body(order.reading, frame, items));
}

/** The drawing with all its figures on one page as long as they need: what SVG shows. */
function wholeBody(
  { size, facts, area, drawing }: Candidate,
  items: readonly Item[],
  parts: readonly Part[],
): Body {
  const y = drawing.y + drawing.heightMm + 2 * GAP_MM;
  const below = { x: area.x, y, widthMm: area.widthMm, heightMm: Number.MAX_SAFE_INTEGER };
  const figures = fill(parts, [below], GAP_MM);
  const [usedMm = 0] = figures.usedMm;
  const heightMm = Math.max(size.heightMm, size.heightMm - area.heightMm + (y - area.y) + usedMm);
  return body({ ...size, heightMm }, facts, [...items, ...figures.items]);
}
