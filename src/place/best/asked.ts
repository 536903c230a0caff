import type { Heading } from "../../listen/direction.js";
import type { Mounted } from "../../listen/mounted.js";
import { preferredHeading, toward } from "../../listen/preferred.js";
import { windowOf } from "../../listen/window.js";
import { type Room, type Speaker, type Surface, surfaceNamed } from "../../room/room.js";
import { fittingOf } from "../fitting.js";
import { jointsThrough } from "../joints-through.js";
import type { Asking } from "./asking.js";
import { type Cost, costAt, type Wish } from "./cost.js";
import { type GroundFor, takenByNeighbours } from "./ground.js";
import { hasTwoTapes } from "./tape-choice.js";

/**
 * Why no place was looked for: the standard has no direction, nobody knows the framing, no two tapes would fix it, or there
 * is too much to look at.
 */
export type Unaskable = "no-direction" | "framing-unknown" | "no-tapes" | "not-looked-for";

/** A loudspeaker and what is wanted of its place; null where nothing can be looked for, and why. */
export type Asked =
  | { readonly speaker: Speaker; readonly asking: Asking; readonly unaskable: null }
  | { readonly speaker: Speaker; readonly asking: null; readonly unaskable: Unaskable };

/** Asks for loudspeakers of a room on its grounds, beside others whose places are settled. */
export function askedIn(
  room: Room,
  settled: readonly Mounted[],
  groundFor: GroundFor,
): (speaker: Speaker) => Asked {
  return (speaker) => {
    const heading = preferredHeading(room, speaker.channel);
    const surface = surfaceNamed(room, speaker.surface);
    if (heading === null) return { speaker, asking: null, unaskable: "no-direction" };
    if (surface.framing.kind === "unknown") return { speaker, asking: null, unaskable: "framing-unknown" };
    const hold = speaker.position.kind === "best" ? speaker.position.hold : [];
    if (hold.length === 0 && !hasTwoTapes(room, surface))
      return { speaker, asking: null, unaskable: "no-tapes" };
    const fitting = fittingOf(speaker, room.checks);
    const ground = groundFor(surface, fitting);
    if (ground === null) return { speaker, asking: null, unaskable: "not-looked-for" };
    const asking: Asking = {
      speaker,
      ground,
      wish: wishOf(room, speaker, heading),
      hold,
      kept: takenByNeighbours(on(surface, settled), fitting),
    };
    return { speaker, asking, unaskable: null };
  };
}

/** Where the standard would have a loudspeaker, and what it costs to be elsewhere. */
export interface Against {
  readonly preferred: Heading;
  readonly cost: Cost;
}

/** A loudspeaker where it is, against the standard; null for low-frequency effects. */
export function againstStandard(room: Room, mounted: Mounted): Against | null {
  const { speaker, surface, centre, position } = mounted;
  const preferred = preferredHeading(room, speaker.channel);
  if (preferred === null) return null;
  const isOverJoint = jointsThrough(surface, speaker.opening, centre).length > 0;
  return { preferred, cost: costAt(wishOf(room, speaker, preferred), { position, isOverJoint }) };
}

const on = ({ name }: Surface, mounted: readonly Mounted[]): readonly Mounted[] =>
  mounted.filter(({ surface }) => surface.name === name);

const wishOf = (room: Room, { channel }: Speaker, heading: Heading): Wish => ({
  ear: room.reference.ear,
  preferred: toward(heading),
  window: windowOf(room, channel),
  jointDeg: room.checks.jointDeg,
});
