import { MessageChannel, type MessagePort, type Worker } from "node:worker_threads";
import type { Job } from "../job.js";
import type { CountedSheet } from "../sheets/packet.js";
import type { Asked } from "./asked.js";
import type { Made } from "./made.js";
import { noTurnsTaken, type Turns } from "./turns.js";

/** A thread that makes some of the sheets of a room at the same time. */
export interface Mate {
  readonly turns: Turns;
  /** What it made; null where it came to an end without. */
  readonly counts: () => Promise<MateCounts | null>;
  /** Tells it the numbers of its sheets; its sheets then, or null as before. */
  readonly sheets: (numbers: MateNumbers) => Promise<MateSheets | null>;
  /** Lets it go; its end is nobody's to wait for. */
  readonly dismiss: () => void;
}

/** Sheets of one room to make, as many as can be had; what is said of them goes through `port`. */
export interface ShareTask {
  readonly kind: "share";
  readonly port: MessagePort;
  readonly job: Job;
  readonly asked: Asked;
  readonly turns: Turns;
}

/** The sheets that a mate made, by their lot. */
export type MateCounts = ReadonlyMap<number, readonly CountedSheet[]>;

/** The number of the first page of each sheet, by their lot, and of how many pages. */
export interface MateNumbers {
  readonly firsts: ReadonlyMap<number, readonly number[]>;
  readonly of: number;
}

/** A mate's sheets as they are printed, by their lot. */
export type MateSheets = ReadonlyMap<number, Made>;

/** Null where there is no thread to be had. */
export type CallMate = (job: Job, asked: Asked) => Mate | null;

/** Makes a thread a mate for one room. */
export function mateOf(thread: Worker, job: Job, asked: Asked): Mate {
  const turns = noTurnsTaken();
  const { port1, port2 } = new MessageChannel();
  const answer = answersOf(thread, port1);
  const counts = answer<MateCounts>();
  const task: ShareTask = { kind: "share", port: port2, turns, job, asked };
  thread.postMessage(task, [port2]);
  return {
    turns,
    counts: () => counts,
    sheets: (numbers) => {
      const sheets = answer<MateSheets>();
      port1.postMessage(numbers);
      return sheets;
    },
    dismiss: () => {
      port1.close();
      void thread.terminate();
    },
  };
}

/** Waits for the next message; for null where the thread fails or ends before, which whoever waits can do without. */
function answersOf(thread: Worker, port: MessagePort) {
  const ended = new Promise<null>((resolve) => {
    thread.once("error", () => resolve(null));
    thread.once("exit", () => resolve(null));
    port.once("messageerror", () => resolve(null));
  });
  return <Message>(): Promise<Message | null> =>
    Promise.race([ended, new Promise<Message>((resolve) => port.once("message", resolve))]);
}
