import { closest } from "fastest-levenshtein";
import type { Job } from "../job.js";
import { alternativesOf, type OtherBays } from "../place/alternatives.js";
import { type Filling, fillAreas } from "../place/cover/fill.js";
import { effortBeside } from "../place/place.js";
import { placingJson } from "../place-json.js";
import { MOST_LOOKS_FOR_OTHER_BAYS } from "../standards/house-limits.js";
import { measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import { exitOf, tellUnusable, unusableJson } from "./answer.js";
import { areasTold } from "./areas-told.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import { freeze } from "./freeze.js";
import { load } from "./load.js";
import { placesTold } from "./places-told.js";
import type { Terminal } from "./terminal.js";
import { findingLines } from "./told.js";
import { UsageError } from "./usage-error.js";

export interface PlaceFlags {
  readonly write?: boolean;
  readonly rank?: string;
  readonly lock?: readonly string[];
  readonly json?: boolean;
  readonly language?: string;
}

/** Finds the best clear places and prints them, with other bays where asked for; `write` puts them into the file. */
export function place(terminal: Terminal, words: Words, typed: string, flags: PlaceFlags): ExitCode {
  const bays = baysTyped(flags.rank, words);
  const locked = flags.lock ?? [];
  const loaded = load(terminal, words, typed);
  if (loaded.kind !== "job") {
    if (flags.json === true) terminal.write(`${JSON.stringify(unusableJson(loaded))}\n`);
    else tellUnusable(terminal, words, loaded);
    return EXIT.unusable;
  }
  const { job } = loaded;
  refuseUnknown(job, locked, words);
  const alternatives = bays === null ? NONE : alternativesFor(job, { bays, locked });
  const fillings = fillAreas(job.room, job.openings);
  if (flags.json === true) terminal.write(`${JSON.stringify(placingJson(job, alternatives, fillings))}\n`);
  else tellPlaces(terminal, words, typed, { job, alternatives, fillings });
  if (flags.write === true) freeze(terminal, words, loaded, { fillings, locked });
  return fillings.every(({ kind }) => kind === "filled") ? exitOf(loaded) : EXIT.errors;
}

const NONE: ReadonlyMap<string, OtherBays> = new Map();
const MOST_BAYS = 20;

/** How many bays to show; null where nothing was typed. */
function baysTyped(typed: string | undefined, words: Words): number | null {
  if (typed === undefined) return null;
  const bays = /^\d{1,3}$/u.test(typed) ? Number(typed) : 0;
  if (bays < 2 || bays > MOST_BAYS) throw new UsageError(words.placing.failure.badRank(typed, MOST_BAYS));
  return bays;
}

function refuseUnknown({ room }: Job, locked: readonly string[], words: Words): void {
  const ids = room.speakers.map(({ id }) => id);
  const unknown = locked.find((id) => !ids.includes(id));
  if (unknown === undefined) return;
  throw new UsageError(
    words.placing.failure.unknownLock(unknown, ids.length === 0 ? "" : closest(unknown, ids)),
  );
}

interface Asked {
  readonly bays: number;
  readonly locked: readonly string[];
}

function alternativesFor({ room, openings, placing }: Job, { bays, locked }: Asked) {
  const effort = effortBeside(placing, MOST_LOOKS_FOR_OTHER_BAYS);
  return alternativesOf({ room, mounted: openings, count: bays - 1, locked, effort });
}

/** The places, then what is to be said of them and of those that have none. */
function tellPlaces(
  terminal: Terminal,
  words: Words,
  typed: string,
  told: Parameters<typeof placesTold>[2] & { readonly fillings: readonly Filling[] },
): void {
  const { room, findings } = told.job;
  const places = placesTold(terminal, words, told);
  const areas = areasTold(terminal, words, told);
  const nothing = `${words.placing.nobodyAsks}\n`;
  terminal.write([places, areas].filter((text) => text !== "").join("\n") || nothing);
  const asking = new Set(
    room.speakers.filter(({ position }) => position.kind === "best").map(({ id }) => id),
  );
  const theirs = findings.filter(
    ({ speaker, level }) => speaker !== null && asking.has(speaker) && level !== "note",
  );
  if (theirs.length > 0) terminal.write("\n");
  for (const finding of theirs) {
    terminal.write(findingLines(terminal, words, measureIn(room.units), typed, finding));
  }
}
