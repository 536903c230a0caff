/** Words of the page that proves a printer's scale. */
export const ruler = {
  title: "Print scale",
  paper: (name: string, size: string) => `${name}, ${size}`,
  steps: [
    "Print at 100 % (actual size) on the paper named above. No fit to page, no shrink.",
    "Lay a steel rule along each long ruler, zero on zero. Read where the last figure falls. Write it down.",
    "Right within 0.5 mm in 100 mm, both ways: this printer prints true. Else find the fault below; what no setting mends, keep as the printer's profile.",
  ],
  across: "ACROSS",
  down: "DOWN",
  stretch: (lengthMm: number) => `0 to ${lengthMm} mm, measured:`,
  divided: (by: string) => `÷ ${by} =`,
  type: "Type it with the printer's name, then print every packet for it with --printer NAME:",
  command: "baymark ruler --printer NAME --across ... mm --down ... mm",
  square: (diagonal: string) =>
    `Sides 100 mm, circle ⌀ 100 mm, both diagonals ${diagonal} mm. Diagonals that differ: the paper was fed askew, print again.`,
  faults: {
    heading: "100 mm READS",
    meaning: "WHAT HAPPENED",
    fitted: (page: string, onto: string) => `a page of ${page} fitted to ${onto}`,
    between: (least: string, most: string) => `${least} to ${most}`,
    shrunk: "a dialog's “shrink” or “fit to printable area”",
    unequal: "across ≠ down",
    printer: "the printer itself: keep its profile",
  },
};
