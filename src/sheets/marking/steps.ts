import { dashed, line, PEN, point } from "../../drawing/pen.js";
import { measureText, wrapText } from "../../drawing/text.js";
import { type Block, LINE_PITCH, textBlock } from "../../drawing/text-block.js";
import { distanceMm } from "../../geometry/surface-point.js";
import { CHECK_TAPE_WITHIN_MM } from "../../standards/cutting-practice.js";
import { feetInches, millimetres } from "../../units/format.js";
import { toleranceFigures } from "../cut-figures.js";
import { type Figures, figuresOf } from "../figures.js";
import { type Part, whole } from "../flow.js";
import type { Order } from "../sheet.js";
import { facesAt } from "../tapes.js";
import { unbroken } from "../unbroken.js";
import { insideSpans } from "./spans.js";
import type { SurfaceStage } from "./surface-stage.js";

const CAP_MM = 2.5;
/** Room to write on by hand. */
const LINE_MM = 45;
const WRITING_HEIGHT_MM = 8;

/**
 * The order of work, each caution at the step that it belongs to: square, mark, check, look, cut, count; and who is
 * called when something differs.
 */
export function stepParts(order: Order, at: SurfaceStage): Part[] {
  const { steps, stop, stopBlank } = order.words.marking;
  const { call, units } = order.job.room;
  return [
    call === null ? writing(stopBlank, "bold") : saying(stop(call), "bold"),
    ...squareParts(order, at),
    saying(steps.mark[facesAt(at.stage)]),
    ...(isSloped(at) ? [saying(steps.slope, "bold")] : []),
    saying(steps.check(tolerated(CHECK_TAPE_WITHIN_MM, order))),
    saying(steps.look, "bold"),
    ...surfaceCautions(order, at).map((words) => saying(words, "bold")),
    saying(steps.cut(toleranceFigures(units).main)),
    writing(steps.counted),
  ];
}

function surfaceCautions({ words }: Order, { surface }: SurfaceStage): string[] {
  const { steps } = words.marking;
  return [
    ...(surface.framing.kind === "known" && surface.framing.engineered ? [steps.engineered] : []),
    ...(surface.rated ? [steps.rated] : []),
    ...(surface.secondSupport ? [steps.support] : []),
    ...(surface.insulation === null ? [] : [steps.insulation(surface.insulation)]),
  ];
}

/** A ceiling whose normal is not plumb. */
const isSloped = ({ surface }: SurfaceStage): boolean =>
  surface.kind === "ceiling" && Math.hypot(surface.frame.n.x, surface.frame.n.y) > 1e-9;

/** Both diagonals where the outline has four corners; of another outline two that lie inside it. */
function squareParts(order: Order, at: SurfaceStage): Part[] {
  const [first, second, third, fourth] = at.edges.map(({ from }) => from);
  if (at.edges.length !== 4 || !first || !second || !third || !fourth) return shapeParts(order, at);
  const { units } = order.job.room;
  const { steps } = order.words.marking;
  const within = diagonalsWithinMm(distanceMm(first, second), distanceMm(second, third));
  const square = steps.square(
    said(figuresOf(distanceMm(first, third), units)),
    said(figuresOf(distanceMm(second, fourth), units)),
    tolerated(within, order),
  );
  return [together(saying(square), writing(steps.squareFound))];
}

const said = ({ main, others }: Figures): string => `${main} (${others})`;

/** From corner to corner, each named by its two walls: what proves an outline that no diagonals make square. */
function shapeParts(order: Order, { edges }: SurfaceStage): Part[] {
  const { steps } = order.words.marking;
  const { units } = order.job.room;
  const spans = insideSpans(edges).map(({ from, to, mm }) => ({
    from,
    to,
    figure: said(figuresOf(mm, units)),
  }));
  if (spans.length === 0) return [];
  const shape = steps.shape(spans, tolerated(CHECK_TAPE_WITHIN_MM, order));
  return [together(saying(shape), writing(steps.squareFound))];
}

/** Two short parts that no page break may part. */
const together = (first: Part, second: Part): Part =>
  whole((place) => {
    const above = first(place, true);
    const y = place.y + (above?.heightMm ?? 0);
    const below = second({ ...place, y }, true);
    return {
      items: [...(above?.draw() ?? []), ...(below?.draw() ?? [])],
      heightMm: (above?.heightMm ?? 0) + (below?.heightMm ?? 0),
    };
  });

/**
 * How far the diagonals of a surface may differ before an opening at its far end is off by more than an opposite tape
 * may be: with sides a and b and a skew s over the longer, the diagonals differ by 2 a b s / (longer x diagonal),
 * which is the law of cosines to the first order.
 */
export function diagonalsWithinMm(a: number, b: number): number {
  return (2 * Math.min(a, b) * CHECK_TAPE_WITHIN_MM) / Math.hypot(a, b);
}

/** What is allowed, never rounded up. */
export function tolerated(mm: number, { job }: Order): string {
  const rounding = "down";
  const figure = job.room.units === "metric" ? millimetres(mm, { rounding }) : feetInches(mm, { rounding });
  return unbroken(figure.plain);
}

const saying = (words: string, face: "regular" | "bold" = "regular"): Part =>
  whole(({ x, y, widthMm }) => textBlock(words, { x, y, widthMm, capMm: CAP_MM, face }));

/** Words and a line to write on after them. */
export const writing = (words: string, face: "regular" | "bold" = "regular"): Part =>
  whole(({ x, y, widthMm }) => withLine(words, face, { x, y, widthMm }));

function withLine(
  words: string,
  face: "regular" | "bold",
  { x, y, widthMm }: { x: number; y: number; widthMm: number },
): Block {
  const lineMm = Math.min(LINE_MM, widthMm / 2);
  const column = { widthMm: widthMm - lineMm - 2, capMm: CAP_MM, face };
  const widths = wrapText(words, column).map((each) => measureText(each, column).widthMm);
  const start = x + Math.max(...widths) + 2;
  const heightMm = Math.max(widths.length * CAP_MM * LINE_PITCH, WRITING_HEIGHT_MM);
  const block = textBlock(words, { ...column, x, y: y + heightMm - widths.length * CAP_MM * LINE_PITCH });
  const foot = y + heightMm - 1.5;
  const rule = line(point(start, foot), point(start + lineMm, foot), dashed(PEN.fine, 0.8, 0.8));
  return { items: [...block.items, rule], heightMm };
}
