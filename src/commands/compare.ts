import { type Comparison, compareJobs, isNothing } from "../compare.js";
import { comparisonJson } from "../compare-json.js";
import type { Job } from "../job.js";
import { orderOf } from "../sheets/order.js";
import { type Reprint, sheetsToReprint } from "../sheets/reprint.js";
import { SAFE_MARGINS_MM } from "../standards/paper.js";
import type { Words } from "../words/words.js";
import { type AnswerForm, tellUnusable, unusableJson } from "./answer.js";
import { comparisonLines } from "./compared.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import { type Loaded, load } from "./load.js";
import { sheetLines } from "./reprint-lines.js";
import type { Terminal } from "./terminal.js";

/**
 * What moved between two revisions of a room file, and which sheets must be printed again. Ends with 0 whether or not
 * anything did, with 2 where one of the files cannot be used.
 */
export function compare(
  terminal: Terminal,
  words: Words,
  [oldFile, newFile]: readonly [string, string],
  form: AnswerForm,
): ExitCode {
  const [before, after] = [load(terminal, words, oldFile), load(terminal, words, newFile)];
  if (before.kind !== "job" || after.kind !== "job") {
    for (const loaded of [before, after]) tellWhy(terminal, words, loaded, form);
    return EXIT.unusable;
  }
  const comparison = compareJobs(before.job, after.job);
  const sheets = sheetsToReprint(packetOrder(before.job), packetOrder(after.job));
  if (form === "json") {
    terminal.write(`${JSON.stringify(jsonOf(before.job, after.job, comparison, sheets))}\n`);
    return EXIT.clean;
  }
  const { revisions, nothing } = words.compare;
  const [old, now] = [before.job.room.job, after.job.room.job];
  const lines = isNothing(comparison) ? [nothing] : comparisonLines(terminal, words, after.job, comparison);
  const title = `${now.name}: ${revisions(old.revision, now.revision)}`;
  terminal.write(
    `${[terminal.colours.bold(title), ...lines, ...sheetLines(terminal, words, sheets, newFile)].join("\n")}\n`,
  );
  return EXIT.clean;
}

function tellWhy(terminal: Terminal, words: Words, loaded: Loaded, form: AnswerForm): void {
  if (loaded.kind === "job") return;
  if (form === "json") terminal.write(`${JSON.stringify(unusableJson(loaded))}\n`);
  else tellUnusable(terminal, words, loaded);
}

/** As `print` would print it where nothing is asked for. */
const packetOrder = (job: Job) =>
  orderOf(job, { paper: null, languages: null, margins: SAFE_MARGINS_MM, correction: null, fullSize: false });

function jsonOf(before: Job, after: Job, comparison: Comparison, sheets: Reprint): object {
  const of = ({ file, fingerprint, room }: Job) => ({ file, fingerprint, revision: room.job.revision });
  return {
    baymark: 1,
    old: of(before),
    new: of(after),
    ...comparisonJson(comparison, before, after),
    sheets: sheets.changes.map(({ name, what, pages, byName }) => ({ name, what, pages, by_name: byName })),
  };
}
