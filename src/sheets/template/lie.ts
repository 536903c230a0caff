import type { Item, Window } from "../../drawing/drawing.js";
import { layer } from "../../drawing/pen.js";
import { type Block, stack } from "../../drawing/text-block.js";
import type { Lie } from "../../drawing/tiles.js";
import type { Opening } from "../../job.js";
import { MAX_PAGE_SIDE_MM } from "../../standards/paper.js";
import { frameArea, type PageSize } from "../frame.js";
import type { FrameFacts, Order } from "../sheet.js";
import type { Stage } from "../tapes.js";
import { bandOf, narrowestMm } from "./band.js";
import type { Place } from "./data-boxes.js";
import { edgeNames, insideEdges } from "./page-edges.js";
import { templateExtents } from "./template-drawing.js";

/** Which opening is to be drawn for whom, and when its sheet is used. */
export interface Task {
  readonly order: Order;
  readonly opening: Opening;
  readonly stage: Stage;
  readonly facts: FrameFacts;
  /** The openings that it serves one as the other; empty for the template of a single one. */
  readonly alike: readonly Opening[];
  /** Notes for which the drawing has no room, so that the band carries them. */
  readonly notes: readonly string[];
}

/** A page with its edges named and its band of figures drawn; what is left is for the drawing. */
export interface TemplateLie extends Lie {
  readonly items: readonly Item[];
}

const GAP_MM = 2;

/** Where the figures stand: over the drawing, beside it, or the size over it and the place beside it. */
type Setting = "above" | "beside" | "both";

/** Every way for the paper to lie and for the figures to stand. */
export function liesOn(task: Task): TemplateLie[] {
  const { paper } = task.order;
  if (paper.kind === "roll") return [longEnough(task, paper.widthMm)];
  const { widthMm, heightMm } = paper;
  const sizes = [paper, { widthMm: heightMm, heightMm: widthMm }];
  return (["above", "beside", "both"] as const).flatMap((setting) =>
    sizes.map((size) => lieOf(task, size, setting)),
  );
}

/** Every way for the paper to lie with all of it for the drawing: figures stand where that leaves room for them. */
export function bareLiesOn(task: Task): TemplateLie[] {
  const { paper } = task.order;
  if (paper.kind === "roll") return [];
  const { widthMm, heightMm } = paper;
  return [paper, { widthMm: heightMm, heightMm: widthMm }].map((size) =>
    lieWith(task, size, (area) => ({ items: [], area })),
  );
}

const lieOf = (task: Task, size: PageSize, setting: Setting): TemplateLie =>
  lieWith(task, size, (inner) => settle(task, inner, setting));

/** Figures in an area of a page, and what they leave of it. */
interface Settled {
  readonly items: readonly Item[];
  readonly area: Window;
}

function lieWith(
  { order, opening, facts }: Task,
  { widthMm, heightMm }: PageSize,
  set: (inner: Window) => Settled,
): TemplateLie {
  const outer = frameArea(order, facts, { widthMm, heightMm });
  const { items, area } = set(insideEdges(order, opening.surface, outer));
  const names = edgeNames(order, opening, outer);
  return { widthMm, heightMm, area, items: [layer("notes", [...names, ...items])] };
}

/** The figures in an area, and what they leave of it; no height where they themselves have no room. */
function settle(task: Task, inner: Window, setting: Setting): Settled {
  const band = bandOf(task);
  const columnMm = setting === "above" ? 0 : narrowestMm(task);
  const over = {
    above: [band.all, band.notes],
    beside: [],
    both: [band.size, band.notes],
  };
  const aside = { above: [], beside: [band.all, band.notes], both: [band.place] };
  const top = written(over[setting], inner);
  const below = inner.y + top.heightMm;
  const column = written(aside[setting], { ...inner, y: below, widthMm: columnMm });
  const takenMm = columnMm === 0 ? 0 : columnMm + GAP_MM;
  const leftMm = inner.heightMm - top.heightMm;
  return {
    items: [...top.items, ...column.items],
    area: {
      x: inner.x + takenMm,
      y: below,
      widthMm: inner.widthMm - takenMm,
      heightMm: column.heightMm > leftMm ? 0 : leftMm,
    },
  };
}

/** Parts one under the other, with air after the last; nothing takes no height. */
function written(parts: readonly ((place: Place) => Block)[], place: Place): Block {
  return stack(
    place.y,
    parts.map((part) => (y: number) => {
      const block = part({ ...place, y });
      return { ...block, heightMm: block.heightMm === 0 ? 0 : block.heightMm + GAP_MM };
    }),
  );
}

/** A page of that width, as long as figures and drawing need. */
function longEnough(task: Task, widthMm: number): TemplateLie {
  const trial = lieOf(task, { widthMm, heightMm: MAX_PAGE_SIDE_MM }, "above");
  const neededMm = templateExtents(task.opening).wanted.heightMm - trial.area.heightMm;
  const heightMm = Math.min(MAX_PAGE_SIDE_MM + neededMm, MAX_PAGE_SIDE_MM);
  return lieOf(task, { widthMm, heightMm }, "above");
}

/** Wide enough for the band of figures, in mm. */
const READABLE_MM = 190;

/** A page of its own exact size around the whole drawing. */
export function wholeLie(task: Task): TemplateLie {
  const { order, opening, facts } = task;
  const trial = { widthMm: 1000, heightMm: 1000 };
  const outsideMm =
    trial.widthMm - insideEdges(order, opening.surface, frameArea(order, facts, trial)).widthMm;
  return longEnough(task, outsideMm + Math.max(READABLE_MM, templateExtents(opening).wanted.widthMm));
}
