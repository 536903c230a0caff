import type { Finding, Fix } from "../findings/finding.js";
import { type Aim, aimOf } from "../listen/aim.js";
import type { Mounted } from "../listen/mounted.js";
import { fittingOf, neighboursNear } from "../place/fitting.js";
import { type MemberGap, memberGaps } from "../place/gaps.js";
import { type GroundOf, nearestClearCentre, type Wanted } from "../place/nearest-clear.js";
import { gapMm, mayBeTooNear, type Obstacle, obstaclesBesidesFraming } from "../place/obstacles.js";
import type { Room } from "../room/room.js";

/** One opening as the rules look at it. */
export interface Subject extends Mounted {
  readonly room: Room;
  readonly aim: Aim | null;
  /** To all members, the nearest first; empty where the framing is unknown. */
  readonly gaps: readonly MemberGap[];
  /** All besides framing that it may be too near to, with the distance that it has; nothing that is surely far off. */
  readonly distances: readonly Distance[];
  /** The nearest clear centre, off joints of the board too where there is one, found when first asked for. */
  fix(): Fix | null;
  /** The same, or none where nothing clear lies off the joints. */
  fixOffJoints(): Fix | null;
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
}

export function subjectOf(mounted: Mounted, { room, openingsOn, groundOf }: Setting): Subject {
  const { surface, speaker, centre } = mounted;
  const neighbours = openingsOn.get(surface.name) ?? [];
  const near = neighboursNear(mounted, neighbours, room.checks.clearMm).filter((each) => each !== mounted);
  const obstacles = obstaclesBesidesFraming(surface, fittingOf(speaker, room.checks), near);
  const fixOffJoints = once(() => fixOf({ room, mounted, neighbours, groundOf, offJoints: true }));
  return {
    ...mounted,
    room,
    aim: aimOf(mounted, room.stage),
    gaps: memberGaps(mounted) ?? [],
    distances: obstacles
      .filter((obstacle) => mayBeTooNear(obstacle, centre))
      .map((obstacle) => ({ ...obstacle, mm: gapMm(obstacle, centre) })),
    fix: once(() => fixOffJoints() ?? fixOf({ room, mounted, neighbours, groundOf })),
    fixOffJoints,
  };
}

function fixOf(wanted: Omit<Wanted, "from">): Fix | null {
  const { position } = wanted.mounted.speaker;
  if (position.kind !== "given") return null;
  const [first, second] = position.tapes;
  return nearestClearCentre({ ...wanted, from: [first.from, second.from] });
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
