import { distanceMm } from "../geometry/surface-point.js";
import type { Heading } from "../listen/direction.js";
import { type Mounted, mountedIn } from "../listen/mounted.js";
import { preferredHeading, toward } from "../listen/preferred.js";
import { windowOf } from "../listen/window.js";
import { type Room, type Speaker, surfaceNamed, type Tape } from "../room/room.js";
import type { Asking } from "./best/asking.js";
import { type Cost, costAt, type Wish } from "./best/cost.js";
import { groundsFinder, takenByNeighbours } from "./best/ground.js";
import { type InTheWay, inTheWayOf } from "./best/in-the-way.js";
import { keptApart } from "./best/keep-apart.js";
import { onLines } from "./best/lines.js";
import { mountedOf } from "./best/meeting.js";
import { apart, type Paired, pairUp, type Unmatched } from "./best/pairing.js";
import { type Solved, solve } from "./best/solve.js";
import { fittingOf } from "./fitting.js";
import { TAPE_STEP_MM } from "./nearest-clear.js";

export type { InTheWay, Unmatched };

/** A loudspeaker at the best place that was found for it. */
export interface Placed {
  readonly mounted: Mounted;
  /** From the nearest walls, or those that the file holds; to the faces that its tapes hook on. */
  readonly tapes: readonly [Tape, Tape];
  /** Where the standard would have it. */
  readonly preferred: Heading;
  /** How far it is from there, and from what the layout allows. */
  readonly cost: Cost;
  readonly inTheWay: readonly InTheWay[];
  /** Ids of those that share its line from front to back. */
  readonly line: readonly string[];
}

export interface Unplaced {
  readonly speaker: Speaker;
  readonly because: "no-direction" | "framing-unknown" | "nothing-clear";
}

/** A loudspeaker that is not where its partner is mirrored to. */
export interface Mismatched {
  readonly speaker: Speaker;
  readonly partner: string;
  readonly because: Unmatched;
}

/** The answer to every `at: best` of a room. */
export interface Placing {
  readonly placed: readonly Placed[];
  readonly unplaced: readonly Unplaced[];
  readonly mismatched: readonly Mismatched[];
}

/** The best clear places for all loudspeakers that ask for one, decided together. */
export function placeAll(room: Room): Placing {
  const settled = mountedIn(room);
  const asked = room.speakers.filter(({ position }) => position.kind === "best").map(askedIn(room, settled));
  const askings = asked.flatMap(({ asking }) => asking ?? []);
  const answers = pairUp(room, askings, settled).flatMap((paired) => answer(room, paired));
  const { solved } = keptApart(
    room,
    answers.flatMap((one) => one.solved ?? []),
  );
  const lined = onLines(room, solved, room.checks.lineDeg);
  const placed = inFileOrder(
    room,
    lined.flatMap((one) => placedOf(room, one)),
  );
  return { placed, unplaced: unplacedOf(asked, placed), mismatched: mismatchesOf(room, answers, placed) };
}

interface Asked {
  readonly speaker: Speaker;
  /** Null where nothing can be looked for, and why. */
  readonly asking: Asking | null;
  readonly because: Unplaced["because"];
}

function askedIn(room: Room, settled: readonly Mounted[]): (speaker: Speaker) => Asked {
  const groundFor = groundsFinder();
  return (speaker) => {
    const heading = preferredHeading(room, speaker.channel);
    const surface = surfaceNamed(room, speaker.surface);
    if (heading === null) return { speaker, asking: null, because: "no-direction" };
    if (surface.framing.kind === "unknown") return { speaker, asking: null, because: "framing-unknown" };
    const fitting = fittingOf(speaker, room.checks);
    const asking: Asking = {
      speaker,
      ground: groundFor(surface, fitting),
      wish: wishOf(room, speaker, heading),
      hold: speaker.position.kind === "best" ? speaker.position.hold : [],
      kept: takenByNeighbours(
        settled.filter(({ surface: { name } }) => name === surface.name),
        fitting,
      ),
    };
    return { speaker, asking, because: "nothing-clear" };
  };
}

const wishOf = (room: Room, { channel }: Speaker, heading: Heading): Wish => ({
  ear: room.reference.ear,
  preferred: toward(heading),
  window: windowOf(room, channel),
});

interface Answer extends Paired {
  readonly solved: Solved | null;
}

/** A pair for which nothing matching is clear is answered one by one. */
function answer(room: Room, paired: Paired): readonly Answer[] {
  const { decision } = paired;
  const solved = solve(room, decision);
  if (solved !== null || decision.kind === "single") return [{ ...paired, solved }];
  return apart(decision.leader, decision.follower, "nothing-clear").map((one) => ({
    ...one,
    solved: solve(room, one.decision),
  }));
}

function placedOf(room: Room, solved: Solved): readonly Placed[] {
  const inTheWay = inTheWayOf(solved);
  return mountedOf(solved).flatMap((mounted, index) => {
    const preferred = preferredHeading(room, mounted.speaker.channel);
    const tapes = solved.found.tapes[index];
    if (preferred === null || tapes === undefined) return [];
    const cost = costAt(wishOf(room, mounted.speaker, preferred), mounted.position);
    return [{ mounted, tapes, preferred, cost, inTheWay: inTheWay[index] ?? [], line: solved.line }];
  });
}

function inFileOrder({ speakers }: Room, placed: readonly Placed[]): readonly Placed[] {
  return speakers.flatMap(({ id }) => placed.filter(({ mounted }) => mounted.speaker.id === id));
}

const isPlaced = (placed: readonly Placed[], { id }: Speaker): boolean =>
  placed.some(({ mounted }) => mounted.speaker.id === id);

const unplacedOf = (asked: readonly Asked[], placed: readonly Placed[]): readonly Unplaced[] =>
  asked
    .filter(({ speaker }) => !isPlaced(placed, speaker))
    .map(({ speaker, because }) => ({ speaker, because }));

/** Of those that have a place: who is not where the partner is mirrored to. */
function mismatchesOf(
  room: Room,
  answers: readonly Answer[],
  placed: readonly Placed[],
): readonly Mismatched[] {
  return answers.flatMap(({ decision: { leader }, unmatched, image }) => {
    const { speaker } = leader;
    const { position } = speaker;
    const at = placed.find(({ mounted }) => mounted.speaker.id === speaker.id)?.mounted.centre;
    if (at === undefined || position.kind !== "best" || position.mirror === null) return [];
    const isOff = image !== null && distanceMm(at, image) > MATCHED_WITHIN_MARKS * TAPE_STEP_MM[room.units];
    const because = unmatched ?? (isOff ? "nothing-clear" : null);
    return because === null ? [] : [{ speaker, partner: position.mirror, because }];
  });
}

/** A mirror image seldom lies on a whole mark of both tapes. */
const MATCHED_WITHIN_MARKS = 1.5;
