import { basename, extname, join } from "node:path";
import type { Job } from "../job.js";
import type { Words } from "../words/words.js";
import { type Asked, askedBy, type PrintFlags } from "./asked.js";
import { type Crew, printByCrew } from "./crew.js";
import { type ExitCode, worst } from "./exit-code.js";
import { type CallMate, type Mate, mateOf } from "./mate.js";
import { printRoom } from "./print-room.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";
import type { Wanted } from "./wanted.js";

export type { PrintFlags } from "./asked.js";

/**
 * Prints the packet of each room into its own folder, whole or not at all; the worst room's exit code. Two rooms and
 * more are shared out among a crew where there is one.
 */
export async function print(
  terminal: Terminal,
  words: Words,
  files: readonly string[],
  { flags, crew }: { readonly flags: PrintFlags; readonly crew: Crew | null },
): Promise<ExitCode> {
  const asked = askedBy(flags, words);
  const folders = foldersOf(files, flags.out, asked.wanted, words);
  const places = files.map((typed, index) => ({ typed, shown: folders[index] ?? "" }));
  if (crew !== null && places.length >= LEAST_FOR_CREW) {
    return worst(await printByCrew(terminal, words, crew, { flags, places }));
  }
  const codes: ExitCode[] = [];
  for (const place of places) codes.push(await printRoom(terminal, words, asked, place, mateFrom(crew)));
  return worst(codes);
}

/** A single room is shared by its sheets instead, where it is wanted whole. */
const LEAST_FOR_CREW = 2;

const mateFrom = (crew: Crew | null): CallMate | null => crew && ((job, asked) => mateOr(crew, job, asked));

/** The system may have no thread to give: then one does it all. */
function mateOr(crew: Crew, job: Job, asked: Asked): Mate | null {
  try {
    return mateOf(crew.start(), job, asked);
  } catch {
    return null;
  }
}

/** A folder for each room: `-o` itself for one room, a folder in it for several; part of a packet never replaces a whole one. */
function foldersOf(
  files: readonly string[],
  out: string | undefined,
  wanted: Wanted,
  words: Words,
): readonly string[] {
  const suffix = wanted === null ? "" : "-part";
  const names = files.map((file) => `${basename(file, extname(file))}${suffix}`);
  names.forEach((name, index) => {
    const first = names.indexOf(name);
    if (first !== index)
      throw new UsageError(words.commands.failure.sameName(files[first] ?? "", files[index] ?? ""));
  });
  if (out !== undefined && files.length === 1) return [out];
  return names.map((name) => join(out ?? "out", name));
}
