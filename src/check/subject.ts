import type { Effort } from "../effort.js";
import type { Finding, Fix, Others } from "../findings/finding.js";
import type { SurfacePoint } from "../geometry/vector.js";
import { type Aim, aimOf } from "../listen/aim.js";
import type { Mounted } from "../listen/mounted.js";
import { type Fitting, fittingOf, neighboursNear } from "../place/fitting.js";
import { type MemberGap, memberGaps } from "../place/gaps.js";
import { type GroundOf, nearestClearCentre } from "../place/nearest-clear.js";
import {
  gapMm,
  mayBeTooNear,
  neighbourObstacles,
  type Obstacle,
  obstaclesBesidesFraming,
} from "../place/obstacles.js";
import type { Room } from "../room/room.js";
import { TOLD_ONE_BY_ONE } from "../standards/house-limits.js";
import type { CrowdingOf } from "./crowding.js";

/** One opening as the rules look at it. */
export interface Subject extends Mounted {
  readonly room: Room;
  readonly aim: Aim | null;
  /** To all members, the nearest first; empty where the framing is unknown. */
  readonly gaps: readonly MemberGap[];
  /** All besides framing that it may be too near to, with the distance that it has; nothing that is surely far off. */
  readonly distances: readonly Distance[];
  /** Openings too near to it that are not among those. */
  readonly othersTooNear: Others;
  /** The nearest clear centre, off joints of the board too where there is one, found when first asked for. */
  fix(): Fix | null;
  /** The same, or none where nothing clear lies off the joints. */
  fixOffJoints(): Fix | null;
  /** Whether it was asked for one and no looks were left to find it. */
  isFixGivenUp(): boolean;
}

export interface Distance extends Obstacle {
  readonly mm: number;
}

/** A rule about one opening. */
export type Rule = (subject: Subject) => readonly Finding[];

/** What the subjects of one room share. */
export interface Setting {
  readonly room: Room;
  /** The openings of each surface, by its name. */
  readonly openingsOn: ReadonlyMap<string, readonly Mounted[]>;
  readonly groundOf: GroundOf;
  /** What looking for all their nearest clear centres may take. */
  readonly effort: Effort;
  readonly crowdingOf: CrowdingOf;
  readonly fixedNear: FixedNear;
}

/** What but framing and other openings may be too near to an opening. */
export type FixedNear = (mounted: Mounted, fitting: Fitting) => readonly Obstacle[];

/** Of each surface and fitting looked up once, and for each opening passed over as far as it lies far off. */
export function fixedNear(): FixedNear {
  const known = new Map<
    string,
    readonly { obstacle: Obstacle; isNear: (centre: SurfacePoint) => boolean }[]
  >();
  return ({ surface, centre }, fitting) => {
    const key = JSON.stringify([surface.name, fitting]);
    const all =
      known.get(key) ??
      obstaclesBesidesFraming(surface, fitting).map((obstacle) => ({
        obstacle,
        isNear: mayBeTooNear(obstacle),
      }));
    known.set(key, all);
    return all.filter(({ isNear }) => isNear(centre)).map(({ obstacle }) => obstacle);
  };
}

export function subjectOf(mounted: Mounted, setting: Setting): Subject {
  const { room, openingsOn, groundOf, effort, crowdingOf, fixedNear } = setting;
  const { surface, speaker, centre } = mounted;
  const neighbours = openingsOn.get(surface.name) ?? [];
  const near = neighboursNear(mounted, neighbours, room.checks.clearMm).filter((each) => each !== mounted);
  const { told, others } = crowdingOf(mounted, near);
  const fitting = fittingOf(speaker, room.checks);
  const besides = neighbourObstacles(told, fitting).filter((obstacle) => mayBeTooNear(obstacle)(centre));
  const obstacles = [...fixedNear(mounted, fitting), ...besides];
  let isGivenUp = false;
  const fixOf = (offJoints: boolean): Fix | null => {
    const from = tapesFrom(mounted);
    if (from === null) return null;
    const fix = nearestClearCentre({ room, mounted, neighbours, groundOf, offJoints, from });
    if (fix === null && effort.isSpent) isGivenUp = true;
    return fix;
  };
  const fixOffJoints = once(() => fixOf(true));
  return {
    ...mounted,
    room,
    aim: aimOf(mounted, room.stage),
    gaps: memberGaps(mounted) ?? [],
    distances: obstacles.map((obstacle) => ({ ...obstacle, mm: gapMm(obstacle, centre) })),
    othersTooNear: others,
    fix: once(() => fixOffJoints() ?? fixOf(false)),
    fixOffJoints,
    isFixGivenUp: () => isGivenUp,
  };
}

/** The walls that the file gives its place from; null where the place is computed. */
function tapesFrom({ speaker: { position } }: Mounted): readonly [string, string] | null {
  if (position.kind !== "given") return null;
  const [first, second] = position.tapes;
  return [first.from, second.from];
}

function once<T>(find: () => T): () => T {
  let found: { readonly value: T } | null = null;
  return () => {
    found ??= { value: find() };
    return found.value;
  };
}

/** What every finding about one opening says of itself. */
export const about = ({ speaker, surface }: Subject) => ({
  speaker: speaker.id,
  surface: surface.name,
  path: speaker.path,
  accepted: null,
});

type ToldOfOthers = "openings-too-close" | "opening-meets-obstruction" | "opening-cuts-member";

/** How many more there are than those that are told one by one; nothing where there are none. */
export function othersToo(subject: Subject, code: ToldOfOthers, others: Others): Finding[] {
  if (others.others === 0) return [];
  const level = others.errors > 0 ? "error" : "warning";
  return [{ ...about(subject), code, level, figures: others, fix: null }];
}

/** Those that are told one by one, in the order that they come in: the first so many by a figure. The others too. */
export function toldOf<Each>(all: readonly Each[], mm: (each: Each) => number): readonly [Each[], Each[]] {
  if (all.length <= TOLD_ONE_BY_ONE) return [[...all], []];
  const first = new Set([...all].sort((a, b) => mm(a) - mm(b)).slice(0, TOLD_ONE_BY_ONE));
  return [all.filter((each) => first.has(each)), all.filter((each) => !first.has(each))];
}
