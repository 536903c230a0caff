import type { Item } from "../../drawing/drawing.js";
import { textBlock } from "../../drawing/text-block.js";
import { flow, type Part, whole } from "../flow.js";
import { frameArea, type PageSize } from "../frame.js";
import type { Body, FrameFacts, Order } from "../sheet.js";
import { fill, freeBoxes } from "./free-boxes.js";
import { chooseForm, type Fitted, GAP_MM, HEIGHTS, inside, type ScaledPage } from "./page-choice.js";
import { drawSketch } from "./sketch.js";

/** The page with the drawing and those that its figures run over to; and both on one page as long as it takes. */
export function fittedPages(order: Order, fitted: Fitted): { pages: Body[]; whole: () => Body } {
  const { form, page } = chooseForm(order, fitted);
  const { items, leftOut, dropped } = drawSketch(
    form.sketch,
    { ratio: page.ratio, heights: HEIGHTS },
    page.drawing,
  );
  const parts = [
    ...withNote(order, form.parts, leftOut + dropped),
    ...(dropped === 0 || form.tabled === true ? [] : fitted.allFigures),
  ];
  const beside = fill(parts, freeBoxes(page.area, page.drawing), GAP_MM);
  const first = body(page.size, page.facts, [...items, ...beside.items]);
  if (beside.rest.length === 0) return { pages: [first], whole: () => first };
  return {
    pages: [first, ...figurePages(order, fitted, beside.rest)],
    whole: () => wholeBody(page, items, parts),
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
  { size, facts, area, drawing }: ScaledPage,
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
