import type { Table } from "../drawing/table.js";
import { textBlock } from "../drawing/text-block.js";
import { headed, type Part, rowsOf } from "./flow.js";
import { writing } from "./marking/steps.js";
import { MIDDLE_MM, readingSheet, SMALL_MM } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";

/** What is looked at on each visit, with room for what differs and who looked. */
export function checkLists(order: Order): Sheet[] {
  if (order.job.room.speakers.length === 0) return [];
  const { checks } = order.words;
  const { beforeBoard, afterBoard, trimOut, soundCheck } = checks.visits;
  const visits = [beforeBoard, afterBoard, trimOut, soundCheck];
  return [
    readingSheet(
      order,
      { name: "check-lists", title: checks.title, use: checks.use },
      visits.flatMap((visit) => visitParts(order, visit)),
    ),
  ];
}

interface Visit {
  readonly title: string;
  readonly items: readonly string[];
}

function visitParts(order: Order, { title, items }: Visit): Part[] {
  const { columns, signed } = order.words.checks;
  const table: Table = {
    capMm: SMALL_MM,
    columns: [
      { heading: columns.done, weight: 0, anchor: "middle" },
      { heading: columns.what, weight: 3 },
      { heading: columns.found, weight: 1, leastMm: 40 },
    ],
    rows: items.map((item) => [{ kind: "tick" }, item, { kind: "write" }]),
  };
  return [
    headed((place) => textBlock(title, { ...place, capMm: MIDDLE_MM, face: "bold" }), rowsOf(table)),
    writing(signed),
  ];
}
