import type { Cell, CellLine } from "../drawing/table.js";
import type { Opening } from "../job.js";
import type { Speaker, Tape } from "../room/room.js";
import { BETWEEN_LANGUAGES } from "../words/bilingual.js";
import type { Details } from "../words/details.js";
import { acrossFigures, halfFigures, toleranceFigures } from "./cut-figures.js";
import { figuresOf } from "./figures.js";
import { writtenGaps } from "./gaps.js";
import type { Order } from "./sheet.js";
import type { Tapes } from "./tapes.js";
import { unbroken } from "./unbroken.js";

/** Cap heights in mm: what is read from a ladder, and what stands beside it. */
const MAIN_MM = 5;
const SMALL_MM = 2.5;

const main = (words: string): CellLine => ({ words, capMm: MAIN_MM, face: "bold" });
const small = (words: string): CellLine => ({ words, capMm: SMALL_MM, face: "regular" });
const stressed = (words: string): CellLine => ({ words, capMm: SMALL_MM, face: "bold" });
const cell = (...lines: readonly CellLine[]): Cell => ({ kind: "lines", lines });

export function speakerCell(order: Order, { id, channel, surface }: Speaker): Cell {
  return cell(
    main(id),
    { words: channel, capMm: 3.5, face: "bold" },
    small(order.words.frame.surface(surface)),
  );
}

/** Size of the opening: across, the compass radius of a round one, and what it may be over; which model it is for. */
export function sizeCell({ words, job }: Order, { opening, model }: Speaker): Cell {
  const { units } = job.room;
  const across = acrossFigures(opening, units);
  const half = halfFigures(opening, units);
  const round = opening.kind === "round";
  return cell(
    main(`${round ? "⌀\u00a0" : ""}${across.main}`),
    small(`${across.others} · ${toleranceFigures(units).main}`),
    ...(round ? [stressed(words.schedules.radius(`${half.main} (${half.others})`))] : []),
    small(model.name),
  );
}

/** In place of a size: nobody cuts by it. */
export const stoppedCell = (words: string, { model }: Speaker): Cell =>
  cell(...words.split(BETWEEN_LANGUAGES).map((each) => main(unbroken(each))), small(model.name));

/** One tape that places the centre, in three notations; small where the opening is not to be made. */
function tapeCell({ words, job }: Order, { from, mm }: Tape, stopped: boolean): Cell {
  const figures = figuresOf(mm, job.room.units);
  const figure = unbroken(figures.main);
  return cell(
    stressed(words.schedules.from(from)),
    stopped ? small(figure) : main(figure),
    small(figures.others.split(" · ").map(unbroken).join(" · ")),
  );
}

export const tapeCells = (order: Order, { governing }: Tapes, stopped: boolean): Cell[] =>
  governing.map((tape) => tapeCell(order, tape, stopped));

/** What is checked or needed beside size and tapes, as one line; the arrow only where it is asked for. */
export function detailLine(order: Order, opening: Opening, asked: { arrow: boolean }): CellLine {
  const { bay, speaker } = opening;
  const said = order.words.schedules.details({
    bay,
    gaps: writtenGaps(opening, (mm) => written(order, mm)),
    depth: written(order, speaker.model.depthMm),
    arrow: asked.arrow ? arrowOf(opening) : null,
  });
  return small(said);
}

function written({ job }: Order, mm: number): string {
  const figures = figuresOf(mm, job.room.units);
  return `${unbroken(figures.main)} (${figures.others.split(" · ").map(unbroken).join(" · ")})`;
}

function arrowOf({ aim }: Opening): Details["arrow"] {
  if (aim === null || aim.arrowDeg === null) return "straight";
  return aim.fromRun ?? { anticlockwiseDeg: aim.arrowDeg };
}
