import type { Cell, Column, Table } from "../drawing/table.js";
import type { Opening } from "../job.js";
import type { Speaker } from "../room/room.js";
import { idRuns } from "./id-runs.js";
import type { Order } from "./sheet.js";

/** How many openings there are, how many of them are to be made, how many must not; the rest have no position yet. */
export interface Count {
  readonly openings: number;
  readonly toDo: number;
  readonly stopped: number;
}

/** The opening of a loudspeaker; null where it has no position yet. */
export const openingOf = ({ job }: Order, { id }: Speaker): Opening | null =>
  job.openings.find(({ speaker }) => speaker.id === id) ?? null;

export function countOf(order: Order, speakers: readonly Speaker[]): Count {
  const openings = speakers.map((speaker) => openingOf(order, speaker));
  return {
    openings: speakers.length,
    toDo: openings.filter((opening) => opening !== null && !opening.mustNotCut).length,
    stopped: openings.filter((opening) => opening?.mustNotCut === true).length,
  };
}

export interface CountWords {
  readonly toDo: string;
  readonly stopped: string;
  /** What whoever has counted signs. */
  readonly counted: string;
}

/**
 * Openings on each surface that has any, then in the whole room, whatever part of it the loudspeakers are; with which
 * they are, and lines to write on for who has counted.
 */
export function countTable(order: Order, speakers: readonly Speaker[], words: CountWords): Table {
  const { count } = order.words.cover;
  const surfaces = [...new Set(speakers.map(({ surface }) => surface))];
  const columns: Column[] = [
    { heading: count.where, weight: 1, face: "bold" },
    { heading: count.openings, weight: 0, face: "bold", anchor: "middle", capMm: 3.5 },
    { heading: words.toDo, weight: 0, face: "bold", anchor: "middle", capMm: 3.5 },
    { heading: words.stopped, weight: 0, face: "bold", anchor: "middle", capMm: 3.5 },
    { heading: count.ids, weight: 3 },
    { heading: words.counted, weight: 0, leastMm: 32 },
  ];
  const on = (surface: string) => speakers.filter((speaker) => speaker.surface === surface);
  return {
    capMm: 2.5,
    columns,
    rows: [
      ...surfaces.map((surface) => rowOf(order, order.words.frame.surface(surface), on(surface))),
      rowOf(order, count.room, order.job.room.speakers),
    ],
  };
}

function rowOf(order: Order, where: string, speakers: readonly Speaker[]): Cell[] {
  const { openings, toDo, stopped } = countOf(order, speakers);
  const ids = idRuns(speakers.map(({ id }) => id)).join("  ");
  return [where, String(openings), String(toDo), String(stopped), ids, { kind: "write" }];
}
