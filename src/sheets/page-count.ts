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

/** How a sheet is counted and drawn. */
export interface Making {
  /** How many pages there will be; null where that is not known before they are drawn. */
  readonly count: () => number | null;
  readonly draw: () => readonly Body[];
}

/** The same where to count takes work too: whoever wants its pages asks for them first, and needs no more to count them. */
export function countedWhenAsked(sheet: Omit<Sheet, "pages" | "pageCount">, { count, draw }: Making): Sheet {
  let drawn: readonly Body[] | null = null;
  let said: number | null = null;
  return {
    ...sheet,
    get pageCount() {
      said ??= drawn?.length ?? count() ?? this.pages.length;
      return said;
    },
    get pages() {
      drawn ??= draw();
      return said === null ? drawn : asMany({ name: sheet.name, pageCount: said }, drawn);
    },
  };
}

function asMany(
  { name, pageCount }: Pick<Announced, "name" | "pageCount">,
  pages: readonly Body[],
): readonly Body[] {
  if (pages.length === pageCount) return pages;
  throw new InternalError(`${name} was said to have ${pageCount} pages and has ${pages.length}`);
}
