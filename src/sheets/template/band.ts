import { type DrawnLater, stackLater, textLater } from "../../drawing/drawn-later.js";
import type { Opening } from "../../job.js";
import type { Tape } from "../../room/room.js";
import { acrossFigures, diagonalFigures, halfFigures, toleranceFigures } from "../cut-figures.js";
import { figuresOf } from "../figures.js";
import { writtenGaps } from "../gaps.js";
import type { Order } from "../sheet.js";
import { type Stage, tapesOf } from "../tapes.js";
import { boxesLater, type Datum, narrowestBoxMm, type Place } from "./data-boxes.js";

const MIDDLE_MM = 3.5;
const SMALL_MM = 2.5;

/**
 * What each page of a template says in figures, so that they alone cut the right hole in the right place: the size,
 * the compass, the tolerance, both governing tapes and the bay. In parts, since a page may set them apart.
 */
export interface Band {
  readonly size: (place: Place) => DrawnLater;
  readonly place: (place: Place) => DrawnLater;
  /** All figures together. */
  readonly all: (place: Place) => DrawnLater;
  readonly notes: (place: Place) => DrawnLater;
}

export function bandOf({ size, place: tapes }: BandData, notes: readonly string[]): Band {
  return {
    size: (place) => boxesLater(size, place),
    place: (place) => boxesLater(tapes, place),
    all: (place) => boxesLater([...size, ...tapes], place),
    notes: (place) =>
      stackLater(
        place.y,
        notes.map((note) => (y: number) => textLater(note, { ...place, y, capMm: SMALL_MM })),
      ),
  };
}

/** Which opening it is and what cuts the hole; where that is. */
export interface BandData {
  readonly size: readonly Datum[];
  readonly place: readonly Datum[];
}

export const bandData = (task: Figured): BandData => ({
  size: [identityOf(task), ...sizeData(task.order, task.opening)],
  place: placeOf(task),
});

/** The least width of a band beside the drawing: no figure of it may break. */
export const narrowestMm = ({ size, place }: BandData): number => narrowestBoxMm([...size, ...place]);

/** What of a task its figures come from. */
interface Figured {
  readonly order: Order;
  readonly opening: Opening;
  readonly alike: readonly Opening[];
  readonly stage: Stage;
}

/** One template for many says how many instead of a stamp. */
function identityOf({ order, opening, alike }: Figured): Datum {
  const own = identity(order, opening);
  return alike.length === 0 ? own : { ...own, others: order.words.template.alike.count(alike.length) };
}

/** The tapes of many stand in their schedule, not here. */
function placeOf({ order, opening, alike, stage }: Figured): Datum[] {
  if (alike.length === 0) return placeData(order, opening, stage);
  const { tapes, inSchedule } = order.words.template.alike;
  return [{ label: tapes, main: inSchedule, others: null, leastMm: MIDDLE_MM }];
}

/** Which opening it is; under a stamp where it must not be cut or may still move. */
function identity({ words }: Order, { speaker, mustNotCut, placed }: Opening): Datum {
  const stamps = [
    ...(mustNotCut ? [words.frame.doNotCut] : []),
    ...(placed === "best" ? [words.frame.computedNotFrozen] : []),
  ];
  return {
    label: [speaker.channel, speaker.model.name].join(" · "),
    main: speaker.id,
    others: stamps.length === 0 ? null : stamps.join(" · "),
    leastMm: MIDDLE_MM,
  };
}

/** "round opening, 8 1/4 in across". */
export function sizeInWords({ words, job }: Order, { speaker: { opening } }: Opening): string {
  const across = acrossFigures(opening, job.room.units).main;
  if (opening.kind === "round") return words.template.size.round(across);
  const [width = "", height = ""] = across.split(" × ");
  return words.template.size.rectangle(width, height);
}

/** What cuts the hole; nothing where none is to be cut. */
export function sizeData({ words, job }: Order, { speaker: { opening }, mustNotCut }: Opening): Datum[] {
  if (mustNotCut) return [];
  const { size } = words.template;
  const { units } = job.room;
  const round = opening.kind === "round";
  return [
    { label: round ? size.diameter : size.sides, ...acrossFigures(opening, units) },
    { label: round ? size.radius : size.halves, ...halfFigures(opening, units) },
    ...(round ? [] : [{ label: size.diagonals, ...diagonalFigures(opening, units) }]),
    { label: size.tolerance[opening.kind], ...toleranceFigures(units) },
  ];
}

/** The two tapes that govern, and the bay as the second proof of the place. */
export function placeData(order: Order, opening: Opening, stage: Stage): Datum[] {
  const { words, job } = order;
  const [first, second] = tapesOf(job.room, opening, stage).governing;
  const tape = ({ from, mm }: Tape): Datum => ({
    label: words.template.from(from),
    ...figuresOf(mm, job.room.units),
  });
  return [tape(first), tape(second), bayDatum(order, opening)];
}

function bayDatum({ words: { template } }: Order, { bay }: Opening): Datum {
  return bay === null
    ? { label: template.bayUnknown, main: template.unknown, others: null }
    : { label: template.bay(bay.from), main: template.bayNumber(bay.number), others: null };
}

/** What is left to the framing on both sides, with the wall on whose side it stands. */
export function gapsInWords({ words, job }: Order, opening: Opening): string {
  const gaps = writtenGaps(opening, (mm) => {
    const { main, others } = figuresOf(mm, job.room.units);
    return `${main} (${others})`;
  });
  return gaps === null ? words.template.gapUnknown : words.template.gaps(gaps);
}
