import { createHash } from "node:crypto";
import { existsSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import type { PacketFile } from "../../../src/output/folder.js";
import { hashesBelow } from "../command.js";

function hashOf(bytes: PacketFile["bytes"]): string {
  const hash = createHash("sha256");
  for (const piece of Array.isArray(bytes) ? bytes : [bytes]) hash.update(piece);
  return hash.digest("hex");
}

/** Paths and hashes in one text: what a folder holds, or would hold. */
export const contents = (files: readonly PacketFile[]): string =>
  files
    .map(({ path, bytes }) => `${path} ${hashOf(bytes)}`)
    .sort()
    .join("\n");

export const found = (folder: string): string | null =>
  existsSync(folder)
    ? [...hashesBelow(folder)]
        .map(([path, hash]) => `${path} ${hash}`)
        .sort()
        .join("\n")
    : null;

/** Whatever stands beside a packet's folder besides it. */
export function beside(folder: string): readonly string[] {
  const above = dirname(folder);
  return existsSync(above) ? readdirSync(above).filter((name) => join(above, name) !== folder) : [];
}
