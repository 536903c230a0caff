import { MAX_PAGE_SIDE_MM, type Paper } from "../standards/paper.js";
import { fullSizeMarks } from "./full-size-marks.js";
import { type NumberedSheet, sheetsOf } from "./packet.js";
import type { Body, Order, Sheet } from "./sheet.js";
import { storyPoles } from "./story-pole.js";

/** A sheet that is not on paper any more as it should be. */
export interface SheetChange {
  readonly name: string;
  readonly title: string;
  /** Drawn otherwise, not in the old packet, or not in the new one. */
  readonly what: "changed" | "new" | "gone";
  /** Numbers, in the new packet, of its pages that the old one has nowhere; none of a sheet that is gone. */
  readonly pages: readonly number[];
  /** In no packet unless it is asked for by name. */
  readonly byName: boolean;
}

export interface Reprint {
  readonly changes: readonly SheetChange[];
  /** Pages of the new packet. */
  readonly all: number;
}

/**
 * Sheets of the new order that must be printed again, and those of the old one to be thrown away: found by drawing
 * both packets and comparing what stands on each page. What every page's frame says of the file and its revision does
 * not count, nor does the numbering.
 */
export function sheetsToReprint(before: Order, after: Order): Reprint {
  const [old, now] = [comparable(before), comparable(after)];
  const sheets = sheetsOf(now);
  return {
    changes: [...changes(sheetsOf(old), sheets, false), ...changes(byName(old), byName(now), true)],
    all: sheets.reduce((sum, { sheet }) => sum + sheet.pages.length, 0),
  };
}

const SAME_FILE = { file: "", fingerprint: "" };

/** The order with all that differs from file to file, whatever is drawn, made alike. */
function comparable(order: Order): Order {
  const { job } = order;
  return {
    ...order,
    job: {
      ...job,
      ...SAME_FILE,
      room: { ...job.room, job: { ...job.room.job, revision: "", date: null } },
      findings: job.findings.map((finding) => ({ ...finding, line: 0, column: 0 })),
    },
  };
}

/** As large as a page may be: sheets at full size are compared in as few parts as there are. */
const LARGEST: Paper = {
  kind: "sheet",
  name: "largest",
  widthMm: MAX_PAGE_SIDE_MM,
  heightMm: MAX_PAGE_SIDE_MM,
};

/** Sheets that this paper has in no packet. */
function byName(order: Order): readonly NumberedSheet[] {
  const large = { ...order, paper: LARGEST };
  const full = order.fullSize ? [] : fullSizeMarks({ ...large, fullSize: true });
  const poles = order.poles ? [] : storyPoles({ ...large, poles: true });
  return [...full, ...poles].map((sheet) => ({ sheet, first: 0 }));
}

function changes(
  before: readonly NumberedSheet[],
  after: readonly NumberedSheet[],
  isByName: boolean,
): readonly SheetChange[] {
  const named = (sheets: readonly NumberedSheet[], name: string): NumberedSheet | undefined =>
    sheets.find(({ sheet }) => sheet.name === name && sheet.pages.length > 0);
  const changeOf = ({ sheet, first }: NumberedSheet): readonly SheetChange[] => {
    if (sheet.pages.length === 0) return [];
    const was = named(before, sheet.name);
    const pages = newPages(was?.sheet.pages ?? [], sheet.pages);
    const isSame = pages.length === 0 && was?.sheet.pages.length === sheet.pages.length;
    if (isSame) return [];
    const numbers = isByName ? [] : pages.map((index) => first + index);
    return [
      changed(sheet, { what: was === undefined ? "new" : "changed", pages: numbers, byName: isByName }),
    ];
  };
  const gone = before
    .filter(({ sheet }) => sheet.pages.length > 0 && named(after, sheet.name) === undefined)
    .map(({ sheet }) => changed(sheet, { what: "gone", pages: [], byName: isByName }));
  return [...after.flatMap(changeOf), ...gone];
}

const changed = (
  { name, title }: Sheet,
  how: Pick<SheetChange, "what" | "pages" | "byName">,
): SheetChange => ({ name, title, ...how });

/** Which of the new pages are none of the old ones, each old one serving once. */
function newPages(before: readonly Body[], after: readonly Body[]): readonly number[] {
  const left = [...before];
  return after.flatMap((page, index) => {
    const found = left.findIndex((old) => isSameDrawing(pageOf(old), pageOf(page)));
    if (found < 0) return [index];
    left.splice(found, 1);
    return [];
  });
}

/** All that is on a page but its title, which may say which part of how many it is. */
const pageOf = ({ widthMm, heightMm, frame, items }: Body) => ({ widthMm, heightMm, frame, items });

/** Finer than any printer. Our own choice. */
const SEEN_MM = 1e-3;

/** Whether two drawings, or parts of them, cannot be told apart on paper. */
function isSameDrawing(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b) <= SEEN_MM;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) return areSameInTurn(a, b);
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSameDrawing(Reflect.get(a, key), Reflect.get(b, key)))
  );
}

function areSameInTurn(a: object, b: object): boolean {
  if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
  for (let index = 0; index < a.length; index += 1) if (!isSameDrawing(a[index], b[index])) return false;
  return true;
}
