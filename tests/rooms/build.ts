import { stringify } from "yaml";
import { type ReadResult, readRoom } from "../../src/room/read.js";
import { resolveRoom } from "../../src/room/resolve.js";
import type { Room, Speaker } from "../../src/room/room.js";

/*
 * Rooms for tests. A test says only what matters to it; the rest is a plain metric box, 4 x 6 x 2.6 m on framing
 * faces, with measured framing everywhere, so that nothing is found in it. What is said goes the whole way: YAML
 * text, reading, resolving.
 */

export type Value = string | number | boolean | null | readonly Value[] | Parts;
/** Keys of the room file. A map goes into the default one, anything else takes its place, null takes it away. */
export interface Parts {
  readonly [key: string]: Value;
}

/** Members every 600 mm, and one at the end, so that no stretch is left unknown. */
const every600 = (endMm: number): readonly string[] => [
  ...Array.from({ length: Math.ceil(endMm / 600) - 1 }, (_, index) => `${600 * (index + 1)} mm`),
  `${endMm} mm`,
];

const studs = (from: string, endMm: number): Parts => ({
  member: { width: "45 mm", depth: "120 mm" },
  from,
  at: every600(endMm),
});

/** The plain box: joists across it every 600 mm, studs likewise, two models, one seat in the middle, no loudspeaker. */
export const PLAIN: Parts = {
  baymark: 1,
  job: { name: "Test room" },
  units: "metric",
  room: { width: "4 m", length: "6 m", height: "2.6 m", measured_to: "framing" },
  board: { ceiling: "12.5 mm", walls: "12.5 mm" },
  framing: {
    ceiling: {
      run: "left-right",
      member: { width: "45 mm", depth: "220 mm" },
      from: "front",
      at: every600(6000),
    },
    left: studs("front", 6000),
    right: studs("front", 6000),
    front: studs("left", 4000),
    back: studs("left", 4000),
  },
  models: {
    round: {
      opening: { round: "200 mm" },
      flange: { round: "230 mm" },
      depth: "90 mm",
      clamp_reach: "12 mm",
    },
    tilted: {
      opening: { round: "200 mm" },
      flange: { round: "230 mm" },
      depth: "150 mm",
      clamp_reach: "12 mm",
      baffle_tilt: "20 deg",
      coverage: "120 deg",
    },
    upright: {
      opening: { width: "180 mm", height: "300 mm" },
      flange: { width: "210 mm", height: "330 mm" },
      depth: "90 mm",
      clamp_reach: "12 mm",
    },
  },
  seats: [{ name: "middle", at: { left: "2 m", front: "3 m" }, ear: "1.2 m", reference: true }],
};

/** Corners of a tray of 2 x 2 m in the plain room's ceiling, 2 to 4 m from the front wall. */
export const TRAY_CORNERS: Value = [
  ["1 m", "2 m"],
  ["3 m", "2 m"],
  ["3 m", "4 m"],
  ["1 m", "4 m"],
];

/** What a loudspeaker is where the test does not care. */
const SPEAKER: Parts = { id: "S1", model: "round", on: "ceiling" };

/** What fills an area has no channel. */
const filledIn = (speaker: Parts): Parts => ({
  ...SPEAKER,
  ...("area" in speaker ? {} : { channel: "M+000" }),
  ...speaker,
});

function isParts(value: Value | undefined): value is Parts {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function merged(plain: Parts, said: Parts): Parts {
  const keys = [...new Set([...Object.keys(plain), ...Object.keys(said)])];
  return Object.fromEntries(keys.flatMap((key) => entry(key, plain[key], said[key])));
}

function entry(key: string, plain: Value | undefined, said: Value | undefined): readonly [string, Value][] {
  if (said === undefined) return plain === undefined ? [] : [[key, plain]];
  if (said === null) return [];
  return [[key, isParts(plain) && isParts(said) ? merged(plain, said) : said]];
}

/** The text of a room file. Loudspeakers get `SPEAKER`'s keys where they have none of their own. */
export function roomText(said: Parts = {}): string {
  const { speakers, ...rest } = said;
  const entries = Array.isArray(speakers) ? speakers : [];
  const filled = entries.map((speaker: Value) => (isParts(speaker) ? filledIn(speaker) : speaker));
  return stringify({ ...merged(PLAIN, rest), speakers: filled }, { aliasDuplicateObjects: false });
}

/** What reading says of such a file; every character counts as drawable. */
export const readParts = (said: Parts = {}): ReadResult =>
  readRoom(roomText(said), "test.yaml", { hasGlyph: () => true });

/** The resolved room of such a file. Throws with every complaint where there is one. */
export function room(said: Parts = {}): Room {
  return roomOf(roomText(said));
}

/** The resolved room of a file's text. Throws with every complaint where there is one. */
export function roomOf(text: string): Room {
  const read = readRoom(text, "test.yaml", { hasGlyph: () => true });
  if (!read.ok) throw new Error(`${text}\n${told(read.complaints)}`);
  const resolved = resolveRoom(read.file);
  if (!resolved.ok) throw new Error(`${text}\n${told(resolved.problems)}`);
  return resolved.room;
}

const told = (complaints: readonly object[]): string =>
  complaints.map((each) => JSON.stringify(each)).join("\n");

/** The loudspeaker of that id. */
export function speakerNamed({ speakers }: Room, id: string): Speaker {
  const speaker = speakers.find((each) => each.id === id);
  if (speaker === undefined) throw new Error(`no loudspeaker ${id}`);
  return speaker;
}
