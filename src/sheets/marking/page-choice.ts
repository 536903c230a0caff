import { type Box, point } from "../../drawing/pen.js";
import type { Part } from "../flow.js";
import { frameArea, type PageSize } from "../frame.js";
import type { FrameFacts, Order } from "../sheet.js";
import { type Filled, fill, freeBoxes } from "./free-boxes.js";
import { ratiosBeyond, ratioText, roundRatios } from "./scale.js";
import { outlineSize, type Sketch, type SketchSize, sketchSize } from "./sketch.js";
import type { Heights } from "./view.js";

export const HEIGHTS: Heights = { smallMm: 2.5, wallMm: 3.5, idMm: 3.5 };
export const GAP_MM = 2;
const AIR_MM = 1;
/** A drawing is not made smaller than this while there is a way round it. Our own choice: at 1:50 a stud is 1 mm. */
const LEAST_READABLE = 50;

/** One way to share what is to be said between the drawing and what stands beside it or follows. */
export interface Form {
  readonly sketch: Sketch;
  /** The first belongs beside the drawing; the others follow where there is room, else on pages of their own. */
  readonly parts: readonly Part[];
  /** True where all figures are among the parts, whatever the drawing has room for. */
  readonly tabled?: boolean;
}

/** A drawing at a round ratio with its figures. */
export interface Fitted {
  /** The fullest first: a plainer drawing is made and taken only where that one fits the paper at no round ratio. */
  readonly forms: readonly [Form, ...(() => Form)[]];
  /** Of the page with the drawing, but for the scale. */
  readonly facts: Omit<FrameFacts, "scale">;
  /** Title of the pages that hold only figures. */
  readonly figuresTitle: string;
  /** What follows where the running chains had no room for every figure: all of them. */
  readonly allFigures: () => readonly Part[];
}

export interface ScaledPage {
  readonly ratio: number;
  readonly size: PageSize;
  readonly facts: FrameFacts;
  readonly area: Box;
  readonly drawing: Box;
  /** Figures that the drawing's chains have no room for. */
  readonly dropped: number;
}

/** A page with what is said beside its drawing; what found no room there waits. */
interface Candidate extends ScaledPage {
  readonly beside: Filled;
}

export interface Choice {
  readonly form: Form;
  readonly page: Candidate;
}

type Facts = Fitted["facts"];

/**
 * The scale is the largest round one that fits the paper either way up, or half of it where everything then stands on
 * one page: one sheet is not lost from another. A plainer drawing that can be read is better than a fuller one that
 * cannot. On paper too small for any round one it is smaller still.
 */
export function chooseForm(order: Order, { forms, facts }: Fitted): Choice {
  const { units } = order.job.room;
  const [fullest, ...plainer] = forms;
  const all = [() => fullest, ...plainer];
  const among = (form: Form, ratios: readonly number[]): Choice | null => {
    const page = choosePage(order, form, { facts, ratios });
    return page === null ? null : { form, page };
  };
  const [readable, others] = parted(roundRatios(units), (ratio) => ratio <= LEAST_READABLE);
  return (
    firstOf(all, (form) => among(form(), readable)) ??
    firstOf(all, (form) => among(form(), others)) ??
    among(fullest, ratiosBeyond(units)) ?? { form: fullest, page: forced(order, fullest, facts) }
  );
}

/** Those that pass and those that do not. */
function parted<Each>(all: readonly Each[], passes: (each: Each) => boolean): readonly [Each[], Each[]] {
  return [all.filter(passes), all.filter((each) => !passes(each))];
}

interface Asked {
  readonly facts: Facts;
  readonly ratios: readonly number[];
}

function choosePage(order: Order, form: Form, { facts, ratios }: Asked): Candidate | null {
  const largest = firstOf(ratios, (ratio) => bestAt(order, form, { facts, ratio }));
  if (largest === null || waitingFor(largest) === 0) return largest;
  const smaller = ratios.filter(
    (ratio) => ratio > largest.ratio && ratio <= Math.min(2 * largest.ratio, LEAST_READABLE),
  );
  const onOnePage = (ratio: number): Candidate | null => {
    const best = bestAt(order, form, { facts, ratio });
    return best !== null && waitingFor(best) === 0 ? best : null;
  };
  return firstOf(smaller, onOnePage) ?? largest;
}

const waitingFor = ({ beside }: Candidate): number => beside.rest.length;

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

/**
 * Of both ways up at one ratio the one that leaves fewer parts waiting; null where neither holds the drawing. How large
 * the drawing is does not depend on the way up, and where its outline alone is too large nothing around it is measured.
 */
function bestAt(
  order: Order,
  form: Form,
  { facts, ratio }: { facts: Facts; ratio: number },
): Candidate | null {
  const outlined = outlineSize(form.sketch, ratio);
  const lies = liesOf(order).filter((size) => holds(size, outlined));
  if (lies.length === 0) return null;
  const drawn = sketchSize(form.sketch, { ratio, heights: HEIGHTS });
  let best: Candidate | null = null;
  for (const size of lies.filter((each) => holds(each, drawn))) {
    const page = scaled(order, drawn, { facts, ratio, size });
    if (!holds(page.area, page.drawing)) continue;
    const each = candidate(form, page);
    if (best === null || waitingFor(each) < waitingFor(best)) best = each;
    if (waitingFor(best) === 0) break;
  }
  return best;
}

const holds = (area: PageSize, drawing: PageSize): boolean =>
  drawing.widthMm <= area.widthMm && drawing.heightMm <= area.heightMm;

function liesOf({ reading: { widthMm, heightMm } }: Order): PageSize[] {
  return [
    { widthMm, heightMm },
    { widthMm: heightMm, heightMm: widthMm },
  ];
}

function scaled(
  order: Order,
  { dropped, ...drawn }: SketchSize,
  { facts: given, ratio, size }: { facts: Facts; ratio: number; size: PageSize },
): ScaledPage {
  const facts = { ...given, scale: order.words.frame.fitted(ratioText(ratio)) };
  const area = inside(frameArea(order, facts, size));
  return { ratio, size, facts, area, drawing: { ...point(area.x, area.y), ...drawn }, dropped };
}

function candidate({ parts }: Form, page: ScaledPage): Candidate {
  const { area, drawing } = page;
  const beside = fill(parts, freeBoxes(area, drawing), GAP_MM);
  return { ...page, drawing: centred(area, drawing), beside };
}

/** In the middle of the page where nothing finds room beside it. */
function centred(area: Box, drawing: Box): Box {
  const aside = freeBoxes(area, drawing).some(({ x }) => x > area.x);
  return aside ? drawing : { ...drawing, x: area.x + Math.max(0, (area.widthMm - drawing.widthMm) / 2) };
}

/** The smallest ratio on paper that holds it in no way: its words may leave the page, its figures stand in the table. */
function forced(order: Order, form: Form, facts: Facts): Candidate {
  const ratio = ratiosBeyond(order.job.room.units).at(-1) ?? 1;
  const [size = order.reading] = liesOf(order);
  const drawn = sketchSize(form.sketch, { ratio, heights: HEIGHTS });
  return candidate(form, scaled(order, drawn, { facts, ratio, size }));
}

/** Without a strip at the top and the bottom, for accents over capitals and tails under lines. */
export const inside = (area: Box): Box => ({
  ...area,
  y: area.y + AIR_MM,
  heightMm: area.heightMm - 2 * AIR_MM,
});
