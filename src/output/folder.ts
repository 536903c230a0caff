import {
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve, sep } from "node:path";
import { makeFolder } from "./make-folder.js";
import { listedIn, MARKER, type PacketFile, refuseBadFiles } from "./packet-files.js";

export type { PacketFile } from "./packet-files.js";

export type PacketResult =
  | { readonly kind: "written" }
  /** Something stands there that is no packet of ours, or holds files that no packet wrote; it was left alone. */
  | { readonly kind: "not-ours" }
  /** The system refused, with its own code, such as EACCES or ENOSPC; what stood there before stands there still. */
  | { readonly kind: "unwritable"; readonly code: string };

/**
 * Makes `target` a folder that holds exactly these files, or leaves everything as it was. The files must include
 * `packet.json`, an object with the key `baymark` and a list `files` of all the others (texts, or objects with a
 * `path`): by it the folder is known as ours the next time, and files that somebody else put there are not lost.
 * The new packet is written beside, the old one renamed away and the new one renamed in. Throws an InternalError for
 * paths that leave the folder and the like, which only we can cause.
 */
export function replacePacket(target: string, files: readonly PacketFile[]): PacketResult {
  refuseBadFiles(files);
  return refusable(() => {
    const places = placesFor(target);
    settle(places);
    if (!isFreeOrOurs(places.target)) return { kind: "not-ours" };
    writeBeside(places, files);
    swap(places);
    return { kind: "written" };
  });
}

/** Finishes or undoes a swap that was interrupted, so that the packet of before or after it stands at `target`. */
export function settlePacket(target: string): PacketResult {
  return refusable(() => {
    settle(placesFor(target));
    return { kind: "written" };
  });
}

interface Places {
  readonly target: string;
  /** The new packet while it is being written: only once it is whole does the old one move. */
  readonly fresh: string;
  /** The old packet while the new one takes its place. */
  readonly former: string;
}

/** A link to a folder stays, and what it points to is replaced. */
function placesFor(target: string): Places {
  const path = existsSync(target) ? realpathSync(target) : resolve(target);
  const beside = (ending: string): string => join(dirname(path), `.${basename(path)}.baymark-${ending}`);
  return { target: path, fresh: beside("new"), former: beside("old") };
}

function settle({ target, fresh, former }: Places): void {
  if (existsSync(former) && !existsSync(target)) renameSync(existsSync(fresh) ? fresh : former, target);
  remove(fresh);
  remove(former);
}

const remove = (folder: string): void => rmSync(folder, { recursive: true, force: true });

/** Files that a system's file browser leaves behind by itself. */
const LITTER: ReadonlySet<string> = new Set([".DS_Store", "Thumbs.db", "desktop.ini"]);

function isFreeOrOurs(target: string): boolean {
  if (!existsSync(target)) return true;
  if (!statSync(target).isDirectory()) return false;
  const found = filesBelow(target);
  if (found.length === 0) return true;
  if (!found.includes(MARKER)) return false;
  const listed = listedIn(readFileSync(join(target, MARKER)));
  return listed !== null && found.every((path) => path === MARKER || listed.has(path));
}

function filesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => !LITTER.has(basename(path)) && !lstatSync(join(folder, path)).isDirectory())
    .map((path) => path.split(sep).join("/"));
}

/** Folders that had to be made on the way are taken away again where the packet could not be written. */
function writeBeside({ fresh }: Places, files: readonly PacketFile[]): void {
  const made = makeFolder(fresh);
  try {
    for (const { path, bytes } of files) {
      const file = join(fresh, ...path.split("/"));
      makeFolder(dirname(file));
      writeFileSync(file, bytes);
    }
  } catch (error) {
    remove(made ?? fresh);
    throw error;
  }
}

function swap(places: Places): void {
  const { target, fresh, former } = places;
  try {
    if (existsSync(target)) renameSync(target, former);
    renameSync(fresh, target);
  } catch (error) {
    if (existsSync(former) && !existsSync(target)) renameSync(former, target);
    remove(fresh);
    throw error;
  }
  // The new packet stands: an old one that cannot be taken away is no failure, and the next run tries again.
  attempt(() => remove(former));
}

function attempt(action: () => void): void {
  refusable(() => {
    action();
    return { kind: "written" };
  });
}

/** What the system refuses is a result; everything else is our own failure and goes on. */
function refusable(action: () => PacketResult): PacketResult {
  try {
    return action();
  } catch (error) {
    if (error instanceof Error && "syscall" in error && "code" in error) {
      return { kind: "unwritable", code: String(error.code) };
    }
    throw error;
  }
}
