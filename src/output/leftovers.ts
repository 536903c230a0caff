import { randomBytes } from "node:crypto";
import {
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  renameSync,
  rmSync,
  statSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { listedIn, MARKER } from "./packet-files.js";

/*
 * What a run puts beside a packet's folder, or a file, while it replaces it, by names of its own: two runs at once do not touch
 * one another's, and the next run tells what one that was broken off has left.
 */

export interface Places {
  readonly target: string;
  /** The new packet while it is being written: only once it is whole does the old one move. */
  readonly fresh: string;
  /** The old packet while the new one takes its place. */
  readonly former: string;
}

/** Names of this run's own beside a packet's folder, or beside a file (`fresh` only). */
export function placesFor(target: string): Places {
  const run = `${process.pid}-${randomBytes(4).toString("hex")}`;
  return placesOf(target, run);
}

function placesOf(target: string, run: string): Places {
  const beside = (ending: string): string => join(dirname(target), `${beginningFor(target)}${ending}-${run}`);
  return { target, fresh: beside("new"), former: beside("old") };
}

const beginningFor = (target: string): string => `.${basename(target)}.baymark-`;

/** Links that point at one another without end are the system's to refuse. Our own choice. */
const MOST_LINKS = 40;

/** What stands at the end of a path's links, even where it is not there now: a link to a folder stays one. */
export function behindLinks(path: string): string {
  let at = resolve(path);
  for (let links = 0; links < MOST_LINKS && isLink(at); links++) at = resolve(dirname(at), readlinkSync(at));
  return at;
}

const isLink = (path: string): boolean =>
  lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;

/**
 * Finishes or undoes swaps that were broken off and takes away what they left. Where nothing stands at the target, the
 * new packet takes its place if it is whole, else the old one comes back.
 */
export function settle(target: string): void {
  for (const places of brokenOff(target)) {
    const { fresh, former } = places;
    const swapBegan = existsSync(former);
    if (swapBegan && !existsSync(target)) comeBack(places);
    removePacket(fresh);
    removePacket(former);
  }
}

function comeBack({ target, fresh, former }: Places): void {
  const whole = [fresh, former].find(isWhole);
  if (whole === undefined) return;
  try {
    renameSync(whole, target);
  } catch (error) {
    if (!isOccupied(error)) throw error;
  }
}

/** True of the system's answer where a folder stands already, with something in it: another run was quicker. */
export const isOccupied = (error: unknown): boolean =>
  error instanceof Error && "code" in error && (error.code === "ENOTEMPTY" || error.code === "EEXIST");

/** Places of runs that are over and did not clear up. */
export function brokenOff(target: string): readonly Places[] {
  const beginning = beginningFor(target);
  const runs = readdirSync(dirname(target))
    .filter((name) => name.startsWith(beginning))
    .flatMap((name) => /^(?:new|old)-(\d+-[0-9a-f]{8})$/u.exec(name.slice(beginning.length))?.[1] ?? []);
  return [...new Set(runs)]
    .filter((run) => !isRunning(Number.parseInt(run, 10)))
    .map((run) => placesOf(target, run));
}

/** This process is here, and so is none of its number that left something. */
function isRunning(id: number): boolean {
  if (id === process.pid) return false;
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return error instanceof Error && "code" in error && error.code === "EPERM";
  }
}

/** Whether every file is there that the marker lists; it is written last and taken away first. */
function isWhole(packet: string): boolean {
  if (!existsSync(join(packet, MARKER))) return false;
  const listed = listedIn(readFileSync(join(packet, MARKER)));
  return listed !== null && [...listed].every((path) => isFile(join(packet, ...path.split("/"))));
}

const isFile = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() === true;

/** Takes a packet away, its marker first: what is left of one by a broken-off run is never taken for whole. */
export function removePacket(folder: string): void {
  rmSync(join(folder, MARKER), { force: true });
  rmSync(folder, { recursive: true, force: true });
}
