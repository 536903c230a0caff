/*
 * Runs in a process of its own, so that one that never comes back can be ended: types command lines as the program
 * itself would get them, and tells what was said and how long the processor was at it.
 */
import { createRequire } from "node:module";
import { join } from "node:path";
import pico from "picocolors";
import type { Terminal } from "../../../src/commands/terminal.js";

/** The bundle that `npm run build` makes, as it is loaded for people. */
const { flagsFor, programFor, setFlags } = createRequire(import.meta.url)("../../../bin/load.js");
const program: typeof import("../../../src/cli.js") = programFor("report");

export interface Order {
  readonly folder: string;
  readonly words: readonly string[];
}

export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** Time of this process, not of the clock: other work on the machine does not count. */
  readonly processorMs: number;
}

async function answer({ folder, words }: Order): Promise<Answer> {
  const said = { out: "", err: "" };
  const terminal: Terminal = {
    folder,
    write: (text) => {
      said.out += text;
    },
    tell: (text) => {
      said.err += text;
    },
    progress: () => undefined,
    colours: pico.createColors(false),
  };
  const before = process.cpuUsage();
  setFlags();
  setFlags(flagsFor(words.map((word) => join(folder, word))));
  const code = await program.run(words, { terminal });
  const { user, system } = process.cpuUsage(before);
  return { code, ...said, processorMs: (user + system) / 1000 };
}

process.on("message", (order: Order) => {
  void answer(order).then((told) => process.send?.(told));
});
