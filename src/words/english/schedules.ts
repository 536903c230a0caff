import type { Details } from "../details.js";
import { frame } from "./frame.js";
import { marking } from "./marking.js";
import { template } from "./template.js";

/** Words of the opening schedule and the bracket schedule. */
export const schedules = {
  opening: {
    title: "Opening schedule",
    use: {
      bare: "Use while the walls are BARE: tape to the studs",
      boarded: "Use when the walls are BOARDED: tape to the board",
    },
    size: "Cut this size",
    done: "Cut",
    stopped: "DO NOT CUT",
    toDo: "To cut",
    counted: "Counted, initials",
  },
  bracket: {
    title: "Bracket schedule",
    use: "Use at ROUGH-IN, on bare framing",
    size: "Size of the opening",
    done: "Fixed",
    stopped: "DO NOT FIX",
    toDo: "To fix",
    counted: "Counted, initials",
  },
  columns: { speaker: "Opening", first: "Centre: first tape", second: "Centre: second tape" },
  tapes:
    "Both tapes go to the CENTRE of the opening, square to the wall named. Pencil only: ink bleeds through paint.",
  notPlaced: "NO POSITION YET",
  from: (wall: string) => `from ${frame.wall(wall)}`,
  radius: (radius: string) => `radius ${radius}`,
  /** Everything about an opening that is not cut by but checked or needed: in one line. */
  details: ({ bay, gaps, depth, arrow }: Details) =>
    [
      bay === null
        ? "Bay: not known."
        : `${template.bayNumber(bay.number)} bay from ${frame.wall(bay.from)}.`,
      gaps === null ? `${template.gapUnknown}.` : template.gaps(gaps),
      `Depth needed: ${depth}.`,
      ...(arrow === null ? [] : [`Arrow: ${arrowSaid(arrow)}.`]),
    ].join(" "),
};

function arrowSaid(arrow: NonNullable<Details["arrow"]>): string {
  if (arrow === "straight") return "none, straight";
  return "end" in arrow
    ? marking.arrowInWords(arrow)
    : `${Math.round(arrow.anticlockwiseDeg)}° anticlockwise from the top, as you face it`;
}
