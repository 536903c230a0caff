import type { Job, Opening } from "../job.js";
import { writtenAssumptions } from "../sheets/cable-of.js";
import { type Measure, measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import { type AnswerForm, answerEach, tellFindings } from "./answer.js";
import { coverageTold } from "./areas-told.js";
import { planLines, runCells, waysOf } from "./cable-cells.js";
import { inColumns } from "./columns.js";
import type { ExitCode } from "./exit-code.js";
import { decibels, heardCells, powerCells } from "./listening-cells.js";
import type { Terminal } from "./terminal.js";

/** Positions, directions and aim of every speaker as a table, then the findings. */
export function report(
  terminal: Terminal,
  words: Words,
  files: readonly string[],
  form: AnswerForm,
): ExitCode {
  return answerEach(terminal, words, files, {
    form,
    tell: (job, typed) => {
      terminal.write(reportText(terminal, words, job));
      tellFindings(terminal, words, job, typed, terminal.write);
    },
  });
}

function reportText(terminal: Terminal, words: Words, job: Job): string {
  const { report: say } = words.commands;
  const measure = measureIn(job.room.units);
  const headings = [
    say.speaker,
    say.channel,
    say.surface,
    say.direction,
    say.distance,
    say.gap,
    say.aim,
    say.offAxis,
  ];
  const rows = job.openings.map((opening) => reportRow(words, measure, opening));
  const title = `${job.room.job.name}\n${say.from(job.room.reference.name)}\n`;
  return [
    title,
    ...columns(terminal, headings, rows),
    "",
    ...seatsTold(terminal, words, job),
    ...powerTold(terminal, words, job),
    ...areasTold(terminal, words, job),
    ...cableTold(terminal, words, job),
    "",
  ].join("\n");
}

function columns(
  { colours }: Terminal,
  headings: readonly string[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const [heading = "", ...lines] = inColumns(headings, rows);
  return [colours.bold(heading), ...lines];
}

/** A row for each loudspeaker and seat, but for those that fill an area and are heard all over it. */
function seatsTold(terminal: Terminal, words: Words, { room, openings }: Job): readonly string[] {
  const fromSeats = openings.filter(({ speaker }) => speaker.area === null);
  if (fromSeats.length === 0) return [];
  const { columns: heading, ...say } = words.listening;
  const headings = [
    heading.speaker,
    heading.seat,
    heading.direction,
    heading.distance,
    heading.window,
    heading.offAxis,
    heading.level,
    heading.delay,
    heading.samples,
  ];
  const measure = measureIn(room.units);
  const rows = fromSeats.flatMap((opening) =>
    opening.listening.heard.map((heard) => [opening.speaker.id, ...heardCells(words, measure, heard)]),
  );
  return [
    say.atSeats,
    ...columns(terminal, headings, rows),
    say.model,
    say.delays(`${room.listening.temperatureC} °C`),
    "",
  ];
}

function powerTold(terminal: Terminal, words: Words, { room, openings }: Job): readonly string[] {
  const rows = openings.flatMap((opening) => powerCells(opening));
  if (rows.length === 0) return [];
  const { columns: heading, ...say } = words.listening;
  const headings = [heading.speaker, heading.needed, heading.stated, heading.headroom];
  const { targetDb, headroomDb } = room.listening;
  return [
    say.power,
    ...columns(terminal, headings, rows),
    say.powerFor(decibels(targetDb), decibels(headroomDb), room.reference.name),
    "",
  ];
}

/** How evenly areas are filled; nothing in a room without any. */
function areasTold(terminal: Terminal, words: Words, { room, coverage }: Job): readonly string[] {
  const lines = coverage.flatMap((one) => coverageTold(terminal, words, one, room));
  return lines.length === 0 ? [] : [words.areas.title, ...lines, words.areas.model, ""];
}

/** A row for each run, the way under it in words, and what to buy. */
function cableTold(terminal: Terminal, words: Words, job: Job): readonly string[] {
  const { report: say } = words.cabling;
  if (job.cabling === null) return [say.title, say.none, ""];
  const { columns: heading } = say;
  const headings = [
    heading.speaker,
    heading.cut,
    heading.size,
    heading.loss,
    heading.load,
    heading.damping,
    heading.bored,
  ];
  const { runs } = job.cabling;
  const assumed = writtenAssumptions({ job, words });
  const rows = runs.map((run) => runCells(words, job, run));
  const [first = "", ...lines] = columns(terminal, headings, rows);
  return [
    say.title,
    first,
    ...lines.flatMap((line, index) => [line, ...waysOf(words, job, runs[index])]),
    ...planLines(words, job, job.cabling),
    ...(assumed.length === 0 ? [] : [words.cabling.assumed(assumed)]),
    "",
  ];
}

function reportRow(words: Words, measure: Measure, opening: Opening): string[] {
  const { report: say } = words.commands;
  const { speaker, direction, gap, aim } = opening;
  const arrow = aim?.fromRun;
  return [
    speaker.id,
    speaker.channel,
    words.frame.surface(speaker.surface),
    `${direction.azimuthDeg.toFixed(1)}° / ${direction.elevationDeg.toFixed(1)}°`,
    measure.length(direction.distanceMm),
    gap === null ? say.unknown : measure.length(gap.mm),
    arrow === undefined || arrow === null ? say.straight : words.marking.arrowInWords(arrow),
    aim === null ? "" : `${aim.offAxisDeg.toFixed(1)}°`,
  ];
}
