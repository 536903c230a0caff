import type { Page } from "../drawing/drawing.js";
import { aimStrips } from "./aim-strip.js";
import { cableLabels } from "./cable-labels.js";
import { cablePlan } from "./cable-plan.js";
import { cableSchedule } from "./cable-schedule.js";
import { checkLists } from "./check-lists.js";
import { coverListing } from "./cover.js";
import { floorMarks } from "./floor-marks.js";
import { frameItems } from "./frame.js";
import { grilleSchedule } from "./grille-schedule.js";
import { listeningPlan } from "./listening-plan.js";
import { listeningReport } from "./listening-report.js";
import { markerSheets } from "./marker-sheet.js";
import { templatesToMake } from "./opening-template.js";
import { pageCountOf } from "./page-count.js";
import { rulerSheet } from "./ruler-page.js";
import { bracketSchedule, openingSchedule } from "./schedules.js";
import type { Body, Order, Sheet, Trade } from "./sheet.js";
import { sideView } from "./side-view.js";
import { soundCheck } from "./sound-check.js";
import { storyPoles } from "./story-pole.js";
import { fullSizeMarks, surfacesToDraw } from "./surface-marks.js";
import { terminalCards } from "./terminal-cards.js";

/** A page as it is printed, with what it belongs to. */
export interface PrintedPage {
  readonly sheet: string;
  readonly trades: readonly Trade[];
  /** Sheet number of how many, as its frame says. */
  readonly number: number;
  /** True for label stock, which carries no frame. */
  readonly stock: boolean;
  readonly page: Page;
  /** The page before it was framed. */
  readonly body: Body;
}

export interface Packet {
  readonly pages: readonly PrintedPage[];
  /** Drawings whole, by the sheet's name, each drawn when it is asked for. */
  readonly drawings: readonly { readonly sheet: string; readonly draw: () => Page }[];
}

/** Sheets that are made at one go. */
type Lot = () => readonly Sheet[];

const atOnce =
  (make: (order: Order) => readonly Sheet[]) =>
  (order: Order): readonly Lot[] => [() => make(order)];

/** For kinds of which each sheet takes long. */
const oneByOne =
  (toMake: (order: Order) => readonly (() => Sheet)[]) =>
  (order: Order): readonly Lot[] =>
    toMake(order).map((make) => () => [make()]);

const TEMPLATES = oneByOne(templatesToMake);
const SURFACES = oneByOne(surfacesToDraw);
const LISTENING_PLAN = atOnce(listeningPlan);
const SIDE_VIEW = atOnce(sideView);

/** Kinds of sheet in the order of the packet; a new kind of sheet is one line here. */
const KINDS: readonly ((order: Order) => readonly Lot[])[] = [
  atOnce(rulerSheet),
  atOnce(floorMarks),
  atOnce(openingSchedule),
  SURFACES,
  atOnce(fullSizeMarks),
  atOnce(storyPoles),
  TEMPLATES,
  atOnce(bracketSchedule),
  atOnce(cableSchedule),
  atOnce(cablePlan),
  atOnce(markerSheets),
  atOnce(aimStrips),
  atOnce(terminalCards),
  atOnce(grilleSchedule),
  atOnce(checkLists),
  atOnce(listeningReport),
  LISTENING_PLAN,
  SIDE_VIEW,
  atOnce(soundCheck),
  atOnce(cableLabels),
];

/** Kinds that take long, the longest first (measured on the examples). */
const LONG: readonly (typeof KINDS)[number][] = [SURFACES, LISTENING_PLAN, SIDE_VIEW, TEMPLATES];

/** All sheets of a job but the cover, which counts them, in lots to be made one at a time or shared out. */
export interface Lots {
  /** In the packet's order. */
  readonly all: readonly Lot[];
  /** Their numbers, those that take long before the others: whoever shares them out ends with short ones. */
  readonly longestFirst: readonly number[];
}

export function lotsOf(order: Order): Lots {
  const ranked = KINDS.flatMap((kind) => {
    const rank = LONG.includes(kind) ? LONG.indexOf(kind) : LONG.length;
    return kind(order).map((lot) => ({ lot, rank }));
  });
  const longestFirst = ranked.map((_, number) => number);
  longestFirst.sort((one, other) => (ranked[one]?.rank ?? 0) - (ranked[other]?.rank ?? 0) || one - other);
  return { all: ranked.map(({ lot }) => lot), longestFirst };
}

/** A sheet and the number of its first page in the packet. */
export interface NumberedSheet {
  readonly sheet: Sheet;
  readonly first: number;
}

/** Every sheet of a job in the packet's order, before its pages are framed; the cover lists the others. */
export function sheetsOf(order: Order): readonly NumberedSheet[] {
  const others = lotsOf(order).all.flatMap((make) => make());
  const sheets = [coverOf(order, others.map(countedSheet)), ...others];
  const { firsts } = numbersOf(sheets.map(pageCountOf));
  return sheets.map((sheet, index) => ({ sheet, first: firsts[index] ?? 1 }));
}

/** Every sheet of a job, numbered and framed; the cover counts the others, itself included. */
export const packet = (order: Order): Packet => packetOf(order, (sheets) => sheets);

/** The sheets that are chosen among all those of a job, framed with the numbers that they have in the whole packet. */
export function packetOf(
  order: Order,
  choose: (all: readonly NumberedSheet[]) => readonly NumberedSheet[],
): Packet {
  const all = sheetsOf(order);
  const { of } = numbersOf(all.map(({ sheet }) => pageCountOf(sheet)));
  return packetFrom(choose(all).map(({ sheet, first }) => printedSheet(order, sheet, { number: first, of })));
}

export const packetFrom = (sheets: readonly Packet[]): Packet => ({
  pages: sheets.flatMap(({ pages }) => pages),
  drawings: sheets.flatMap(({ drawings }) => drawings),
});

/** What the cover says of another sheet. */
export interface CountedSheet extends Pick<Sheet, "title" | "trades"> {
  readonly pageCount: number;
}

export const countedSheet = (sheet: Sheet): CountedSheet => ({
  title: sheet.title,
  trades: sheet.trades,
  pageCount: pageCountOf(sheet),
});

/** The cover, which lists the others; its own pages come before theirs. */
export const coverOf = (order: Order, others: readonly CountedSheet[]): Sheet =>
  coverListing(order, (coverPages) => contents(others, coverPages));

function contents(sheets: readonly CountedSheet[], coverPages: number) {
  const { firsts } = numbersOf(sheets.map(({ pageCount }) => pageCount));
  return sheets.map(({ title, trades, pageCount }, index) => ({
    title,
    trades,
    pages: pageCount,
    first: (firsts[index] ?? 1) + coverPages,
  }));
}

/** Number of each sheet's first page, from 1, and how many pages there are. */
export function numbersOf(pageCounts: readonly number[]): {
  readonly firsts: readonly number[];
  readonly of: number;
} {
  let next = 1;
  const firsts = pageCounts.map((count) => {
    const first = next;
    next += count;
    return first;
  });
  return { firsts, of: next - 1 };
}

/** Which page of how many, as its frame says. */
export interface Numbering {
  readonly number: number;
  readonly of: number;
}

/** A sheet's pages framed, the first of them with `first`, and its drawing where it has one. */
export const printedSheet = (order: Order, sheet: Sheet, first: Numbering): Packet => ({
  pages: printed(order, sheet, first),
  drawings: drawing(order, sheet, first),
});

function printed(order: Order, sheet: Sheet, { number: first, of }: Numbering): PrintedPage[] {
  return sheet.pages.map((body, index) => ({
    sheet: sheet.name,
    trades: sheet.trades,
    number: first + index,
    stock: body.frame === null,
    page: framed(order, body, { number: first + index, of }),
    body,
  }));
}

function drawing(order: Order, { name, whole }: Sheet, numbering: Numbering): Packet["drawings"] {
  if (whole === null) return [];
  return [{ sheet: name, draw: () => framed(order, whole(), numbering) }];
}

function framed(order: Order, body: Body, numbering: Numbering): Page {
  const frame = {
    kind: "group" as const,
    layer: "notes" as const,
    items: frameItems(order, body, numbering),
  };
  return {
    widthMm: body.widthMm,
    heightMm: body.heightMm,
    title: body.title,
    language: order.languages[0] ?? "en",
    items: [...body.items, frame],
  };
}
