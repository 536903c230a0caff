import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { ownFolder } from "../command.js";
import type { Answer } from "./target.js";
import { Watched } from "./watched.js";

/**
 * Of any input up to a megabyte. Looking for the best places of very many loudspeakers is work in proportion, and has
 * this much more for each past what a house has. The clock's limit is for what never ends, on a busy machine too.
 */
const MOST_PROCESSOR_MS = 2000;
const MANY_LOUDSPEAKERS = 24;
const MORE_FOR_EACH_MS = 10;
const MORE_FOR_DRAWN_MS = 200;
const MOST_CLOCK_MS = 120_000;

const watched = new Watched();

export const noMoreQuestions = (): void => watched.end();

/** The answer to a command line; throws where there is none. */
export async function asked(folder: string, ...words: readonly string[]): Promise<Answer> {
  const outcome = await watched.ask({ folder, words }, MOST_CLOCK_MS);
  if (outcome.kind !== "answer") throw new Error(`${words.join(" ")}: ${outcome.kind}, ${outcome.how}`);
  return outcome;
}

/** The answer to a command line that reads and reckons; throws also where it took longer than a person waits. */
export async function inTime(folder: string, ...words: readonly string[]): Promise<Answer> {
  const more = Math.max(0, lookedForIn(folder) - MANY_LOUDSPEAKERS);
  return within(MOST_PROCESSOR_MS + MORE_FOR_EACH_MS * more, folder, words);
}

/**
 * The same where nothing gives more time, however many best places are looked for: what a run looks through is counted
 * (src/effort.ts).
 */
export const inTwoSeconds = (folder: string, ...words: readonly string[]): Promise<Answer> =>
  within(MOST_PROCESSOR_MS, folder, words);

const MOST_AWKWARD_MS = 4000;
const AWKWARD_LOUDSPEAKER_MS = 300;

/** The same for one that draws a room of so many loudspeakers that is as awkward as may be, among thousands of members. */
export const awkwardDrawnInTime = (
  loudspeakers: number,
  folder: string,
  ...words: readonly string[]
): Promise<Answer> => within(MOST_AWKWARD_MS + AWKWARD_LOUDSPEAKER_MS * loudspeakers, folder, words);

/** What `check` of the den takes once the program is warm, on the machine on which what may be looked through was set. */
const DEN_MS = 26;

/** How many times as long this machine takes just now; 1 where it is as quick or quicker. */
async function slownessOfMachine(): Promise<number> {
  const folder = ownFolder();
  roomIn(folder, readFileSync(DEN));
  let leastMs = Number.POSITIVE_INFINITY;
  for (let run = 0; run < 8; run += 1) {
    leastMs = Math.min(leastMs, (await asked(folder, "check", "room.yaml")).processorMs);
  }
  rmSync(folder, { recursive: true, force: true });
  return Math.max(1, leastMs / DEN_MS);
}

const DEN = join(import.meta.dirname, "..", "..", "..", "examples", "quarry-lane-den.yaml");

/** As `inTime`, for one that also draws the sheets of all these loudspeakers, a score of pages for each. */
export async function drawnInTime(
  loudspeakers: number,
  folder: string,
  ...words: readonly string[]
): Promise<Answer> {
  const [drawn, searched] = [loudspeakers, lookedForIn(folder)].map((count) =>
    Math.max(0, count - MANY_LOUDSPEAKERS),
  );
  const more = MORE_FOR_DRAWN_MS * (drawn ?? 0) + MORE_FOR_EACH_MS * (searched ?? 0);
  return within(MOST_PROCESSOR_MS + more, folder, words);
}

const MOST_TRIES = 3;

/**
 * A slow machine has time in proportion, and so has one that others keep busy for the moment: how slow it is, is asked
 * where something took too long, and then that is asked for again.
 */
async function within(mostMs: number, folder: string, words: readonly string[]): Promise<Answer> {
  const tookMs: number[] = [];
  while (tookMs.length < MOST_TRIES) {
    const answer = await asked(folder, ...words);
    if (answer.processorMs <= mostMs) return answer;
    const slowness = await slownessOfMachine();
    if (answer.processorMs <= mostMs * slowness) return answer;
    tookMs.push(Math.round(answer.processorMs / slowness));
  }
  throw new Error(`${words.join(" ")} took ${tookMs.join(", ")} ms`);
}

/** Loudspeakers whose places are looked for: those that ask for the best, and for each area what a shop's ceiling takes. */
function lookedForIn(folder: string): number {
  const rooms = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
  const text = rooms.map((name) => readFileSync(join(folder, name), "utf8")).join("\n");
  const count = (pattern: RegExp): number => text.match(pattern)?.length ?? 0;
  return count(/\bbest\b/gu) + 30 * count(/\bpattern:/gu);
}

/** Puts a room file into a folder. */
export const roomIn = (folder: string, bytes: Uint8Array | string): void =>
  writeFileSync(join(folder, "room.yaml"), bytes);

/** The same, with the longest that any of them took noted. */
export const inTimeNoted =
  (tried: { slowestMs: number }, ask = inTime) =>
  async (folder: string, ...words: readonly string[]): Promise<Answer> => {
    const answer = await ask(folder, ...words);
    tried.slowestMs = Math.max(tried.slowestMs, Math.round(answer.processorMs));
    return answer;
  };
