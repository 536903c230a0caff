import type { Cell, Table } from "../drawing/table.js";
import { textBlock } from "../drawing/text-block.js";
import type { Opening } from "../job.js";
import type { Heard } from "../listen/heard.js";
import { areaParts, heardFromSeats } from "./area-parts.js";
import { figuresOf } from "./figures.js";
import { headed, type Part, rowsOf } from "./flow.js";
import { MIDDLE_MM, middle, readingSheet, SMALL_MM, saying } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";
import { unbroken } from "./unbroken.js";

/** Directions, levels and delays at every seat, and the power that the target takes; with the model's limits in words. */
export function listeningReport(order: Order): Sheet[] {
  const { room, openings } = order.job;
  if (openings.length === 0) return [];
  const { listening } = order.words;
  const fromSeats = heardFromSeats(order).length > 0;
  return [
    readingSheet(order, { name: "listening", title: listening.title, use: null }, [
      ...(fromSeats
        ? [
            saying(listening.model),
            saying(listening.delays(`${room.listening.temperatureC} °C`)),
            ...room.seats.map((seat) => seatPart(order, seat.name)),
            ...powerParts(order),
          ]
        : []),
      ...areaParts(order),
    ]),
  ];
}

function seatPart(order: Order, name: string): Part {
  const { columns, seat } = order.words.listening;
  const table: Table = {
    capMm: SMALL_MM,
    columns: [
      { heading: columns.speaker, weight: 1 },
      { heading: columns.direction, weight: 1 },
      { heading: columns.distance, weight: 1 },
      { heading: columns.window, weight: 1 },
      { heading: columns.offAxis, weight: 0 },
      { heading: columns.level, weight: 0 },
      { heading: columns.delay, weight: 1 },
      { heading: columns.samples, weight: 0 },
    ],
    rows: heardFromSeats(order).flatMap((opening) => {
      const heard = opening.listening.heard.find((each) => each.seat.name === name);
      return heard === undefined ? [] : [heardRow(order, opening, heard)];
    }),
  };
  return headed(
    (place) => textBlock(seat(name), { ...place, capMm: MIDDLE_MM, face: "bold" }),
    rowsOf(table),
  );
}

function heardRow(order: Order, { speaker, listening }: Opening, heard: Heard): Cell[] {
  const { words, job } = order;
  const say = words.listening;
  const { direction, inside, offAxisDeg, levelDb, delayMs, samples } = heard;
  const degrees = (deg: number): string => `${deg.toFixed(1)}°`;
  const window = inside === null ? "" : inside ? say.inside : say.outside;
  return [
    { kind: "lines", lines: [middle(speaker.id)] },
    `${degrees(direction.azimuthDeg)} / ${degrees(direction.elevationDeg)}`,
    unbroken(figuresOf(direction.distanceMm, job.room.units).main),
    window,
    offAxisDeg === null ? say.unknown : degrees(offAxisDeg),
    unbroken(`${signed(levelDb)} dB`) + (listening.byCoverage ? "" : "*"),
    unbroken(`${delayMs.toFixed(2)} ms`),
    String(samples),
  ];
}

const signed = (db: number): string => {
  const rounded = Number(db.toFixed(1)) + 0;
  return rounded > 0 ? `+${rounded}` : String(rounded);
};

function powerParts(order: Order): Part[] {
  const { job, words } = order;
  const { columns, power, powerFor, byDistance } = words.listening;
  const { targetDb, headroomDb } = job.room.listening;
  const rows = heardFromSeats(order).flatMap(({ speaker, listening }): Cell[][] => {
    const { drive } = listening;
    if (drive === null) return [];
    return [
      [
        { kind: "lines", lines: [middle(speaker.id)] },
        watts(drive.powerW),
        speaker.model.powerW === null ? { kind: "write" } : watts(speaker.model.powerW),
        drive.headroomDb === null
          ? ""
          : unbroken(`${(Number(drive.headroomDb.toFixed(1)) + 0).toFixed(1)} dB`),
      ],
    ];
  });
  const stars = heardFromSeats(order).some(({ listening }) => !listening.byCoverage)
    ? [saying(`* ${byDistance}`)]
    : [];
  if (rows.length === 0) return stars;
  const table: Table = {
    capMm: SMALL_MM,
    columns: [columns.speaker, columns.needed, columns.stated, columns.headroom].map((heading) => ({
      heading,
      weight: 1,
    })),
    rows,
  };
  return [
    ...stars,
    headed((place) => textBlock(power, { ...place, capMm: MIDDLE_MM, face: "bold" }), rowsOf(table)),
    saying(powerFor(`${targetDb} dB`, `${headroomDb} dB`, job.room.reference.name)),
  ];
}

const watts = (w: number): string => unbroken(`${w < 10 ? w.toFixed(1) : w.toFixed(0)} W`);
