import { arrow, circle, filled, outline, PEN, point } from "../../drawing/pen.js";
import type { Cell, Table } from "../../drawing/table.js";
import type { Opening } from "../../job.js";
import { coneOf, footprintOf } from "../../listen/coverage.js";
import { windowOf } from "../../listen/window.js";
import type { RangeDeg } from "../../standards/loudspeaker-layouts.js";
import { figuresOf } from "../figures.js";
import { type Part, rowsOf } from "../flow.js";
import { inlines } from "../marking/inline.js";
import { type Drawing, dashedSample, sample } from "../marking/key.js";
import { middle, SMALL_MM } from "../reading-pages.js";
import type { Order } from "../sheet.js";
import { unbroken } from "../unbroken.js";
import { LINES, WINDOW_FILL } from "./lines.js";

export const degreesText = (deg: number): string => `${(Number(deg.toFixed(1)) + 0).toFixed(1)}°`;

const ranged = ({ words }: Order, [from, to]: RangeDeg): string =>
  unbroken(words.earPlane.range(degreesText(from), degreesText(to)));

const name = ({ speaker }: Opening): Cell => ({ kind: "lines", lines: [middle(speaker.id)] });

/**
 * The direction of each from the reference seat with what the layout allows, to the tenth of a degree, and how much of the
 * ear plane the coverage takes.
 */
export function figuresTable(order: Order, openings: readonly Opening[]): Part {
  const { columns } = order.words.earPlane;
  const table: Table = {
    capMm: SMALL_MM,
    columns: [
      { heading: columns.speaker, weight: 1 },
      { heading: columns.azimuth, weight: 0 },
      { heading: columns.allowed, weight: 1 },
      { heading: columns.elevation, weight: 0 },
      { heading: columns.allowed, weight: 1 },
      { heading: columns.angle, weight: 0 },
      { heading: columns.footprint, weight: 1 },
    ],
    rows: openings.map((opening) => rowOf(order, opening)),
  };
  return rowsOf(table);
}

function rowOf(order: Order, opening: Opening): Cell[] {
  const { azimuthDeg, elevationDeg } = opening.direction;
  const { model, channel } = opening.speaker;
  const window = windowOf(order.job.room, channel);
  return [
    name(opening),
    degreesText(azimuthDeg),
    window === null ? "" : ranged(order, window.azimuthDeg),
    degreesText(elevationDeg),
    window === null ? "" : ranged(order, window.elevationDeg),
    model.coverageDeg === null ? "" : degreesText(model.coverageDeg),
    footprintText(order, opening),
  ];
}

function footprintText({ job, words }: Order, opening: Opening): string {
  const cone = coneOf(opening);
  if (cone === null) return "";
  const { coverage } = words.earPlane;
  const footprint = footprintOf(cone, job.room.reference.ear.z);
  if (footprint.kind !== "closed") return footprint.kind === "open" ? coverage.open : coverage.missed;
  const [long, short] = [footprint.longMm, footprint.shortMm].map((mm) => figuresOf(mm, job.room.units).main);
  return coverage.closed(unbroken(long ?? ""), unbroken(short ?? ""));
}

const onWall: Drawing = (x, y) => [
  filled({ x: x + 4.3, y: y - 1.2, widthMm: 2.4, heightMm: 2.4 }, PEN.outline.ink),
];
const overhead: Drawing = (x, y) => [circle(point(x + 5.5, y), 1.5, PEN.outline)];
const allowed: Drawing = (x, y) => [
  outline([point(x, y - 1.4), point(x + 11, y - 1.4), point(x + 11, y + 1.4), point(x, y + 1.4)], {
    stroke: PEN.fine,
    fill: WINDOW_FILL,
  }),
];

const aimed: Drawing = (x, y) => arrow(point(x, y), point(x + 9, y), PEN.fine);

export type KeyOf = keyof Order["words"]["earPlane"]["key"];

const DRAWINGS: Readonly<Record<KeyOf, Drawing>> = {
  direction: dashedSample(LINES.direction),
  overhead: dashedSample(LINES.overhead),
  wall: dashedSample(LINES.wall),
  axis: dashedSample(LINES.axis),
  earPlane: dashedSample(LINES.earPlane),
  aimed,
  window: allowed,
  inCeiling: overhead,
  inWall: onWall,
};

/** What the line styles and signs of a drawing mean. */
export const keyOf = ({ words }: Order, ...kinds: readonly KeyOf[]): Part =>
  inlines(kinds.map((kind) => sample(words.earPlane.key[kind], DRAWINGS[kind])));
