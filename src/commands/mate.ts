import { once } from "node:events";
import { Worker } from "node:worker_threads";
import type { CountedSheet } from "../sheets/packet.js";
import type { Language } from "../units/language.js";
import type { PrintFlags } from "./asked.js";
import type { Made } from "./made.js";
import { noTurnsTaken, type Turns } from "./turns.js";

/** A thread that reads the same room and makes some of its sheets at the same time. */
export interface Mate {
  readonly turns: Turns;
  /** What it made; null where it came to an end without. */
  readonly counts: () => Promise<MateCounts | null>;
  /** Tells it the numbers of its sheets; its sheets then, or null as before. */
  readonly sheets: (numbers: MateNumbers) => Promise<MateSheets | null>;
  readonly dismiss: () => Promise<unknown>;
}

/** What a mate is told when it is called. */
export interface MateBriefing {
  readonly task: "share";
  readonly flags: PrintFlags;
  readonly language: Language;
  readonly folder: string;
  /** The room file as it was typed. */
  readonly typed: string;
  readonly turns: Turns;
}

/** The sheets that a mate made, by their kind, and from what. */
export interface MateCounts {
  readonly basis: string;
  readonly kinds: ReadonlyMap<number, readonly CountedSheet[]>;
}

/** The number of the first page of each sheet, by their kind, and of how many pages. */
export interface MateNumbers {
  readonly firsts: ReadonlyMap<number, readonly number[]>;
  readonly of: number;
}

/** A mate's sheets as they are printed, by their kind. */
export type MateSheets = ReadonlyMap<number, Made>;

/** Calls a mate, which starts at once. `script` is what a thread runs that calls `workInCrew`. */
export function callMate(script: string, told: Omit<MateBriefing, "task" | "turns">): Mate {
  const turns = noTurnsTaken();
  const workerData: MateBriefing = { task: "share", ...told, turns };
  const thread = new Worker(script, { workerData });
  const counts = answer<MateCounts>(thread);
  return {
    turns,
    counts: () => counts,
    sheets: (numbers) => {
      const sheets = answer<MateSheets>(thread);
      thread.postMessage(numbers);
      return sheets;
    },
    dismiss: () => thread.terminate(),
  };
}

/** The next message; null where the thread fails or ends before, since whoever called it can do without. */
async function answer<Message>(thread: Worker): Promise<Message | null> {
  const ended = new AbortController();
  const { signal } = ended;
  try {
    const message: Promise<[Message]> = once(thread, "message", { signal }) as Promise<[Message]>;
    const none = once(thread, "exit", { signal }).then(() => null);
    const [heard] = (await Promise.race([message, none])) ?? [null];
    return heard;
  } catch {
    return null;
  } finally {
    ended.abort();
  }
}
