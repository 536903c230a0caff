import { type Content, contentOf, type DrawnPage, drawnPage, type PrinterCorrection } from "../output/pdf.js";
import { type SvgParts, svgParts } from "../output/svg.js";
import type { Packet, PrintedPage } from "../sheets/packet.js";
import type { Body } from "../sheets/sheet.js";

/** A page of the packet as its PDFs take it; not drawn where no PDF is asked for. */
export interface MadePage extends Omit<PrintedPage, "page" | "body"> {
  readonly title: string;
  readonly drawn: DrawnPage | null;
}

/** Sheets written, though not yet into files: plain data, which one thread may make and another put together. */
export interface Made {
  readonly pages: readonly MadePage[];
  /** Drawings whole, by the sheet's name, as SVG; not written where none is asked for. */
  readonly drawings: readonly { readonly sheet: string; readonly svg: SvgParts | null }[];
}

/** In what forms sheets are wanted. */
export interface Forms {
  readonly pdf: boolean;
  readonly svg: boolean;
  readonly correction: PrinterCorrection | null;
}

/** Of each body the items that were drawn before the number of its page was known, and that it has no more. */
export type Ahead = ReadonlyMap<Body, Content>;

const NOTHING_AHEAD: Ahead = new Map();

/** The pages drawn and the drawings written; `done` hears after each how many there have been. */
export function madeOf(
  { pages, drawings }: Packet,
  forms: Forms,
  { ahead = NOTHING_AHEAD, done = () => undefined }: { ahead?: Ahead; done?: (count: number) => void } = {},
): Made {
  let count = 0;
  const told = <T>(each: T): T => {
    count += 1;
    done(count);
    return each;
  };
  return {
    pages: pages.map((page) => told(madePage(page, forms, ahead))),
    drawings: drawings.map(({ sheet, draw }) => told({ sheet, svg: forms.svg ? svgParts(draw()) : null })),
  };
}

function madePage({ page, body, ...place }: PrintedPage, { pdf, correction }: Forms, ahead: Ahead): MadePage {
  const { title } = page;
  if (!pdf) return { ...place, title, drawn: null };
  const before = ahead.get(body);
  const contents =
    before === undefined ? [contentOf(page.items)] : [before, contentOf(page.items.slice(body.items.length))];
  return { ...place, title, drawn: drawnPage(page, contents, correction ?? undefined) };
}

export const madeFrom = (parts: readonly Made[]): Made => ({
  pages: parts.flatMap(({ pages }) => pages),
  drawings: parts.flatMap(({ drawings }) => drawings),
});

/** The memory of what is made that another thread can take over instead of copying it. */
export function memoryOf({ pages, drawings }: Made): readonly ArrayBuffer[] {
  const written = drawings.flatMap(({ svg }) => [svg?.before, svg?.after]);
  const bytes = [...pages.map(({ drawn }) => drawn?.deflated), ...written];
  return bytes.flatMap((each) => {
    const buffer = each?.buffer;
    // A small array may stand in memory that it shares with others.
    return buffer instanceof ArrayBuffer && buffer.byteLength === each?.byteLength ? [buffer] : [];
  });
}
