import { resolve } from "node:path";
import { hasGlyph } from "../drawing/coverage.js";
import { InternalError } from "../findings/internal-error.js";
import { distanceMm } from "../geometry/surface-point.js";
import { replaceFile } from "../output/file.js";
import type { CoverPlace, Filling } from "../place/cover/fill.js";
import type { Placed } from "../place/place.js";
import { atTexts } from "../place-json.js";
import { readRoom } from "../room/read.js";
import { resolveRoom } from "../room/resolve.js";
import type { Room } from "../room/room.js";
import { type Addition, spliced } from "../room/splice.js";
import type { Words } from "../words/words.js";
import type { Loaded } from "./load.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

type LoadedJob = Extract<Loaded, { kind: "job" }>;

/** What is to be written besides the best places: areas filled, and loudspeakers that stay as they are. */
interface Also {
  readonly fillings: readonly Filling[];
  readonly locked: readonly string[];
}

/**
 * Writes computed positions into the room file in the place of `best`, and the loudspeakers that fill areas behind
 * the others; every other byte as it was. A locked loudspeaker stays as it is. Throws `UsageError` where the file cannot be written or was changed meanwhile.
 */
export function freeze(
  terminal: Terminal,
  words: Words,
  { typed, job, bytes }: LoadedJob,
  { fillings, locked }: Also,
): void {
  const placed = job.placing.placed.filter(({ mounted }) => !locked.includes(mounted.speaker.id));
  const filled = fillings.flatMap((filling) => (filling.kind === "filled" ? filling.places : []));
  const count = placed.length + filled.length;
  if (count === 0) return void terminal.tell(`${typed}: ${words.placing.nothingToWrite}\n`);
  const after = written(job.room, bytes, { placed, filled });
  const result = replaceFile(resolve(terminal.folder, typed), { before: bytes, after });
  if (result.kind === "changed") throw new UsageError(words.placing.failure.changed(typed));
  if (result.kind === "unwritable") {
    throw new UsageError(words.commands.failure.unwritable(typed, result.code));
  }
  terminal.tell(`${words.placing.frozen(count, typed)}\n`);
}

interface Found {
  readonly placed: readonly Placed[];
  readonly filled: readonly CoverPlace[];
}

/** The file with the positions in it, read again to make sure that it says what was found. */
function written({ units }: Room, bytes: Uint8Array, { placed, filled }: Found): Uint8Array {
  const splices = placed.map(({ mounted, tapes }) => ({
    path: [...mounted.speaker.path, "at"],
    map: atTexts(tapes, units),
  }));
  const after = spliced(bytes, splices, [speakersAdded(filled, units)]);
  const read = readRoom(after, "", { hasGlyph });
  const room = read.ok ? resolveRoom(read.file) : null;
  if (room === null || !room.ok || ![...placed, ...filled].every((one) => standsIn(room.room, one))) {
    throw new InternalError("the room file would not say what was found; it was left alone");
  }
  return after;
}

/** Each as a person would type it. */
const speakersAdded = (filled: readonly CoverPlace[], units: Room["units"]): Addition => ({
  key: "speakers",
  entries: filled.map(({ mounted: { speaker }, tapes }) => [
    ["id", speaker.id],
    ["area", speaker.channel],
    ["model", speaker.model.name],
    ["on", speaker.surface],
    ["at", atTexts(tapes, units)],
  ]),
});

/** Far less than a tape shows, and more than is lost between a file's text and a point. */
const WRITTEN_WITHIN_MM = 1e-3;

function standsIn({ speakers }: Room, { mounted }: Pick<Placed, "mounted">): boolean {
  const position = speakers.find(({ id }) => id === mounted.speaker.id)?.position;
  return position?.kind === "given" && distanceMm(position.centre, mounted.centre) < WRITTEN_WITHIN_MM;
}
