import type { PacketFile } from "../../../src/output/folder.js";

/** A packet of a few files, each of which holds the words, so that a mixture shows; drawings are written in pieces. */
export function packetOf(words: string): readonly PacketFile[] {
  const paths = ["packet.pdf", "drywall.pdf", "svg/floor.svg", `svg/only-${words}.svg`, "csv/openings.csv"];
  const marker = JSON.stringify({ baymark: 1, files: paths, words });
  return [
    { path: "packet.json", bytes: marker },
    ...paths.map((path) => ({
      path,
      bytes: path.endsWith(".svg") ? inPieces(words, path) : text(words, path),
    })),
  ];
}

const text = (words: string, path: string): string => `${words} ${path}\n`.repeat(50);

const inPieces = (words: string, path: string): readonly Uint8Array[] =>
  ["before", "between", "after"].map((piece) => Buffer.from(text(`${words} ${piece}`, path)));
