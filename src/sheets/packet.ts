import type { Page } from "../drawing/drawing.js";
import { aimStrips } from "./aim-strip.js";
import { cableLabels } from "./cable-labels.js";
import { cablePlan } from "./cable-plan.js";
import { cableSchedule } from "./cable-schedule.js";
import { checkLists } from "./check-lists.js";
import { cover } from "./cover.js";
import { floorMarks } from "./floor-marks.js";
import { frameItems } from "./frame.js";
import { grilleSchedule } from "./grille-schedule.js";
import { listeningPlan } from "./listening-plan.js";
import { listeningReport } from "./listening-report.js";
import { markerSheets } from "./marker-sheet.js";
import { openingTemplates } from "./opening-template.js";
import { pageCountOf } from "./page-count.js";
import { rulerSheet } from "./ruler-page.js";
import { bracketSchedule, openingSchedule } from "./schedules.js";
import type { Body, Order, Sheet, Trade } from "./sheet.js";
import { sideView } from "./side-view.js";
import { soundCheck } from "./sound-check.js";
import { storyPoles } from "./story-pole.js";
import { fullSizeMarks, surfaceMarks } from "./surface-marks.js";
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
}

export interface Packet {
  readonly pages: readonly PrintedPage[];
  /** Drawings whole, by the sheet's name, each drawn when it is asked for. */
  readonly drawings: readonly { readonly sheet: string; readonly draw: () => Page }[];
}

/** Kinds of sheet in the order of the packet; a new kind of sheet is one line here. */
const SHEETS: readonly ((order: Order) => readonly Sheet[])[] = [
  rulerSheet,
  floorMarks,
  openingSchedule,
  surfaceMarks,
  fullSizeMarks,
  storyPoles,
  openingTemplates,
  bracketSchedule,
  cableSchedule,
  cablePlan,
  markerSheets,
  aimStrips,
  terminalCards,
  grilleSchedule,
  checkLists,
  listeningReport,
  listeningPlan,
  sideView,
  soundCheck,
  cableLabels,
];

/** A sheet and the number of its first page in the packet. */
export interface NumberedSheet {
  readonly sheet: Sheet;
  readonly first: number;
}

/** Every sheet of a job in the packet's order, before its pages are framed; the cover lists the others. */
export function sheetsOf(order: Order): readonly NumberedSheet[] {
  const others = SHEETS.flatMap((make) => make(order));
  const sheets = [covered(order, others), ...others];
  const firsts = firstNumbers(sheets);
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
  const of = all.reduce((sum, { sheet }) => sum + pageCountOf(sheet), 0);
  const sheets = choose(all);
  return {
    pages: sheets.flatMap(({ sheet, first }) => printed(order, sheet, first, of)),
    drawings: sheets.flatMap(({ sheet, first }) => drawing(order, sheet, first, of)),
  };
}

function covered(order: Order, others: readonly Sheet[]): Sheet {
  const drafted = cover(order, contents(others, 1));
  return cover(order, contents(others, drafted.pages.length));
}

function contents(sheets: readonly Sheet[], coverPages: number) {
  const firsts = firstNumbers(sheets);
  return sheets.map((sheet, index) => ({
    title: sheet.title,
    trades: sheet.trades,
    pages: pageCountOf(sheet),
    first: (firsts[index] ?? 1) + coverPages,
  }));
}

/** Number of each sheet's first page, from 1. */
function firstNumbers(sheets: readonly Sheet[]): number[] {
  let next = 1;
  return sheets.map((sheet) => {
    const first = next;
    next += pageCountOf(sheet);
    return first;
  });
}

function printed(order: Order, sheet: Sheet, first: number, of: number): PrintedPage[] {
  return sheet.pages.map((body, index) => ({
    sheet: sheet.name,
    trades: sheet.trades,
    number: first + index,
    stock: body.frame === null,
    page: framed(order, body, { number: first + index, of }),
  }));
}

function drawing(order: Order, sheet: Sheet, first: number, of: number): Packet["drawings"] {
  const { name, whole } = sheet;
  if (whole === null) return [];
  return [{ sheet: name, draw: () => framed(order, whole(), { number: first, of }) }];
}

function framed(order: Order, body: Body, numbering: { number: number; of: number }): Page {
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
