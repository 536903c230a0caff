import {
  closeSync,
  existsSync,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, sep } from "node:path";
import { behindLinks, isOccupied, type Places, placesFor, removePacket, settle } from "./leftovers.js";
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
 * The new packet is written beside, the old one renamed away and the new one renamed in: whenever the run is broken
 * off, the one or the other is there whole, at the latest after `settlePacket`. Of two runs at once the later one's
 * packet stays. Throws an InternalError for paths that leave the folder and the like, which only we can cause.
 */
export function replacePacket(target: string, files: readonly PacketFile[]): PacketResult {
  refuseBadFiles(files);
  return refusable(() => {
    const places = placesFor(behindLinks(target));
    if (existsSync(dirname(places.target))) settle(places.target);
    if (!isFreeOrOurs(places.target, MOST_TRIES)) return { kind: "not-ours" };
    writeBeside(places, files);
    swap(places);
    return { kind: "written" };
  });
}

/** Finishes or undoes a swap that was broken off, so that the packet of before or after it stands at `target`. */
export function settlePacket(target: string): PacketResult {
  return refusable(() => {
    const path = behindLinks(target);
    if (existsSync(dirname(path))) settle(path);
    return { kind: "written" };
  });
}

/** Files that a system's file browser leaves behind by itself. */
const LITTER: ReadonlySet<string> = new Set([".DS_Store", "Thumbs.db", "desktop.ini"]);

/** Looked at again where another run puts its own packet there meanwhile: half of one and half of another is none. */
function isFreeOrOurs(target: string, tries: number): boolean {
  const before = standingAt(target);
  try {
    const answer = isFreeOrOursNow(target);
    if (answer || tries === 1 || standingAt(target) === before) return answer;
  } catch (error) {
    if (!isGone(error) || tries === 1) throw error;
  }
  return isFreeOrOurs(target, tries - 1);
}

/** Which folder stands there; null where none does. */
function standingAt(target: string): string | null {
  const found = statSync(target, { bigint: true, throwIfNoEntry: false });
  return found === undefined ? null : [found.dev, found.ino, found.birthtimeNs].join(" ");
}

const isGone = (error: unknown): boolean =>
  error instanceof Error && "code" in error && error.code === "ENOENT";

function isFreeOrOursNow(target: string): boolean {
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
  const isMarker = ({ path }: PacketFile): boolean => path === MARKER;
  try {
    for (const file of files.filter((each) => !isMarker(each))) writeInto(fresh, file);
    // The marker last: a packet that has it has everything.
    for (const file of files.filter(isMarker)) writeInto(fresh, file);
    // On a shared drive a run on another machine may take this one for broken off, and its files away.
    for (const { path } of files) statSync(join(fresh, ...path.split("/")));
  } catch (error) {
    attempt(() => removePacket(fresh));
    if (made !== null) attempt(() => removeEmpty(dirname(fresh), made));
    throw error;
  }
}

/** Folders from the lowest up to the topmost; one that another run has meanwhile put something into stays. */
function removeEmpty(lowest: string, topmost: string): void {
  for (let at = lowest; at.startsWith(topmost); at = dirname(at)) rmdirSync(at);
}

function writeInto(folder: string, { path, bytes }: PacketFile): void {
  const file = join(folder, ...path.split("/"));
  makeFolder(dirname(file));
  if (typeof bytes === "string" || bytes instanceof Uint8Array) writeFileSync(file, bytes);
  else writePieces(file, bytes);
}

function writePieces(path: string, pieces: readonly Uint8Array[]): void {
  const file = openSync(path, "w");
  try {
    for (const piece of pieces) writeFileSync(file, piece);
  } finally {
    closeSync(file);
  }
}

/** Whoever prints into the same folder is done in a moment. Our own choice. */
const MOST_TRIES = 100;

function swap(places: Places): void {
  const { fresh, former } = places;
  for (let tries = 1; !isSwapped(places, tries); tries++) attempt(() => removePacket(former));
  // The new packet stands: an old one that cannot be taken away is no failure, and the next run tries again.
  attempt(() => removePacket(former));
  attempt(() => removePacket(fresh));
}

/** False where another run's packet has come in between, to be tried again. */
function isSwapped({ target, fresh, former }: Places, tries: number): boolean {
  try {
    moveAway(target, former);
    renameSync(fresh, target);
    return true;
  } catch (error) {
    if (isOccupied(error) && tries < MOST_TRIES) return false;
    if (!existsSync(target)) attempt(() => renameSync(former, target));
    attempt(() => removePacket(fresh));
    throw error;
  }
}

function moveAway(target: string, former: string): void {
  try {
    renameSync(target, former);
  } catch (error) {
    if (!isGone(error)) throw error;
  }
}

/** What the system may refuse without harm. */
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
