import { type DrawnPage, drawPage, type PrinterCorrection } from "../output/pdf.js";
import { writeSvg } from "../output/svg.js";
import type { Packet, PrintedPage } from "../sheets/packet.js";

/** A page of the packet as its PDFs take it; not drawn where no PDF is asked for. */
export interface MadePage extends Omit<PrintedPage, "page"> {
  readonly title: string;
  readonly drawn: DrawnPage | null;
}

/** Sheets written, though not yet into files: plain data, which one thread may make and another put together. */
export interface Made {
  readonly pages: readonly MadePage[];
  /** Drawings whole, by the sheet's name, as SVG; not written where none is asked for. */
  readonly drawings: readonly { readonly sheet: string; readonly svg: string | null }[];
}

/** In what forms sheets are wanted. */
export interface Forms {
  readonly pdf: boolean;
  readonly svg: boolean;
  readonly correction: PrinterCorrection | null;
}

/** The pages drawn and the drawings written; `done` hears after each how many there have been. */
export function madeOf(
  { pages, drawings }: Packet,
  forms: Forms,
  done: (count: number) => void = () => undefined,
): Made {
  let count = 0;
  const told = <T>(each: T): T => {
    count += 1;
    done(count);
    return each;
  };
  return {
    pages: pages.map(({ page, ...place }) => {
      const drawn = forms.pdf ? drawPage(page, forms.correction ?? undefined) : null;
      return told({ ...place, title: page.title, drawn });
    }),
    drawings: drawings.map(({ sheet, draw }) => told({ sheet, svg: forms.svg ? writeSvg(draw()) : null })),
  };
}

export const madeFrom = (parts: readonly Made[]): Made => ({
  pages: parts.flatMap(({ pages }) => pages),
  drawings: parts.flatMap(({ drawings }) => drawings),
});
