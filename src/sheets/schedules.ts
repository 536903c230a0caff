import type { Cell, CellLine, Column, Table } from "../drawing/table.js";
import { textBlock } from "../drawing/text-block.js";
import type { Speaker } from "../room/room.js";
import { type Caution, cautionLines } from "./cautions.js";
import { countTable, openingOf } from "./count.js";
import { findingLines, findingsAbout } from "./finding-lines.js";
import { type Part, rowsOf, whole } from "./flow.js";
import { drawnWhenAsked } from "./page-count.js";
import { readingPages } from "./reading-pages.js";
import { detailLine, sizeCell, speakerCell, stoppedCell, tapeCells } from "./schedule-cells.js";
import type { FrameFacts, Order, Sheet, Trade } from "./sheet.js";
import { facesAt, type Stage, stagesOf, tapesOf } from "./tapes.js";

/** What differs between the schedule that board is cut by and the one that brackets are fixed by. */
interface Schedule {
  readonly name: string;
  readonly trade: Trade;
  readonly words: Order["words"]["schedules"]["opening" | "bracket"];
  readonly cautions: readonly Caution[];
  /** Whether its details name the arrow: a bracket is fixed without one. */
  readonly arrow: boolean;
}

/** The openings of one state of the walls: no list mixes the faces that tapes touch. */
interface List {
  readonly stage: Stage;
  readonly use: string;
  readonly speakers: readonly Speaker[];
}

/** What the board is cut by, for each state of the walls that openings are cut at. */
export function openingSchedule(order: Order): Sheet[] {
  const words = order.words.schedules.opening;
  const stages: readonly Stage[] = ["bare", "boarded"];
  const lists = stages.map((stage) => ({
    stage,
    use: words.use[stage],
    speakers: order.job.room.speakers.filter((speaker) => stagesOfSpeaker(order, speaker).includes(stage)),
  }));
  const cautions = ["look", "structure", "rated", "dust"] as const;
  return sheetOf(order, { name: "opening-schedule", trade: "drywall", words, cautions, arrow: true }, lists);
}

/** What brackets are fixed by at rough-in, on bare framing. */
export function bracketSchedule(order: Order): Sheet[] {
  const words = order.words.schedules.bracket;
  const list = { stage: "bare", use: words.use, speakers: order.job.room.speakers } as const;
  const cautions = ["structure", "engineered", "rated", "weight"] as const;
  return sheetOf(order, { name: "bracket-schedule", trade: "installer", words, cautions, arrow: false }, [
    list,
  ]);
}

function stagesOfSpeaker({ job }: Order, { surface }: Speaker): readonly Stage[] {
  const found = job.room.surfaces.find(({ name }) => name === surface);
  return found === undefined ? [] : stagesOf(job.room, found);
}

function sheetOf(order: Order, schedule: Schedule, lists: readonly List[]): Sheet[] {
  const { title } = schedule.words;
  const pages = lists
    .filter(({ speakers }) => speakers.length > 0)
    .map((list) => readingPages(order, factsOf(order, schedule, list), partsOf(order, schedule, list)));
  if (pages.length === 0) return [];
  const pageCount = pages.reduce((sum, each) => sum + each.pageCount, 0);
  const announced = { name: schedule.name, trades: [schedule.trade], title, pageCount, whole: null };
  return [drawnWhenAsked(announced, () => pages.flatMap(({ draw }) => draw()))];
}

const factsOf = ({ words }: Order, schedule: Schedule, { stage, use }: List): FrameFacts => ({
  title: schedule.words.title,
  view: null,
  hold: use,
  front: null,
  scale: words.frame.notToScale,
  faces: words.frame.faces[facesAt(stage)],
});

function partsOf(order: Order, schedule: Schedule, { stage, speakers }: List): Part[] {
  const { tapes } = order.words.schedules;
  const cautions = schedule.cautions.filter((caution) => concerns(order, caution, speakers));
  return [
    whole((place) => textBlock(tapes, { ...place, capMm: 2.5, face: "bold" })),
    whole((place) => cautionLines(order, cautions, place)),
    rowsOf(countTable(order, speakers, schedule.words)),
    rowsOf(tableOf(order, schedule, stage, speakers)),
  ];
}

/** Cautions that only some openings need are left out where none of these does. */
function concerns({ job }: Order, caution: Caution, speakers: readonly Speaker[]): boolean {
  const names = new Set(speakers.map(({ surface }) => surface));
  if (caution === "rated") return job.room.surfaces.some(({ name, rated }) => rated && names.has(name));
  if (caution === "weight") return job.findings.some(({ code }) => code === "needs-second-support");
  return true;
}

function tableOf(order: Order, schedule: Schedule, stage: Stage, speakers: readonly Speaker[]): Table {
  return {
    capMm: 2.5,
    columns: columnsOf(order, schedule),
    rows: speakers.map((speaker) => rowOf(order, schedule, stage, speaker)),
    under: speakers.map((speaker) => linesUnder(order, schedule, speaker)),
  };
}

function columnsOf({ words }: Order, schedule: Schedule): Column[] {
  const { columns } = words.schedules;
  return [
    { heading: schedule.words.done, weight: 0, anchor: "middle" },
    { heading: columns.speaker, weight: 1 },
    { heading: schedule.words.size, weight: 2 },
    { heading: columns.first, weight: 2 },
    { heading: columns.second, weight: 2 },
  ];
}

function rowOf(order: Order, schedule: Schedule, stage: Stage, speaker: Speaker): Cell[] {
  const opening = openingOf(order, speaker);
  if (opening === null) {
    return ["", speakerCell(order, speaker), stoppedCell(order.words.schedules.notPlaced, speaker)];
  }
  const stopped = opening.mustNotCut;
  return [
    stopped ? "" : { kind: "tick" },
    speakerCell(order, speaker),
    stopped ? stoppedCell(schedule.words.stopped, speaker) : sizeCell(order, speaker),
    ...tapeCells(order, tapesOf(order.job.room, opening, stage), stopped),
  ];
}

/** What was found, in sentences; that a position was computed where nobody has fixed it yet; and the details. */
function linesUnder(order: Order, schedule: Schedule, speaker: Speaker): CellLine[] {
  const opening = openingOf(order, speaker);
  const findings = findingsAbout(order, speaker).filter(({ level }) => level !== "note");
  const frozen: CellLine[] =
    opening?.placed === "best"
      ? [{ words: order.words.frame.computedNotFrozen, capMm: 2.5, face: "bold" }]
      : [];
  const details = opening === null ? [] : [detailLine(order, opening, schedule)];
  return [...frozen, ...findings.flatMap((finding) => findingLines(order, finding)), ...details];
}
