import { once } from "node:events";
import { Worker } from "node:worker_threads";
import { InternalError } from "../findings/internal-error.js";
import type { Language } from "../units/language.js";
import type { Words } from "../words/words.js";
import type { ExitCode } from "./exit-code.js";
import type { Place, PrintFlags } from "./print-room.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

/** Threads that print rooms side by side; a room goes to whoever is free, and what they say comes in the files' order. */
export interface Crew {
  /** The script that a thread runs, which answers each place with `Printed`. */
  readonly script: string;
  readonly count: number;
  /** That the terminal speaks. */
  readonly language: Language;
}

/** What a thread is told once, before the first room. */
export interface Briefing {
  readonly flags: PrintFlags;
  readonly folder: string;
  readonly colours: boolean;
  readonly language: Language;
}

export interface Said {
  readonly to: "write" | "tell";
  readonly text: string;
}

/** How the printing of one room ended. */
export type Printed =
  | { readonly kind: "printed"; readonly code: ExitCode; readonly said: readonly Said[] }
  | {
      readonly kind: "failed";
      readonly usage: boolean;
      readonly message: string;
      readonly said: readonly Said[];
    };

interface Work {
  readonly flags: PrintFlags;
  readonly places: readonly Place[];
}

/** The exit code of each room. Throws what a room threw, after the words of the rooms before it. */
export async function printByCrew(
  terminal: Terminal,
  words: Words,
  { script, count, language }: Crew,
  { flags, places }: Work,
): Promise<readonly ExitCode[]> {
  const colours = terminal.colours.isColorSupported;
  const briefing: Briefing = { flags, folder: terminal.folder, colours, language };
  const threads = Array.from(
    { length: Math.min(count, places.length) },
    () => new Worker(script, { workerData: briefing }),
  );
  try {
    return await sharedOut(terminal, words, threads, places);
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
}

async function sharedOut(
  terminal: Terminal,
  words: Words,
  threads: readonly Worker[],
  places: readonly Place[],
): Promise<readonly ExitCode[]> {
  const printed: Printed[] = [];
  const codes: ExitCode[] = [];
  let next = 0;
  /** Says what has ended without a gap before it. */
  const report = (): void => {
    for (let ended = printed[codes.length]; ended !== undefined; ended = printed[codes.length]) {
      codes.push(told(terminal, ended));
    }
    terminal.progress(words.commands.roomsDone(codes.length, places.length));
  };
  const work = async (thread: Worker): Promise<void> => {
    for (let index = next++; index < places.length; index = next++) {
      printed[index] = await answer(thread, places[index]);
      report();
    }
  };
  await Promise.all(threads.map(work));
  return codes;
}

/** Rejects where the thread itself comes to an end. */
async function answer(thread: Worker, place: Place | undefined): Promise<Printed> {
  thread.postMessage(place);
  const [ended]: Printed[] = await once(thread, "message");
  if (ended === undefined) throw new InternalError("a thread answered nothing");
  return ended;
}

function told(terminal: Terminal, ended: Printed): ExitCode {
  for (const { to, text } of ended.said) terminal[to](text);
  if (ended.kind === "printed") return ended.code;
  throw ended.usage ? new UsageError(ended.message) : new Error(ended.message);
}
