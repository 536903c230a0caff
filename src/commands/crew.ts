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

/** The exit code of each room. Throws what a room threw, after the words of the rooms before it. */
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
  const { report, codes } = reporting(terminal, words, places.length);
  let next = 0;
  const work = async (): Promise<void> => {
    let thread = start();
    for (let index = next++, rooms = 1; ; index = next++, rooms++) {
      const place = places[index];
      if (place === undefined) return;
      report(index, await answer(thread, { ...common, place }));
      if (rooms % ROOMS_A_THREAD !== 0) continue;
      await thread.terminate();
      threads.delete(thread);
      thread = start();
    }
  };
  try {
    await Promise.all(Array.from({ length: Math.min(count, places.length) }, work));
    return codes;
  } finally {
    await Promise.all([...threads].map((thread) => thread.terminate()));
  }
}

/** Then another takes its place: V8 is in no hurry to give back what earlier rooms took. */
const ROOMS_A_THREAD = 24;

/** Says what has ended as soon as nothing before it is missing. */
function reporting(terminal: Terminal, words: Words, of: number) {
  const printed = new Map<number, Printed>();
  const codes: ExitCode[] = [];
  const report = (index: number, how: Printed): void => {
    printed.set(index, how);
    for (let ended = printed.get(codes.length); ended !== undefined; ended = printed.get(codes.length)) {
      printed.delete(codes.length);
      codes.push(told(terminal, ended));
    }
    terminal.progress(words.commands.roomsDone(codes.length, of));
  };
  return { report, codes };
}

/** Rejects where the thread itself comes to an end. */
async function answer(thread: Worker, task: RoomTask): Promise<Printed> {
  thread.postMessage(task);
  const [ended]: Printed[] = await once(thread, "message");
  if (ended === undefined) throw new InternalError("a thread answered nothing");
  return ended;
}

function told(terminal: Terminal, ended: Printed): ExitCode {
  for (const { to, text } of ended.said) terminal[to](text);
  if (ended.kind === "printed") return ended.code;
  throw ended.usage ? new UsageError(ended.message) : new Error(ended.message);
}
