import type { Job, Opening } from "../job.js";
import { type Measure, measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import { type AnswerForm, answerEach, tellFindings } from "./answer.js";
import type { ExitCode } from "./exit-code.js";
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
  const widths = headings.map((heading, column) =>
    Math.max(heading.length, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const aligned = (row: readonly string[]): string =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join("  ")
      .trimEnd();
  const title = `${job.room.job.name}\n${say.from(job.room.reference.name)}\n`;
  return [title, terminal.colours.bold(aligned(headings)), ...rows.map(aligned), "", ""].join("\n");
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
