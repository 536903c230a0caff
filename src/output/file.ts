import {
  chmodSync,
  closeSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from "node:fs";
import { brokenOff, placesFor } from "./leftovers.js";

export type FileResult =
  | { readonly kind: "written" }
  /** The file is not any more what it was when it was read; it was left alone. */
  | { readonly kind: "changed" }
  /** The system refused, with its own code, such as EACCES or ENOSPC; the file is as it was. */
  | { readonly kind: "unwritable"; readonly code: string };

export interface Replacement {
  /** What the file held when it was read. */
  readonly before: Uint8Array;
  readonly after: Uint8Array;
}

/**
 * Replaces what a file holds as a whole or not at all: written beside it, then renamed over it. Its permissions stay;
 * a link stays one, and what it points to is replaced.
 */
export function replaceFile(path: string, { before, after }: Replacement): FileResult {
  try {
    const target = realpathSync(path);
    // Files of runs that were broken off; a link in the place of one is not followed.
    for (const { fresh } of brokenOff(target)) rmSync(fresh, { force: true });
    return { kind: swapIn(target, { before, after }) ? "written" : "changed" };
  } catch (error) {
    if (error instanceof Error && "syscall" in error && "code" in error) {
      return { kind: "unwritable", code: String(error.code) };
    }
    throw error;
  }
}

const isSame = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, index) => byte === b[index]);

/** By a name of this run's own, so that two at once do not take one another's; whether the file was still the same. */
function swapIn(target: string, { before, after }: Replacement): boolean {
  const { fresh } = placesFor(target);
  try {
    writeThrough(fresh, after);
    chmodSync(fresh, statSync(target).mode);
    // As late as it can be looked at: writing takes longer than a person needs to save.
    if (isSame(readFileSync(target), before)) {
      renameSync(fresh, target);
      return true;
    }
  } catch (error) {
    rmSync(fresh, { force: true });
    throw error;
  }
  rmSync(fresh, { force: true });
  return false;
}

/** Written to the disk itself before anything is renamed, so that no power cut leaves half of it. */
function writeThrough(path: string, bytes: Uint8Array): void {
  const file = openSync(path, "wx");
  try {
    let written = 0;
    while (written < bytes.length) written += writeSync(file, bytes, written);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
