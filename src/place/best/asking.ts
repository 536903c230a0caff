import type { SurfacePoint } from "../../geometry/vector.js";
import type { Speaker, Tape } from "../../room/room.js";
import type { Wish } from "./cost.js";
import type { Ground, Taken } from "./ground.js";

/** A loudspeaker that asks for its best place: what is to be let in where, and what is wanted. */
export interface Asking {
  readonly speaker: Speaker;
  readonly ground: Ground;
  readonly wish: Wish;
  /** Tapes that the file fixes. */
  readonly hold: readonly Tape[];
  /** What else must not be met: openings whose places are settled, bays that are ruled out. */
  readonly kept: readonly Taken[];
}

export const alsoKept = (asking: Asking, more: readonly Taken[]): Asking => ({
  ...asking,
  kept: [...asking.kept, ...more],
});

/** Whether a centre is clear by the exact rule, and of all that must not be met besides. */
export function isClearFor({ ground, kept }: Asking, centre: SurfacePoint): boolean {
  return ground.isClear(centre) && kept.every(({ distanceMm }) => distanceMm(centre.u, centre.v) >= 0);
}
