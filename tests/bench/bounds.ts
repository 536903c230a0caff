import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { timed } from "./timed.js";

/*
 * Whether the program has become much slower, for every checkout to ask: the largest example against a bare start of
 * Node, by processor time, which waits for nobody. The best of some runs, and bounds with room for a busy machine; what
 * it takes on a quiet one is `npm run bench`'s to say.
 */

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const PROGRAM = join(ROOT, "bin", "baymark.js");
const ELEVEN = join(ROOT, "examples", "quarry-lane-den.yaml");
const RUNS = 7;

const scratch = mkdtempSync(join(tmpdir(), "baymark-bounds-"));
const best = (words: readonly string[]): number =>
  Math.min(...Array.from({ length: RUNS }, () => timed([process.execPath, ...words]).workMs));

try {
  const bareMs = best(["-e", "0"]);
  const bounds = [
    { what: "check", words: ["check", ELEVEN], most: 3 },
    { what: "print", words: ["print", ELEVEN, "-o", join(scratch, "den")], most: 16 },
  ];
  for (const { what, words, most } of bounds) {
    const times = best([PROGRAM, ...words]) / bareMs;
    process.stdout.write(`${what}: ${times.toFixed(1)} times a bare start of Node, at most ${most}\n`);
    if (times > most) process.exitCode = 1;
  }
} finally {
  rmSync(scratch, { recursive: true });
}
