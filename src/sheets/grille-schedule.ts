import type { Cell, Table } from "../drawing/table.js";
import type { Speaker } from "../room/room.js";
import { acrossFigures } from "./cut-figures.js";
import { rowsOf } from "./flow.js";
import { idRuns } from "./id-runs.js";
import { main, middle, readingSheet, SMALL_MM, saying, small } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";
import { unbroken } from "./unbroken.js";

/** Grilles and covers by size, model and surface: how many, and whose; the colour is a line to write on. */
export function grilleSchedule(order: Order): Sheet[] {
  if (order.job.room.speakers.length === 0) return [];
  const { grilles } = order.words.checks;
  return [
    readingSheet(order, { name: "grilles", title: grilles.title, use: grilles.use }, [
      saying(grilles.notes),
      rowsOf(tableOf(order)),
    ]),
  ];
}

function tableOf(order: Order): Table {
  const { columns } = order.words.checks.grilles;
  return {
    capMm: SMALL_MM,
    columns: [
      { heading: columns.count, weight: 0, anchor: "middle" },
      { heading: columns.size, weight: 2 },
      { heading: columns.where, weight: 1 },
      { heading: columns.ids, weight: 2 },
      { heading: columns.colour, weight: 1, leastMm: 24 },
      { heading: columns.painted, weight: 0, anchor: "middle" },
      { heading: columns.fitted, weight: 0, anchor: "middle" },
    ],
    rows: groupsOf(order.job.room.speakers).map((group) => rowOf(order, group)),
  };
}

/** Loudspeakers whose grilles are the same and go on the same surface. */
function groupsOf(speakers: readonly Speaker[]): readonly (readonly Speaker[])[] {
  const groups = new Map<string, Speaker[]>();
  for (const speaker of speakers) {
    const key = JSON.stringify([speaker.flange, speaker.model.name, speaker.surface]);
    groups.set(key, [...(groups.get(key) ?? []), speaker]);
  }
  return [...groups.values()];
}

function rowOf({ words, job }: Order, group: readonly Speaker[]): Cell[] {
  const [first] = group;
  if (first === undefined) return [];
  const across = acrossFigures(first.flange, job.room.units);
  const sign = first.flange.kind === "round" ? "⌀\u00a0" : "";
  return [
    { kind: "lines", lines: [main(String(group.length))] },
    {
      kind: "lines",
      lines: [middle(sign + unbroken(across.main)), small(across.others), small(first.model.name)],
    },
    words.frame.surface(first.surface),
    idRuns(group.map(({ id }) => id)).join(", "),
    { kind: "write" },
    { kind: "tick" },
    { kind: "tick" },
  ];
}
