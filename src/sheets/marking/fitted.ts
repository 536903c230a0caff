import type { Item } from "../../drawing/drawing.js";
import type { Box } from "../../drawing/pen.js";
import { wrapText } from "../../drawing/text.js";
import { textBlock } from "../../drawing/text-block.js";
import { flow, flowed, type Part, whole } from "../flow.js";
import { frameArea, type PageSize } from "../frame.js";
import { countedWhenAsked, type Making } from "../page-count.js";
import type { Body, FrameFacts, Order, Sheet } from "../sheet.js";
import { type Filled, fill, freeBoxes } from "./free-boxes.js";
import {
  type Choice,
  chooseForm,
  type Fitted,
  GAP_MM,
  HEIGHTS,
  inside,
  type ScaledPage,
} from "./page-choice.js";
import { drawSketch } from "./sketch.js";

/** Pages that may be counted before they are drawn. */
export interface FittedPages extends Making {
  /** The page with the drawing and those that its figures run over to. */
  readonly draw: () => readonly Body[];
  /** Both on one page as long as it takes. */
  readonly whole: () => Body;
}

/** A drawing with its figures at the scale that suits its paper. */
export function fittedPages(order: Order, fitted: Fitted): FittedPages {
  const choice = chooseForm(order, fitted);
  let known: Drawn | null = null;
  const drawn = (): Drawn => {
    known ??= drawnAs(order, fitted, choice);
    return known;
  };
  return {
    count: () => countedBefore(order, fitted, choice),
    draw: () => drawn().pages,
    whole: () => drawn().whole(),
  };
}

/** Drawings of one sheet, one after the other. */
export const inOneSheet = (
  sheet: Omit<Sheet, "pages" | "pageCount" | "whole">,
  drawings: readonly FittedPages[],
): Sheet =>
  countedWhenAsked(
    { ...sheet, whole: null },
    { count: () => countOfAll(drawings), draw: () => drawings.flatMap(({ draw }) => draw()) },
  );

function countOfAll(drawings: readonly FittedPages[]): number | null {
  const counts = drawings.flatMap(({ count }) => count() ?? []);
  return counts.length < drawings.length ? null : counts.reduce((sum, count) => sum + count, 0);
}

interface Drawn {
  readonly pages: readonly Body[];
  readonly whole: () => Body;
}

function drawnAs(order: Order, fitted: Fitted, choice: Choice): Drawn {
  const { form, page } = choice;
  const { items, leftOut } = drawSketch(form.sketch, { ratio: page.ratio, heights: HEIGHTS }, page.drawing);
  const parts = partsWith(order, fitted, choice, leftOut + page.dropped);
  const beside = besideWith(choice, parts);
  const first = body(page.size, page.facts, [...items, ...beside.draw()]);
  if (beside.rest.length === 0) return { pages: [first], whole: () => first };
  return {
    pages: [first, ...figurePages(order, fitted, beside.rest)],
    whole: () => wholeBody(page, items, parts),
  };
}

/** The parts of a form where so many words and figures found no place on its drawing. */
function partsWith(order: Order, fitted: Fitted, { form, page }: Choice, missing: number): readonly Part[] {
  const parts = missing === 0 ? form.parts : withNote(order, form.parts, missing);
  return page.dropped === 0 || form.tabled === true ? parts : [...parts, ...fitted.allFigures()];
}

/** What stands beside the drawing: laid out already where nothing was added to what its page was chosen by. */
const besideWith = ({ form, page }: Choice, parts: readonly Part[]): Filled =>
  parts === form.parts ? page.beside : fill(parts, freeBoxes(page.area, page.drawing), GAP_MM);

/**
 * How many pages there will be, whatever finds no place on the drawing; null where that makes a difference.
 * Of all that is said only the note about it depends on that, by how many lines it takes, if it is there at all.
 */
function countedBefore(order: Order, fitted: Fitted, choice: Choice): number | null {
  const { area, drawing, dropped } = choice.page;
  const restsIn = (boxes: readonly Box[]): (readonly Part[])[] =>
    notesIn(order, dropped, boxes).map(
      (missing) => besideWith(choice, partsWith(order, fitted, choice, missing)).rest,
    );
  const boxes = freeBoxes(area, drawing);
  if (restsIn(boxes).every((rest) => rest.length === 0)) return 1;
  const figures = figuresPage(order, fitted);
  const [count = 1, ...others] = restsIn([...boxes, figures.area]).map(
    (rest) => 1 + (rest.length === 0 ? 0 : flowed(rest, figures.area, GAP_MM).pageCount),
  );
  return others.every((other) => other === count) ? count : null;
}

/**
 * No drawing has words for more. Figures are all of one width in the typeface, so that the note only grows with each
 * further digit.
 */
const MOST_MISSING = [10, 100, 1_000, 10_000, 100_000, 1_000_000];

/** A number for every form of the note that takes other lines than the others in some box, from the least that it can say. */
function notesIn({ words }: Order, dropped: number, boxes: readonly Box[]): number[] {
  const linesOf = (missing: number): string =>
    boxes
      .map(({ widthMm }) => wrapText(words.marking.moreInTable(missing), { ...NOTE, widthMm }).length)
      .join(" ");
  const all = [dropped, Math.max(dropped, 1), Math.max(dropped, 2), ...MOST_MISSING].filter(
    (missing) => missing >= dropped,
  );
  const forms = new Map(all.map((missing) => [missing === 0 ? "" : linesOf(missing), missing]));
  return [...forms.values()];
}

const body = (size: PageSize, frame: FrameFacts, items: readonly Item[]): Body => ({
  ...size,
  title: frame.title,
  frame,
  items,
});

const NOTE = { capMm: 2.5, face: "bold" } as const;

function withNote(order: Order, parts: readonly Part[], leftOut: number): readonly Part[] {
  const said = order.words.marking.moreInTable(leftOut);
  const note = whole(({ x, y, widthMm }) => textBlock(said, { x, y, widthMm, ...NOTE }));
  return [...parts.slice(0, 1), note, ...parts.slice(1)];
}

function figurePages(order: Order, fitted: Fitted, parts: readonly Part[]): Body[] {
  const { frame, area } = figuresPage(order, fitted);
  return flow(parts, area, GAP_MM).map((items) => body(order.reading, frame, items));
}

/** A page for what finds no room beside the drawing. */
function figuresPage(order: Order, { facts, figuresTitle }: Fitted): { frame: FrameFacts; area: Box } {
  const frame: FrameFacts = {
    ...facts,
    title: figuresTitle,
    view: null,
    hold: null,
    front: null,
    scale: order.words.frame.notToScale,
  };
  return { frame, area: inside(frameArea(order, frame, order.reading)) };
}

/** The drawing with all its figures on one page as long as they need: what SVG shows. */
function wholeBody(
  { size, facts, area, drawing }: ScaledPage,
  items: readonly Item[],
  parts: readonly Part[],
): Body {
  const y = drawing.y + drawing.heightMm + 2 * GAP_MM;
  const below = { x: area.x, y, widthMm: area.widthMm, heightMm: Number.MAX_SAFE_INTEGER };
  const figures = fill(parts, [below], GAP_MM);
  const [usedMm = 0] = figures.usedMm;
  const heightMm = Math.max(size.heightMm, size.heightMm - area.heightMm + (y - area.y) + usedMm);
  return body({ ...size, heightMm }, facts, [...items, ...figures.draw()]);
}
