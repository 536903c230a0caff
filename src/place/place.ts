import { Effort, within } from "../effort.js";
import type { Hindrance } from "../findings/hindrance.js";
import { distanceMm } from "../geometry/surface-point.js";
import { type Mounted, mountedIn } from "../listen/mounted.js";
import type { Room, Speaker, Tape } from "../room/room.js";
import { MOST_LOOKS_FOR_PLACES } from "../standards/house-limits.js";
import { type Against, type Asked, againstStandard, askedIn, type Unaskable } from "./best/asked.js";
import { askingsOf } from "./best/decision.js";
import { groundsFinder } from "./best/ground.js";
import { inTheWayOf } from "./best/in-the-way.js";
import { keptApart } from "./best/keep-apart.js";
import { onLines } from "./best/lines.js";
import { mountedOf } from "./best/meeting.js";
import { apart, type Paired, pairUp, type Unmatched } from "./best/pairing.js";
import { rememberedSearches, type Searches } from "./best/searches.js";
import { type Solved, solve } from "./best/solve.js";
import { TAPE_STEP_MM } from "./nearest-clear.js";

export type { Unmatched };

/** A loudspeaker at the best place that was found for it. */
export interface Placed extends Against {
  readonly mounted: Mounted;
  /** From the nearest walls, or those that the file holds; to the faces that its tapes hook on. */
  readonly tapes: readonly [Tape, Tape];
  readonly inTheWay: readonly Hindrance[];
  /** Ids of those that share its line from front to back. */
  readonly line: readonly string[];
}

export interface Unplaced {
  readonly speaker: Speaker;
  readonly because: Unaskable | "nothing-clear";
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
  /** Which share of what may be looked at for best places was not: others may use the time. */
  readonly spareShare: number;
}

/** What else may be looked at once best places are found: the least of it, and all of it where none were looked for. */
export const effortBeside = (
  { spareShare }: Placing,
  { besideBest, alone }: { readonly besideBest: number; readonly alone: number },
): Effort => new Effort(besideBest + spareShare * (alone - besideBest));

/**
 * The best clear places for all loudspeakers that ask for one, decided together. Where that comes to more looks than a
 * run has, the last of them stay unplaced; once the others stand in the file there is less to look at.
 */
export function placeAll(room: Room): Placing {
  const effort = new Effort(MOST_LOOKS_FOR_PLACES.alone);
  const making = new Effort(MOST_LOOKS_FOR_PLACES.grounds);
  const settled = mountedIn(room);
  const asked = room.speakers
    .filter(({ position }) => position.kind === "best")
    .map(askedIn(room, settled, groundsFinder({ looking: effort, making })));
  const askings = asked.flatMap(({ asking }) => asking ?? []);
  const searches = rememberedSearches();
  const answers = pairUp(room, askings, settled).flatMap(
    (paired) => within(effort, () => answer(room, paired, searches)) ?? [givenUpOn(paired)],
  );
  effort.grant(MOST_LOOKS_FOR_PLACES.apart);
  const { solved, givenUp } = keptApart(
    room,
    answers.flatMap((one) => (one.solved === GIVEN_UP ? [] : (one.solved ?? []))),
  );
  const lined = within(effort, () => onLines(room, solved, room.checks.lineDeg)) ?? solved;
  const placed = inFileOrder(
    room,
    lined.flatMap((one) => placedOf(room, one)),
  );
  const all = [...answers.filter((one) => one.solved === GIVEN_UP).map((one) => one.decision), ...givenUp];
  const notLookedFor = new Set(all.flatMap(askingsOf).map(({ speaker }) => speaker));
  return {
    placed,
    unplaced: unplacedOf(asked, placed, notLookedFor),
    mismatched: mismatchesOf(room, answers, placed),
    spareShare: effort.unspent / (MOST_LOOKS_FOR_PLACES.alone + MOST_LOOKS_FOR_PLACES.apart),
  };
}

interface Answer extends Paired {
  readonly solved: Solved | typeof GIVEN_UP | null;
}

/** No more looks were left. */
const GIVEN_UP = "given-up";

const givenUpOn = (paired: Paired): Answer => ({ ...paired, solved: GIVEN_UP });

/** A pair for which nothing matching is clear is answered one by one. */
function answer(room: Room, paired: Paired, searches: Searches): readonly Answer[] {
  const { decision } = paired;
  const solved = solve(room, decision, searches);
  if (solved !== null || decision.kind === "single") return [{ ...paired, solved }];
  return apart(decision.leader, decision.follower, "nothing-clear").map((one) => ({
    ...one,
    solved: solve(room, one.decision, searches),
  }));
}

function placedOf(room: Room, solved: Solved): readonly Placed[] {
  // `check` tells nothing of it: looked for when first asked for.
  let inTheWay: readonly (readonly Hindrance[])[] | null = null;
  return mountedOf(solved).flatMap((mounted, index) => {
    const against = againstStandard(room, mounted);
    const tapes = solved.found.tapes[index];
    if (against === null || tapes === undefined) return [];
    const line = solved.lines[index] ?? [];
    const placed: Placed = {
      ...{ mounted, tapes, ...against, line },
      get inTheWay() {
        inTheWay ??= inTheWayOf(solved);
        return inTheWay[index] ?? [];
      },
    };
    return [placed];
  });
}

function inFileOrder({ speakers }: Room, placed: readonly Placed[]): readonly Placed[] {
  return speakers.flatMap(({ id }) => placed.filter(({ mounted }) => mounted.speaker.id === id));
}

const isPlaced = (placed: readonly Placed[], { id }: Speaker): boolean =>
  placed.some(({ mounted }) => mounted.speaker.id === id);

function unplacedOf(
  asked: readonly Asked[],
  placed: readonly Placed[],
  notLookedFor: ReadonlySet<Speaker>,
): readonly Unplaced[] {
  return asked
    .filter(({ speaker }) => !isPlaced(placed, speaker))
    .map(({ speaker, unaskable }) => {
      const because = notLookedFor.has(speaker) ? "not-looked-for" : "nothing-clear";
      return { speaker, because: unaskable ?? because };
    });
}

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
