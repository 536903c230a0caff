import { readFileSync, statSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { writePdf } from "../output/pdf.js";
import { rulerPage } from "../sheets/ruler-page.js";
import { parseLength } from "../units/length.js";
import { type Words, wordsIn } from "../words/words.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import { languagesTyped, marginsTyped, paperTyped } from "./options.js";
import { correctionFor } from "./printer-correction.js";
import { keepPrinterProfile, reasonOf } from "./printer-profile.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

export interface RulerFlags {
  readonly language?: string;
  readonly out: string;
  readonly paper?: string;
  readonly margin?: string;
  readonly printer?: string;
  readonly across?: string;
  readonly down?: string;
}

/** Prints the page that proves a printer's scale; with what was measured on it, keeps the printer's profile instead. */
export async function ruler(terminal: Terminal, words: Words, flags: RulerFlags): Promise<ExitCode> {
  if (flags.across !== undefined || flags.down !== undefined) return keepMeasured(terminal, words, flags);
  const languages = languagesTyped(flags.language ?? "en", words);
  const sheetWords = wordsIn(languages);
  const correction = correctionFor(flags.printer, sheetWords);
  const page = rulerPage({
    words: sheetWords,
    language: languages[0] ?? "en",
    paper: paperTyped(flags.paper ?? "letter", words),
    margins: marginsTyped(flags.margin, words),
    correction: correction?.words ?? null,
  });
  const bytes = await writePdf([page], {
    title: page.title,
    language: page.language,
    layerNames: sheetWords.frame.layers,
    ...(correction === null ? {} : { correction: { x: correction.x, y: correction.y } }),
  });
  writePage(resolve(terminal.folder, flags.out), bytes, flags.out, words);
  terminal.tell(`${words.commands.wrote(flags.out)}\n`);
  return EXIT.clean;
}

/** Over another page, and never over what is none, such as a room file. */
function writePage(file: string, bytes: Uint8Array, typed: string, words: Words): void {
  const { exists, unwritable } = words.commands.failure;
  try {
    // A pipe or a device holds nothing to lose, and reading it might never end.
    const holds = statSync(file, { throwIfNoEntry: false })?.isFile() === true;
    if (holds && !isPdf(readFileSync(file))) throw new UsageError(exists(typed));
    writeFileSync(file, bytes);
  } catch (cause) {
    throw cause instanceof UsageError ? cause : new UsageError(unwritable(typed, reasonOf(cause)));
  }
}

const isPdf = (bytes: Buffer): boolean => bytes.subarray(0, 5).toString("latin1") === "%PDF-";

function keepMeasured(terminal: Terminal, words: Words, flags: RulerFlags): ExitCode {
  const { printer, across, down } = flags;
  if (printer === undefined || across === undefined || down === undefined) {
    throw new UsageError(words.commands.failure.bothMeasured);
  }
  const profile = { acrossMm: measuredMm(across, words), downMm: measuredMm(down, words) };
  keepPrinterProfile(printer, profile, words);
  const mm = (value: number): string => `${value} mm`;
  terminal.tell(`${words.commands.ruler.kept(printer, mm(profile.acrossMm), mm(profile.downMm))}\n`);
  return EXIT.clean;
}

function measuredMm(typed: string, words: Words): number {
  const read = parseLength(typed);
  if (!read.ok || read.mm < 80 || read.mm > 120)
    throw new UsageError(words.commands.failure.badMeasured(typed));
  return read.mm;
}
