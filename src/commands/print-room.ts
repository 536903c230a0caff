import { resolve } from "node:path";
import type { Job } from "../job.js";
import { jobJson } from "../job-json.js";
import { type PacketFile, type PacketResult, replacePacket, settlePacket } from "../output/folder.js";
import { type PdfOptions, writePdf } from "../output/pdf.js";
import { writeSvg } from "../output/svg.js";
import { bracketsCsv, cablesCsv, grillesCsv, openingsCsv } from "../sheets/csv.js";
import { orderOf } from "../sheets/order.js";
import { type Packet, type PrintedPage, packetOf } from "../sheets/packet.js";
import type { Order } from "../sheets/sheet.js";
import type { Words } from "../words/words.js";
import { exitOf, tellFindings, tellUnusable } from "./answer.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import { load } from "./load.js";
import { languagesTyped, marginsTyped, paperTyped } from "./options.js";
import { type Correction, correctionFor } from "./printer-correction.js";
import type { Terminal } from "./terminal.js";
import { asksFullSize, asksPoles, onlyWanted, type Wanted, wantedTyped } from "./wanted.js";

export interface PrintFlags {
  readonly language?: string;
  readonly json?: boolean;
  readonly out?: string;
  readonly strict?: boolean;
  readonly printer?: string;
  readonly only?: string;
  readonly paper?: string;
  readonly margin?: string;
  readonly svg?: boolean;
  readonly pdf?: boolean;
}

/** What was asked of a print, read once for all rooms. */
export interface Asked {
  readonly orderFor: (job: Job) => Order;
  readonly correction: Correction | null;
  readonly wanted: Wanted;
  readonly strict: boolean;
  readonly json: boolean;
  readonly svg: boolean;
  readonly pdf: boolean;
}

/** Reads what was asked. Throws `UsageError` for what cannot be. */
export function askedBy(flags: PrintFlags, words: Words): Asked {
  const wanted = wantedTyped(flags.only);
  const correction = correctionFor(flags.printer, words);
  const wishes = {
    paper: flags.paper === undefined ? null : paperTyped(flags.paper, words),
    languages: flags.language === undefined ? null : languagesTyped(flags.language, words),
    margins: marginsTyped(flags.margin, words),
    correction: correction?.words ?? null,
    fullSize: asksFullSize(wanted),
    poles: asksPoles(wanted),
  };
  const both = flags.svg !== true && flags.pdf !== true;
  return {
    orderFor: (job) => orderOf(job, wishes),
    correction,
    wanted,
    strict: flags.strict === true,
    json: flags.json === true,
    svg: both || flags.svg === true,
    pdf: both || flags.pdf === true,
  };
}

/** A room file and where its packet goes. */
export interface Place {
  readonly typed: string;
  /** As it is told. */
  readonly shown: string;
}

/** Prints the packet of one room into its folder, whole or not at all. */
export async function printRoom(
  terminal: Terminal,
  words: Words,
  asked: Asked,
  place: Place,
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
  const order = asked.orderFor(job);
  const wanted = packetOf(order, (sheets) => onlyWanted(sheets, asked.wanted, words));
  const files = await packetFiles(terminal, words, asked, order, wanted);
  const written = replacePacket(resolve(terminal.folder, place.shown), files);
  if (written.kind !== "written") {
    terminal.tell(`baymark: ${unwritten(words, place.shown, written)}\n`);
    return EXIT.unusable;
  }
  if (asked.json) terminal.write(`${JSON.stringify(jobJson(job))}\n`);
  const counts = words.commands.packetOf(wanted.pages.length, wanted.drawings.length);
  terminal.tell(`${words.commands.wrote(place.shown)}: ${counts}\n`);
  if (code === EXIT.errors) terminal.tell(`${words.commands.cutNone}\n`);
  return code;
}

/** Every file of a packet as bytes, by its path in the folder. */
async function packetFiles(
  terminal: Terminal,
  words: Words,
  asked: Asked,
  order: Order,
  wanted: Packet,
): Promise<PacketFile[]> {
  const name = order.job.room.job.name;
  const files: PacketFile[] = [];
  const add = (path: string, bytes: Uint8Array | string): void => {
    files.push({ path, bytes: typeof bytes === "string" ? new TextEncoder().encode(bytes) : bytes });
  };
  if (asked.pdf) {
    const volumes = volumesOf(wanted, asked.wanted);
    for (const [index, volume] of volumes.entries()) {
      terminal.progress(words.commands.progress(name, index, volumes.length));
      const options = pdfOptions(order, volume.title, asked.correction);
      add(
        volume.path,
        await writePdf(
          volume.pages.map((page) => page.page),
          options,
        ),
      );
    }
  }
  if (asked.svg) {
    wanted.drawings.forEach((drawing, index) => {
      terminal.progress(words.commands.progress(name, index, wanted.drawings.length));
      add(`svg/${drawing.sheet}.svg`, writeSvg(drawing.draw()));
    });
  }
  if (asked.wanted === null) {
    add("csv/openings.csv", openingsCsv(order));
    add("csv/brackets.csv", bracketsCsv(order));
    add("csv/cables.csv", cablesCsv(order));
    add("csv/grilles.csv", grillesCsv(order));
  }
  add("packet.json", contentsJson(order.job, files, wanted));
  return files;
}

interface Volume {
  readonly path: string;
  readonly title: string;
  readonly pages: readonly PrintedPage[];
}

/** One PDF a trade and one with everything; label stock apart, since other paper lies in the tray for it. */
function volumesOf(wanted: Packet, only: Wanted): readonly Volume[] {
  const { pages } = wanted;
  const volumes = [
    { path: "packet.pdf", title: "packet", pages },
    { path: "drywall.pdf", title: "drywall", pages: pages.filter((page) => page.trades.includes("drywall")) },
    {
      path: "installer.pdf",
      title: "installer",
      pages: pages.filter((page) => page.trades.includes("installer")),
    },
    { path: "labels.pdf", title: "labels", pages: pages.filter((page) => page.stock) },
  ];
  return volumes.filter((volume, index) => volume.pages.length > 0 && (only === null || index === 0));
}

function pdfOptions(order: Order, volume: string, correction: Correction | null): PdfOptions {
  const { name, number, revision } = order.job.room.job;
  return {
    title: [name, number, revision, volume].filter((part) => part !== null).join(" · "),
    language: order.languages[0] ?? "en",
    layerNames: order.words.frame.layers,
    ...(correction === null ? {} : { correction: { x: correction.x, y: correction.y } }),
  };
}

function contentsJson(job: Job, files: readonly PacketFile[], wanted: Packet): string {
  const pages = wanted.pages.map(({ number, sheet, trades, page }) => ({
    number,
    sheet,
    trades,
    title: page.title,
  }));
  const contents = { ...jobJson(job), files: files.map((file) => file.path), pages };
  return `${JSON.stringify(contents, null, 2)}\n`;
}

function unwritten(
  words: Words,
  folder: string,
  problem: Exclude<PacketResult, { kind: "written" }>,
): string {
  const { notOurs, unwritable } = words.commands.failure;
  return problem.kind === "not-ours" ? notOurs(folder) : unwritable(folder, problem.code);
}
