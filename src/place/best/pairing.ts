import { toWorld } from "../../geometry/frame.js";
import { type SurfacePoint, subtract, unit } from "../../geometry/vector.js";
import type { Mounted } from "../../listen/mounted.js";
import type { Room } from "../../room/room.js";
import type { Asking } from "./asking.js";
import { type Decision, single } from "./decision.js";
import { matchBetween } from "./match.js";

/** Why a loudspeaker is not kept matched with its partner. */
export type Unmatched =
  /** Their surfaces have no places that match: a wall and a ceiling, one side wall twice. */
  | "surfaces"
  /** The partner is matched with another one. */
  | "partner-taken"
  /** The partner has no place. */
  | "partner-nowhere"
  /** No two places that match are clear together, or not where the partner stands. */
  | "nothing-clear";

/** A decision, and why it is not of a pair where the file asks for one. */
export interface Paired {
  readonly decision: Decision;
  readonly unmatched: Unmatched | null;
  /** The place that matches a partner whose own place is settled. */
  readonly image: SurfacePoint | null;
}

const paired = (decision: Decision, unmatched: Unmatched | null = null): Paired => ({
  decision,
  unmatched,
  image: null,
});

/** Pairs of those that ask for it, the left one of each leading; alone, those that ask for none or cannot have it. */
export function pairUp(
  room: Room,
  askings: readonly Asking[],
  settled: readonly Mounted[],
): readonly Paired[] {
  return askings.flatMap((asking) => {
    const partner = partnerAmong(askings, asking);
    if (partner === null) return alone(room, asking, { askings, settled });
    return isLeader(asking, partner) ? together(room, asking, partner) : [];
  });
}

const mirrorOf = ({ speaker: { position } }: Asking): string | null =>
  position.kind === "best" ? position.mirror : null;

/** The other one of its pair: both name each other, or one names and the other, named first by this one, names none. */
function partnerAmong(askings: readonly Asking[], asking: Asking): Asking | null {
  const named = mirrorOf(asking);
  if (named === null) return firstToName(askings, asking);
  const partner = askings.find(({ speaker }) => speaker.id === named) ?? null;
  if (partner === null || mirrorOf(partner) === asking.speaker.id) return partner;
  return mirrorOf(partner) === null && firstToName(askings, partner) === asking ? partner : null;
}

const firstToName = (askings: readonly Asking[], { speaker }: Asking): Asking | null =>
  askings.find((other) => mirrorOf(other) === speaker.id) ?? null;

/** The left one, or of two on one side the first of the file. */
function isLeader(asking: Asking, partner: Asking): boolean {
  const leftBy = partner.wish.preferred.x - asking.wish.preferred.x;
  return leftBy === 0 ? indexOf(asking) < indexOf(partner) : leftBy > 0;
}

const indexOf = ({ speaker: { path } }: Asking): number => Number(path.at(-1));

function together(room: Room, leader: Asking, follower: Asking): readonly Paired[] {
  const match = matchBetween(room, leader.ground.surface, follower.ground.surface);
  if (match !== null) return [paired({ kind: "pair", leader, follower, match })];
  return apart(leader, follower, "surfaces");
}

/** The two of a pair each for itself. */
export const apart = (leader: Asking, follower: Asking, unmatched: Unmatched): readonly Paired[] =>
  [leader, follower].map((asking) => paired(single(asking), unmatched));

interface Around {
  readonly askings: readonly Asking[];
  readonly settled: readonly Mounted[];
}

function alone(room: Room, asking: Asking, { askings, settled }: Around): readonly Paired[] {
  const named = mirrorOf(asking);
  if (named === null) return [paired(single(asking))];
  const partner = settled.find(({ speaker }) => speaker.id === named);
  if (partner !== undefined) return [besideSettled(room, asking, partner)];
  const isAsking = askings.some(({ speaker }) => speaker.id === named);
  return [paired(single(asking), isAsking ? "partner-taken" : "partner-nowhere")];
}

/** A partner whose place is settled leaves one place that matches it; what is wanted then is the direction to that. */
function besideSettled(room: Room, asking: Asking, partner: Mounted): Paired {
  const { surface } = asking.ground;
  const match = matchBetween(room, partner.surface, surface);
  if (match === null) return paired(single(asking), "surfaces");
  const image = match(partner.centre);
  const at = toWorld(surface.frame, image, surface.boardMm);
  const preferred = unit(subtract(at, asking.wish.ear));
  return { ...paired(single({ ...asking, wish: { ...asking.wish, preferred } })), image };
}
