import type { Cell, Table } from "../drawing/table.js";
import type { Opening } from "../job.js";
import { softestDb, trimDb } from "../listen/trim.js";
import { areaSoundParts, heardFromSeats } from "./area-parts.js";
import { figuresOf } from "./figures.js";
import { rowsOf } from "./flow.js";
import { main, middle, readingSheet, SMALL_MM, saying, small } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";
import { unbroken } from "./unbroken.js";

/** Expected distance, delay and trim of every loudspeaker at the reference seat, each with room for the measured one. */
export function soundCheck(order: Order): Sheet[] {
  const { room, openings } = order.job;
  if (openings.length === 0) return [];
  const { sound } = order.words.checks;
  const fromSeat = heardFromSeats(order);
  const use = fromSeat.length > 0 ? sound.use : null;
  return [
    readingSheet(order, { name: "sound-check", title: sound.title, use }, [
      ...(fromSeat.length > 0
        ? [
            saying(sound.how(room.reference.name, `${room.listening.targetDb} dB`)),
            rowsOf(tableOf(order, fromSeat)),
          ]
        : []),
      ...areaSoundParts(order),
    ]),
  ];
}

/** Two rows for each loudspeaker: what is expected, and under it what is measured. */
function tableOf(order: Order, openings: readonly Opening[]): Table {
  const { columns } = order.words.checks.sound;
  const softest = softestDb(openings.map(({ listening }) => listening));
  return {
    capMm: SMALL_MM,
    columns: [
      { heading: columns.speaker, weight: 1 },
      { heading: columns.polarity, weight: 0, leastMm: 18, anchor: "middle" },
      { heading: columns.distance, weight: 1 },
      { heading: columns.delay, weight: 1 },
      { heading: columns.trim, weight: 1 },
    ],
    rows: openings.flatMap((opening) => [expected(order, opening, softest), measured(order, opening)]),
  };
}

function expected(order: Order, { speaker, listening }: Opening, softest: number): Cell[] {
  const { units } = order.job.room;
  const heard = listening.heard.find(({ seat }) => seat.reference);
  const trim = trimDb(listening, softest);
  const id: Cell = { kind: "lines", lines: [middle(speaker.id), small(speaker.channel)] };
  if (heard === undefined) return [id, { kind: "tick" }];
  const distance = figuresOf(heard.direction.distanceMm, units);
  return [
    id,
    { kind: "tick" },
    { kind: "lines", lines: [main(unbroken(distance.main)), small(distance.others)] },
    {
      kind: "lines",
      lines: [
        main(unbroken(`${heard.delayMs.toFixed(2)} ms`)),
        small(order.words.checks.sound.samples(heard.samples)),
      ],
    },
    trim === null ? "" : { kind: "lines", lines: [main(unbroken(trimText(trim)))] },
  ];
}

function measured({ words }: Order, { speaker }: Opening): Cell[] {
  const write: Cell = { kind: "write" };
  const said = words.checks.sound.measured(speaker.id);
  return [{ kind: "lines", lines: [small(said)] }, "", write, write, write];
}

const trimText = (db: number): string => `${(Number(db.toFixed(1)) + 0).toFixed(1)} dB`;
