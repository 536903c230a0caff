import { Effort, within } from "../../effort.js";
import type { Mounted } from "../../listen/mounted.js";
import type { Room } from "../../room/room.js";
import { type Asking, alsoKept } from "./asking.js";
import { type Allowance, allowance, bestOfBoth, costOfBoth } from "./both.js";
import { type Decision, fieldFor } from "./decision.js";
import type { Field } from "./field.js";
import { type Ground, type Taken, takenByNeighbours } from "./ground.js";
import { groupsThatMeet, mountedOf } from "./meeting.js";
import { rememberedSearches } from "./searches.js";
import { type Solved, solve } from "./solve.js";

/*
 * Openings and flanges of different decisions kept apart. Two decisions that come too close are searched together, so
 * that what both cost is least. Three and more are settled one after the other in the file's order and then bettered
 * two by two until nothing changes: good, but not proved to be the least. More than MOST_BETTERED that come too close
 * one to the next are only settled one after the other.
 */

const MOST_BETTERED = 6;

export interface KeptApart {
  readonly solved: readonly Solved[];
  /** For which nothing clear is left beside the others. */
  readonly nowhere: readonly Decision[];
  /** For which nothing was looked for any more: there is too much to look at. */
  readonly givenUp: readonly Decision[];
}

/** Decisions that have come too close to each other, as each is best alone and as they are settled together. */
interface Cluster extends KeptApart {
  readonly alone: readonly Solved[];
}

/** The decisions where none comes too close to another. */
export function keptApart(room: Room, alone: readonly Solved[]): KeptApart {
  const left = allowance();
  let clusters: readonly Cluster[] = alone.map((one) => ({
    alone: [one],
    solved: [one],
    nowhere: [],
    givenUp: [],
  }));
  for (;;) {
    const groups = groupsThatMeet(clusters.map(({ solved }) => solved));
    if (groups.length === 0) return allOf(clusters);
    const joined = groups.map((group) =>
      settleTogether(
        room,
        group.flatMap((index) => clusters[index] ?? []),
        left,
      ),
    );
    const met = new Set(groups.flat());
    clusters = [...clusters.filter((_, index) => !met.has(index)), ...joined];
  }
}

const allOf = (clusters: readonly Cluster[]): KeptApart => ({
  solved: clusters.flatMap(({ solved }) => solved),
  nowhere: clusters.flatMap(({ nowhere }) => nowhere),
  givenUp: clusters.flatMap(({ givenUp }) => givenUp),
});

const indexOf = ({ decision: { leader } }: Solved): number => Number(leader.speaker.path.at(-1));

function settleTogether(room: Room, clusters: readonly Cluster[], left: Allowance): Cluster {
  const alone = clusters.flatMap((cluster) => cluster.alone).sort((a, b) => indexOf(a) - indexOf(b));
  const inTurn = oneAfterTheOther(room, alone);
  const { effort } = alone[0]?.decision.leader.ground ?? { effort: new Effort() };
  return { alone, ...(within(effort, () => betteredFrom(room, alone, { inTurn, left })) ?? inTurn) };
}

function betteredFrom(room: Room, alone: readonly Solved[], { inTurn, left }: InTurn): KeptApart {
  const [first, second, ...more] = alone;
  if (first !== undefined && second !== undefined && more.length === 0) {
    return bestOfTwo(room, [first, second], { inTurn, left });
  }
  return alone.length > MOST_BETTERED ? inTurn : bettered(inTurn, left);
}

/** Each at the best place that those before it leave. */
function oneAfterTheOther(room: Room, alone: readonly Solved[]): KeptApart {
  const solved: Solved[] = [];
  const nowhere: Decision[] = [];
  const givenUp: Decision[] = [];
  const standing: Mounted[] = [];
  // Those after it stay away from all that it does, and from more.
  const searches = rememberedSearches();
  const takenBy = takingsFinder();
  for (const { decision } of alone) {
    const { effort } = decision.leader.ground;
    const looked = within(effort, () => ({
      found: solve(room, beside(decision, standing, takenBy), searches),
    }));
    if (looked === null) givenUp.push(decision);
    else if (looked.found === null) nowhere.push(decision);
    else {
      solved.push({ ...looked.found, decision });
      standing.push(...mountedOf(looked.found));
    }
  }
  return { solved, nowhere, givenUp };
}

/** The decision with these loudspeakers to stay away from. */
function beside(decision: Decision, standing: readonly Mounted[], takenBy: TakenBy): Decision {
  const leader = keeping(decision.leader, standing, takenBy);
  return decision.kind === "single"
    ? { ...decision, leader }
    : { ...decision, leader, follower: keeping(decision.follower, standing, takenBy) };
}

function keeping(asking: Asking, standing: readonly Mounted[], takenBy: TakenBy): Asking {
  const here = standing.filter((one) => one.surface.name === asking.ground.surface.name);
  return alsoKept(
    asking,
    here.flatMap((one) => takenBy(one, asking.ground)),
  );
}

/** What one that stands takes of a ground. */
type TakenBy = (standing: Mounted, ground: Ground) => readonly Taken[];

/** Works it out once for all that ask. */
function takingsFinder(): TakenBy {
  const known = new Map<Mounted, Map<Ground, readonly Taken[]>>();
  return (standing, ground) => {
    const ofIt = known.get(standing) ?? new Map<Ground, readonly Taken[]>();
    const taken = ofIt.get(ground) ?? takenByNeighbours([standing], ground.fitting);
    known.set(standing, ofIt.set(ground, taken));
    return taken;
  };
}

/** Of two, what costs least: one after the other either way round, or any two places that are better by enough. */
interface InTurn {
  readonly inTurn: KeptApart;
  readonly left: Allowance;
}

function bestOfTwo(
  room: Room,
  [first, second]: readonly [Solved, Solved],
  { inTurn, left }: InTurn,
): KeptApart {
  const other = oneAfterTheOther(room, [second, first]);
  return betteredTwo([first, second], { inTurn: sumDeg(other) < sumDeg(inTurn) ? other : inTurn, left });
}

/** What all of them cost; without an end where one has no place. */
function sumDeg({ solved, nowhere, givenUp }: KeptApart): number {
  if (nowhere.length + givenUp.length > 0) return Number.POSITIVE_INFINITY;
  return solved.reduce((sum, { found }) => sum + found.costDeg, 0);
}

function betteredTwo([first, second]: readonly [Solved, Solved], { inTurn, left }: InTurn): KeptApart {
  const found = bestOfBoth(first.field, second.field, { belowDeg: sumDeg(inTurn), left });
  if (found === null) return inTurn;
  return {
    solved: [
      { ...first, found: found[0] },
      { ...second, found: found[1] },
    ],
    nowhere: [],
    givenUp: [],
  };
}

/** Every two of them searched together beside the others, until that betters none. */
function bettered(before: KeptApart, left: Allowance): KeptApart {
  for (const [a, b] of everyTwo(before.solved)) {
    const found = betteredBeside(before.solved, [a, b], left);
    if (found === null) continue;
    const solved = before.solved.map((one) => (one === a ? found[0] : one === b ? found[1] : one));
    return bettered({ ...before, solved }, left);
  }
  return before;
}

const everyTwo = (all: readonly Solved[]): readonly (readonly [Solved, Solved])[] =>
  all.flatMap((a, index) => all.slice(index + 1).map((b) => [a, b] as const));

function betteredBeside(
  all: readonly Solved[],
  [a, b]: readonly [Solved, Solved],
  left: Allowance,
): readonly [Solved, Solved] | null {
  if (left.boxes <= 0) return null;
  const standing = all.filter((one) => one !== a && one !== b).flatMap(mountedOf);
  const [first, second] = [fieldBeside(a, standing), fieldBeside(b, standing)];
  const found =
    first && second && bestOfBoth(first, second, { belowDeg: costOfBoth([a.found, b.found]), left });
  return (
    found && [
      { ...a, found: found[0] },
      { ...b, found: found[1] },
    ]
  );
}

const fieldBeside = ({ decision, tapes, field }: Solved, standing: readonly Mounted[]): Field | null =>
  fieldFor(beside(decision, standing, takingsFinder()), tapes, field.spots[0].marks.axes[0].stepMm);
