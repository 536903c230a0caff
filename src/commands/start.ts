import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import type { UnitSystem } from "../room/room.js";
import { startFile } from "../room/start.js";
import type { Language } from "../units/language.js";
import type { Words } from "../words/words.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import { reasonOf } from "./printer-profile.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

export interface StartOptions {
  readonly file: string;
  readonly units: UnitSystem;
  readonly language: Language;
}

/** Writes a commented room file to begin from; never over a file that is there. */
export function start(terminal: Terminal, words: Words, options: StartOptions): ExitCode {
  const text = startFile({ language: options.language, units: options.units });
  try {
    writeFileSync(resolve(terminal.folder, options.file), text, { flag: "wx" });
  } catch (cause) {
    const reason = reasonOf(cause);
    const { exists, unwritable } = words.commands.failure;
    throw new UsageError(reason === "EEXIST" ? exists(options.file) : unwritable(options.file, reason));
  }
  terminal.tell(`${words.commands.wrote(options.file)}\n`);
  return EXIT.clean;
}
