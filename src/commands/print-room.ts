import { resolve } from "node:path";
import { jobJson } from "../job-json.js";
import { type PacketResult, replacePacket, settlePacket } from "../output/folder.js";
import { orderOf } from "../sheets/order.js";
import { packetOf } from "../sheets/packet.js";
import type { Order } from "../sheets/sheet.js";
import type { Words } from "../words/words.js";
import { exitOf, tellFindings, tellUnusable } from "./answer.js";
import type { Asked, Place } from "./asked.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import { load } from "./load.js";
import { type Made, madeOf } from "./made.js";
import type { CallMate } from "./mate.js";
import { packetFiles } from "./packet-contents.js";
import type { Terminal } from "./terminal.js";
import { madeTogether } from "./together.js";
import { onlyWanted } from "./wanted.js";

/** Prints the packet of one room into its folder, whole or not at all; with a mate where there is one. */
export async function printRoom(
  terminal: Terminal,
  words: Words,
  asked: Asked,
  place: Place,
  callMate: CallMate | null = null,
): Promise<ExitCode> {
  // What an earlier run was broken off at is put right even where this one comes to nothing.
  settlePacket(resolve(terminal.folder, place.shown));
  const loaded = load(terminal, words, place.typed);
  if (loaded.kind !== "job") {
    tellUnusable(terminal, words, loaded);
    return EXIT.unusable;
  }
  const { job } = loaded;
  const code = exitOf(loaded);
  if (!asked.json) tellFindings(terminal, words, job, place.typed, terminal.tell);
  if (asked.strict && code === EXIT.errors) {
    terminal.tell(`${words.commands.stopped}\n`);
    return code;
  }
  const order = orderOf(job, asked.wishes);
  const { name } = job.room.job;
  const done = (count: number, of: number): void =>
    terminal.progress(words.commands.progress(name, count, of));
  const sheets = (await madeWithMate(order, asked, { callMate, done })) ?? made(order, asked, words, done);
  const files = await packetFiles(order, asked, sheets);
  const written = replacePacket(resolve(terminal.folder, place.shown), files);
  if (written.kind !== "written") {
    terminal.tell(`baymark: ${unwritten(words, place.shown, written)}\n`);
    return EXIT.unusable;
  }
  if (asked.json) terminal.write(`${JSON.stringify(jobJson(job))}\n`);
  const counts = words.commands.packetOf(sheets.pages.length, sheets.drawings.length);
  terminal.tell(`${words.commands.wrote(place.shown)}: ${counts}\n`);
  if (code === EXIT.errors) terminal.tell(`${words.commands.cutNone}\n`);
  return code;
}

type Done = (count: number, of: number) => void;

/** The whole packet; null where only a part is wanted, where there is no mate, or where it was of no use. */
async function madeWithMate(
  order: Order,
  asked: Asked,
  { callMate, done }: { readonly callMate: CallMate | null; readonly done: Done },
): Promise<Made | null> {
  if (callMate === null || asked.wanted !== null) return null;
  const mate = callMate(order.job, asked);
  if (mate === null) return null;
  try {
    return await madeTogether(order, asked, { mate, done });
  } finally {
    mate.dismiss();
  }
}

/** What is asked for of the packet, made. */
function made(order: Order, asked: Asked, words: Words, done: Done): Made {
  const wanted = packetOf(order, (sheets) => onlyWanted(sheets, asked.wanted, words));
  const of = wanted.pages.length + wanted.drawings.length;
  return madeOf(wanted, asked, { done: (count) => done(count, of) });
}

function unwritten(
  words: Words,
  folder: string,
  problem: Exclude<PacketResult, { kind: "written" }>,
): string {
  const { notOurs, unwritable } = words.commands.failure;
  return problem.kind === "not-ours" ? notOurs(folder) : unwritable(folder, problem.code);
}
