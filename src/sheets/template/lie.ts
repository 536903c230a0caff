import type { Item, Window } from "../../drawing/drawing.js";
import { type DrawnLater, stackLater } from "../../drawing/drawn-later.js";
import { layer } from "../../drawing/pen.js";
import type { Lie } from "../../drawing/tiles.js";
import type { Opening } from "../../job.js";
import { MAX_PAGE_SIDE_MM } from "../../standards/paper.js";
import { frameArea, type PageSize } from "../frame.js";
import type { FrameFacts, Order } from "../sheet.js";
import type { Stage } from "../tapes.js";
import { type BandData, bandData, bandOf, narrowestMm } from "./band.js";
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

/** A task with its figures worked out: every way for the paper to lie asks for them. */
export interface Drafted extends Task {
  readonly data: BandData;
}

export const drafted = (task: Task): Drafted => ({ ...task, data: bandData(task) });

/** A page with its edges named and its band of figures; what is left is for the drawing. */
export interface TemplateLie extends Lie {
  readonly draw: () => readonly Item[];
}

const GAP_MM = 2;

/** Where the figures stand: over the drawing, beside it, or the size over it and the place beside it. */
type Setting = "above" | "beside" | "both";

/** Every way for the paper to lie and for the figures to stand. */
export function liesOn(task: Drafted): TemplateLie[] {
  const { paper } = task.order;
  if (paper.kind === "roll") return [longEnough(task, paper.widthMm)];
  const sheets = bothWays(paper).map((size) => sheetOf(task, size));
  return (["above", "beside", "both"] as const).flatMap((setting) =>
    sheets.map((sheet) => lieOn(task, sheet, setting)),
  );
}

/** Every way for the paper to lie with all of it for the drawing: figures stand where that leaves room for them. */
export function bareLiesOn(task: Task): TemplateLie[] {
  const { paper } = task.order;
  if (paper.kind === "roll") return [];
  return bothWays(paper).map((size) => {
    const sheet = sheetOf(task, size);
    return lieWith(task, sheet, { area: sheet.inner, draw: () => [] });
  });
}

const bothWays = ({ widthMm, heightMm }: PageSize): readonly PageSize[] => [
  { widthMm, heightMm },
  { widthMm: heightMm, heightMm: widthMm },
];

/** A page, the area inside its frame, and that inside its edges' names. */
interface PaperSheet {
  readonly size: PageSize;
  readonly outer: Window;
  readonly inner: Window;
}

function sheetOf({ order, opening, facts }: Task, size: PageSize): PaperSheet {
  const outer = frameArea(order, facts, size);
  return { size, outer, inner: insideEdges(order, opening.surface, outer) };
}

const lieOf = (task: Drafted, size: PageSize, setting: Setting): TemplateLie =>
  lieOn(task, sheetOf(task, size), setting);

const lieOn = (task: Drafted, sheet: PaperSheet, setting: Setting): TemplateLie =>
  lieWith(task, sheet, settle(task, sheet.inner, setting));

/** Figures in an area of a page, and what they leave of it. */
interface Settled {
  readonly area: Window;
  readonly draw: () => readonly Item[];
}

function lieWith({ order, opening }: Task, { size, outer }: PaperSheet, settled: Settled): TemplateLie {
  return {
    ...size,
    area: settled.area,
    draw: () => [layer("notes", [...edgeNames(order, opening, outer), ...settled.draw()])],
  };
}

/** The figures in an area, and what they leave of it; no height where they themselves have no room. */
function settle({ data, notes }: Drafted, inner: Window, setting: Setting): Settled {
  const band = bandOf(data, notes);
  const columnMm = setting === "above" ? 0 : narrowestMm(data);
  const over = {
    above: [band.all, band.notes],
    beside: [],
    both: [band.size, band.notes],
  };
  const aside = { above: [], beside: [band.all, band.notes], both: [band.place] };
  const top = under(over[setting], inner);
  const below = inner.y + top.heightMm;
  const column = under(aside[setting], { ...inner, y: below, widthMm: columnMm });
  const takenMm = columnMm === 0 ? 0 : columnMm + GAP_MM;
  const leftMm = inner.heightMm - top.heightMm;
  return {
    draw: () => [...top.draw(), ...column.draw()],
    area: {
      x: inner.x + takenMm,
      y: below,
      widthMm: inner.widthMm - takenMm,
      heightMm: column.heightMm > leftMm ? 0 : leftMm,
    },
  };
}

/** Parts one under the other, with air after the last; nothing takes no height. */
const under = (parts: readonly ((place: Place) => DrawnLater)[], place: Place): DrawnLater =>
  stackLater(
    place.y,
    parts.map((part) => (y: number) => part({ ...place, y })),
    GAP_MM,
  );

/** A page of that width, as long as figures and drawing need. */
function longEnough(task: Drafted, widthMm: number): TemplateLie {
  const trial = lieOf(task, { widthMm, heightMm: MAX_PAGE_SIDE_MM }, "above");
  const neededMm = templateExtents(task.opening).wanted.heightMm - trial.area.heightMm;
  const heightMm = Math.min(MAX_PAGE_SIDE_MM + neededMm, MAX_PAGE_SIDE_MM);
  return lieOf(task, { widthMm, heightMm }, "above");
}

/** Wide enough for the band of figures, in mm. */
const READABLE_MM = 190;

/** A page of its own exact size around the whole drawing. */
export function wholeLie(task: Drafted): TemplateLie {
  const { order, opening, facts } = task;
  const trial = { widthMm: 1000, heightMm: 1000 };
  const outsideMm =
    trial.widthMm - insideEdges(order, opening.surface, frameArea(order, facts, trial)).widthMm;
  return longEnough(task, outsideMm + Math.max(READABLE_MM, templateExtents(opening).wanted.widthMm));
}
