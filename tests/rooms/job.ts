import type { Finding } from "../../src/findings/finding.js";
import { answerRoom, type Job, type Opening } from "../../src/job.js";
import type { Room } from "../../src/room/room.js";
import { type Parts, room } from "./build.js";

/** The answer about a room whose file has no lines. */
export const answer = (one: Room): Job =>
  answerRoom({
    file: "test.yaml",
    fingerprint: "0".repeat(64),
    room: one,
    locate: () => ({ line: 1, column: 1 }),
  });

export const job = (said: Parts = {}): Job => answer(room(said));

/** The findings of a room, the ones about framing that is only assumed left out. */
export const findingsOf = (said: Parts): readonly Finding[] =>
  job(said).findings.filter(({ code }) => code !== "framing-assumed");

export const codesOf = (said: Parts): readonly string[] => findingsOf(said).map(({ code }) => code);

/** The opening of that loudspeaker, or of the first. */
export function openingNamed({ openings }: Job, id?: string): Opening {
  const opening = openings.find(({ speaker }) => id === undefined || speaker.id === id);
  if (opening === undefined) throw new Error(`no opening ${id}`);
  return opening;
}
