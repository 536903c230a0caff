import { existsSync, mkdirSync } from "node:fs";
import { dirname } from "node:path";

/**
 * Makes a folder with whatever folders it takes above it; returns the topmost that was made, null where all stood.
 * Throws the system's error where it refuses. Step by step, since Node's own `recursive` never returns where the
 * system says that a folder in an existing one has no such parent, as it does below `/proc`.
 */
export function makeFolder(folder: string): string | null {
  const missing: string[] = [];
  for (let at = folder; !existsSync(at) && at !== dirname(at); at = dirname(at)) missing.push(at);
  for (const each of missing.toReversed()) makeOne(each);
  return missing.at(-1) ?? null;
}

/** Another run may have made it since it was looked for. */
function makeOne(folder: string): void {
  try {
    mkdirSync(folder);
  } catch (cause) {
    const isThere = cause instanceof Error && "code" in cause && cause.code === "EEXIST";
    if (!isThere) throw cause;
  }
}
