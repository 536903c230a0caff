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
import { basename, dirname, join } from "node:path";

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
    if (!isSame(readFileSync(target), before)) return { kind: "changed" };
    swapIn(target, after);
    return { kind: "written" };
  } catch (error) {
    if (error instanceof Error && "syscall" in error && "code" in error) {
      return { kind: "unwritable", code: String(error.code) };
    }
    throw error;
  }
}

const isSame = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, index) => byte === b[index]);

function swapIn(target: string, bytes: Uint8Array): void {
  const fresh = join(dirname(target), `.${basename(target)}.baymark-new`);
  // One that a run left that was broken off; a link in its place is not followed.
  rmSync(fresh, { force: true });
  try {
    writeThrough(fresh, bytes);
    chmodSync(fresh, statSync(target).mode);
    renameSync(fresh, target);
  } catch (error) {
    rmSync(fresh, { force: true });
    throw error;
  }
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
