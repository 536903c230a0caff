import { InternalError } from "../findings/internal-error.js";
import type { Body, Sheet } from "./sheet.js";

/** How many pages a sheet has; draws them only where that is not known otherwise. */
export const pageCountOf = (sheet: Sheet): number => sheet.pageCount ?? sheet.pages.length;

/** What of a sheet is known before its pages are drawn. */
export type Announced = Omit<Sheet, "pages" | "pageCount"> & { readonly pageCount: number };

/**
 * A sheet whose pages are drawn when they are first asked for, and then kept. Throws an InternalError at that moment
 * where they are not as many as was said: every page after them would be wrongly numbered.
 */
export function drawnWhenAsked(announced: Announced, draw: () => readonly Body[]): Sheet {
  let drawn: readonly Body[] | null = null;
  return {
    ...announced,
    get pages() {
      drawn ??= asMany(announced, draw());
      return drawn;
    },
  };
}

function asMany({ name, pageCount }: Announced, pages: readonly Body[]): readonly Body[] {
  if (pages.length === pageCount) return pages;
  throw new InternalError(`${name} was said to have ${pageCount} pages and has ${pages.length}`);
}
