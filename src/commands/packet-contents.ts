import type { Job } from "../job.js";
import { jobJson } from "../job-json.js";
import type { PacketFile } from "../output/folder.js";
import { joinPdf, type PdfOptions } from "../output/pdf.js";
import { piecesOf } from "../output/svg.js";
import { bracketsCsv, cablesCsv, grillesCsv, openingsCsv } from "../sheets/csv.js";
import type { Order } from "../sheets/sheet.js";
import type { Asked } from "./asked.js";
import type { Made, MadePage } from "./made.js";

/** Every file of a packet as bytes, by its path in the folder. */
export async function packetFiles(order: Order, asked: Asked, made: Made): Promise<PacketFile[]> {
  const files: PacketFile[] = [];
  const add = (path: string, bytes: PacketFile["bytes"]): void => {
    files.push({ path, bytes });
  };
  if (asked.pdf) {
    for (const { path, title, pages } of volumesOf(made, asked)) {
      const drawn = pages.flatMap((page) => page.drawn ?? []);
      add(path, await joinPdf(drawn, pdfOptions(order, title, asked)));
    }
  }
  for (const { sheet, svg } of made.drawings) {
    if (svg !== null) add(`svg/${sheet}.svg`, piecesOf(svg));
  }
  if (asked.wanted === null) {
    add("csv/openings.csv", openingsCsv(order));
    add("csv/brackets.csv", bracketsCsv(order));
    add("csv/cables.csv", cablesCsv(order));
    add("csv/grilles.csv", grillesCsv(order));
  }
  add("packet.json", contentsJson(order.job, files, made));
  return files;
}

interface Volume {
  readonly path: string;
  readonly title: string;
  readonly pages: readonly MadePage[];
}

/** One PDF a trade and one with everything; label stock apart, since other paper lies in the tray for it. */
function volumesOf({ pages }: Made, { wanted }: Asked): readonly Volume[] {
  const forTrade = (trade: "drywall" | "installer") => pages.filter(({ trades }) => trades.includes(trade));
  const volumes = [
    { path: "packet.pdf", title: "packet", pages },
    { path: "drywall.pdf", title: "drywall", pages: forTrade("drywall") },
    { path: "installer.pdf", title: "installer", pages: forTrade("installer") },
    { path: "labels.pdf", title: "labels", pages: pages.filter(({ stock }) => stock) },
  ];
  return volumes.filter((volume, index) => volume.pages.length > 0 && (wanted === null || index === 0));
}

function pdfOptions(order: Order, volume: string, { correction }: Asked): PdfOptions {
  const { name, number, revision } = order.job.room.job;
  return {
    title: [name, number, revision, volume].filter((part) => part !== null).join(" · "),
    language: order.languages[0] ?? "en",
    layerNames: order.words.frame.layers,
    ...(correction === null ? {} : { correction: { x: correction.x, y: correction.y } }),
  };
}

function contentsJson(job: Job, files: readonly PacketFile[], { pages: made }: Made): string {
  const pages = made.map(({ number, sheet, trades, title }) => ({ number, sheet, trades, title }));
  const contents = { ...jobJson(job), files: files.map((file) => file.path), pages };
  return `${JSON.stringify(contents, null, 2)}\n`;
}
