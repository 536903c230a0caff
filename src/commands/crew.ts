import { once } from "node:events";
import type { Worker } from "node:worker_threads";
import { InternalError } from "../findings/internal-error.js";
import type { Language } from "../units/language.js";
import type { Words } from "../words/words.js";
import type { Place, PrintFlags } from "./asked.js";
import type { ExitCode } from "./exit-code.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

/** Threads that print side by side; a room goes to whoever is free, and what they say comes in the files' order. */
export interface Crew {
  /** Starts one, which does each task that it is told. */
  readonly start: () => Worker;
  readonly count: number;
  /** That the terminal speaks. */
  readonly language: Language;
}

/** A room to print, answered with `Printed`. */
export interface RoomTask {
  readonly kind: "room";
  readonly place: Place;
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

/**
 * The exit code of each room. Throws what a room threw, once the rooms that were begun by then are done and told; no
 * others are begun.
 */
export async function printByCrew(
  terminal: Terminal,
  words: Words,
  { start: startThread, count, language }: Crew,
  { flags, places }: Work,
): Promise<readonly ExitCode[]> {
  const colours = terminal.colours.isColorSupported;
  const common = { kind: "room" as const, flags, folder: terminal.folder, colours, language };
  const threads = new Set<Worker>();
  const start = (): Worker => {
    const thread = startThread();
    threads.add(thread);
    return thread;
  };
  const { report, ended } = reporting(terminal, words, places.length);
  let left = [...places.entries()];
  const work = async (): Promise<void> => {
    let thread = start();
    for (let rooms = 1; ; rooms++) {
      const [next, ...others] = left;
      if (next === undefined) return;
      left = others;
      const [index, place] = next;
      const printed = await answer(thread, { ...common, place });
      if (printed.kind === "failed") left = [];
      report(index, printed);
      if (rooms % ROOMS_A_THREAD !== 0) continue;
      await thread.terminate();
      threads.delete(thread);
      thread = start();
    }
  };
  try {
    await Promise.all(Array.from({ length: Math.min(count, places.length) }, work));
    return ended();
  } finally {
    await Promise.all([...threads].map((thread) => thread.terminate()));
  }
}

/** Then another takes its place: V8 is in no hurry to give back what earlier rooms took. */
const ROOMS_A_THREAD = 24;

/** Says what has ended as soon as nothing before it is missing, and the rest in the end. */
function reporting(terminal: Terminal, words: Words, of: number) {
  const waiting = new Map<number, Printed>();
  const told: Printed[] = [];
  const tell = (index: number, printed: Printed): void => {
    waiting.delete(index);
    told.push(printed);
    for (const { to, text } of printed.said) terminal[to](text);
  };
  const report = (index: number, printed: Printed): void => {
    waiting.set(index, printed);
    for (let next = waiting.get(told.length); next !== undefined; next = waiting.get(told.length)) {
      tell(told.length, next);
    }
    terminal.progress(words.commands.roomsDone(told.length, of));
  };
  const ended = (): readonly ExitCode[] => {
    for (const [index, printed] of [...waiting].toSorted(([one], [other]) => one - other))
      tell(index, printed);
    return told.map(codeOf);
  };
  return { report, ended };
}

function codeOf(printed: Printed): ExitCode {
  if (printed.kind === "printed") return printed.code;
  throw printed.usage ? new UsageError(printed.message) : new Error(printed.message);
}

/** Rejects where the thread itself comes to an end. */
async function answer(thread: Worker, task: RoomTask): Promise<Printed> {
  const heard = new AbortController();
  const { signal } = heard;
  const message: Promise<Printed[]> = once(thread, "message", { signal });
  const exit = once(thread, "exit", { signal }).then((): Printed[] => []);
  try {
    thread.postMessage(task);
    const [printed] = await Promise.race([message, exit]);
    if (printed === undefined) throw new InternalError("a thread ended before it answered");
    return printed;
  } finally {
    heard.abort();
    // What was not waited for to its end is of no interest.
    await Promise.allSettled([message, exit]);
  }
}
