import { run as runAny, type Surroundings } from "./cli.js";
import { check } from "./commands/check.js";
import type { ExitCode } from "./commands/exit-code.js";

/**
 * The program for a line that begins with `check`, which is typed most: bundled without the other commands and what
 * only they need, it is half as large and starts so much sooner.
 */
export const run = (typed: readonly string[], surroundings: Surroundings = {}): Promise<ExitCode> =>
  runAny(typed, { ...surroundings, loaded: { check } });
