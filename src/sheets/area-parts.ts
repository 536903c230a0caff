import type { Cell, Table } from "../drawing/table.js";
import { textBlock } from "../drawing/text-block.js";
import type { Opening } from "../job.js";
import type { Coverage } from "../listen/covered.js";
import { levelAtDb, sourceOf } from "../listen/level-together.js";
import { againstMean, levelLines, spacingLine } from "./area-lines.js";
import { figuresOf } from "./figures.js";
import { headed, type Part, rowsOf, run } from "./flow.js";
import { MIDDLE_MM, main, middle, SMALL_MM, saying } from "./reading-pages.js";
import type { Order } from "./sheet.js";
import { unbroken } from "./unbroken.js";

/** Those that are heard from a seat: all but the ones that fill an area, which are heard all over it. */
export const heardFromSeats = ({ job }: Order): readonly Opening[] =>
  job.openings.filter(({ speaker }) => speaker.area === null);

type Filled = Coverage & { readonly spread: NonNullable<Coverage["spread"]> };

const isFilled = (coverage: Coverage): coverage is Filled => coverage.spread !== null;

/** How evenly each area is filled; nothing where there is none. */
export function areaParts(order: Order): readonly Part[] {
  const { areas } = order.words;
  const parts = order.job.coverage.filter(isFilled).map((one) => evennessPart(order, one));
  return parts.length === 0 ? [] : [...parts, saying(areas.model)];
}

function evennessPart(order: Order, coverage: Filled): Part {
  const { job, words } = order;
  const { area, mounted } = coverage;
  const lines = [
    words.areas.count(mounted.length, area.model.name, area.surface),
    spacingLine(words, area, job.room.units),
    ...levelLines(words, coverage, job.room),
  ];
  return headed(
    (place) => textBlock(area.name, { ...place, capMm: MIDDLE_MM, face: "bold" }),
    run(
      lines.map((line) => (place) => textBlock(line, { ...place, capMm: SMALL_MM })),
      1,
    ),
  );
}

/** What the sound check expects straight under each of an area's loudspeakers, with room for what is measured. */
export function areaSoundParts(order: Order): readonly Part[] {
  return order.job.coverage.filter(isFilled).flatMap((coverage) => soundParts(order, coverage));
}

function soundParts(order: Order, { area, mounted, spread }: Filled): readonly Part[] {
  const { job, words } = order;
  const { sound } = words.areas;
  const ear = figuresOf(area.earMm, job.room.units).main;
  const sources = mounted.map(sourceOf);
  const table: Table = {
    capMm: SMALL_MM,
    columns: [
      { heading: sound.columns.speaker, weight: 1 },
      { heading: sound.columns.polarity, weight: 0, leastMm: 18, anchor: "middle" },
      { heading: sound.columns.plays, weight: 0, leastMm: 18, anchor: "middle" },
      { heading: sound.columns.under, weight: 1 },
      { heading: sound.columns.measured, weight: 1 },
    ],
    rows: mounted.map(({ speaker, position }): Cell[] => {
      const underDb = levelAtDb(sources, { ...position, z: area.earMm }) - spread.meanDb;
      return [
        { kind: "lines", lines: [middle(speaker.id)] },
        { kind: "tick" },
        { kind: "tick" },
        { kind: "lines", lines: [main(unbroken(againstMean(underDb)))] },
        { kind: "write" },
      ];
    }),
  };
  return [
    headed(
      (place) => textBlock(area.name, { ...place, capMm: MIDDLE_MM, face: "bold" }),
      saying(sound.how(unbroken(ear))),
    ),
    ...levelLines(words, { area, spread, drive: null }, job.room).map((line) => saying(line)),
    rowsOf(table),
  ];
}
