import type { Job } from "../job.js";
import { complaintsJson, jobJson } from "../job-json.js";
import { measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import { EXIT, type ExitCode, worst } from "./exit-code.js";
import { type Loaded, load } from "./load.js";
import type { Terminal } from "./terminal.js";
import { complaintLines, findingLines, tally } from "./told.js";

export type AnswerForm = "text" | "json";

/** Answers each room in turn, as text told by `tell` or as one JSON object a line; the worst room's exit code. */
export function answerEach(
  terminal: Terminal,
  words: Words,
  files: readonly string[],
  ask: { form: AnswerForm; tell: (job: Job, typed: string) => void },
): ExitCode {
  return worst(
    files.map((typed) => {
      const loaded = load(terminal, words, typed);
      if (ask.form === "json") terminal.write(`${JSON.stringify(answerJson(loaded))}\n`);
      else if (loaded.kind === "job") ask.tell(loaded.job, typed);
      else tellUnusable(terminal, words, loaded);
      return exitOf(loaded);
    }),
  );
}

export function exitOf(loaded: Loaded): ExitCode {
  if (loaded.kind !== "job") return EXIT.unusable;
  return loaded.job.findings.some((finding) => finding.level === "error") ? EXIT.errors : EXIT.clean;
}

function answerJson(loaded: Loaded): unknown {
  return loaded.kind === "job" ? jobJson(loaded.job) : unusableJson(loaded);
}

/** The object for a file that cannot be used. */
export function unusableJson(loaded: Exclude<Loaded, { kind: "job" }>): unknown {
  if (loaded.kind === "complaints") return complaintsJson(loaded.typed, loaded.complaints);
  return complaintsJson(loaded.typed, [], loaded.message);
}

/** Says everything that keeps a file from being used, in one go. */
export function tellUnusable(
  terminal: Terminal,
  words: Words,
  loaded: Exclude<Loaded, { kind: "job" }>,
): void {
  if (loaded.kind === "unreadable") {
    terminal.tell(`baymark: ${loaded.message}\n`);
    return;
  }
  for (const complaint of loaded.complaints)
    terminal.tell(complaintLines(terminal, words, loaded, complaint));
}

/** Findings in the file's order and their count; to standard error, since they are not the packet. */
export function tellFindings(
  terminal: Terminal,
  words: Words,
  job: Job,
  typed: string,
  to: (text: string) => void,
): void {
  const measure = measureIn(job.room.units);
  for (const finding of job.findings) to(findingLines(terminal, words, measure, typed, finding));
  to(`${typed}: ${words.commands.openings(job.openings.length)}, ${tally(words, job.findings)}\n`);
  const [first] = job.findings;
  if (first !== undefined) to(`${terminal.colours.dim(words.commands.explainHint(first.code))}\n`);
}
