import type { Words } from "../words/words.js";
import { type AnswerForm, answerEach, tellFindings } from "./answer.js";
import type { ExitCode } from "./exit-code.js";
import type { Terminal } from "./terminal.js";

/** Resolves and checks rooms and prints their findings with line and column. */
export function check(
  terminal: Terminal,
  words: Words,
  files: readonly string[],
  form: AnswerForm,
): ExitCode {
  return answerEach(terminal, words, files, {
    form,
    tell: (job, typed) => tellFindings(terminal, words, job, typed, terminal.write),
  });
}
