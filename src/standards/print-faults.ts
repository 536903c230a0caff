/*
 * What print dialogs do to a page that was not printed at 100 %.
 */

interface Sides {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Percent that is left of a page when a dialog fits it whole onto other paper: the lesser of the two ratios. */
export const fittedPercent = (page: Sides, onto: Sides): number =>
  100 * Math.min(onto.widthMm / page.widthMm, onto.heightMm / page.heightMm);

/**
 * Percent that is left of a letter or A4 page when a dialog shrinks it into what the printer reaches: computed for
 * margins of 3 to 5 mm all round, which is what printers that were asked over the Internet Printing Protocol state.
 */
export const SHRUNK_PERCENT = { least: 95, most: 97 };
