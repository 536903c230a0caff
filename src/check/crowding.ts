import type { Others } from "../findings/finding.js";
import { type DistanceMm, distanceFrom } from "../geometry/distance-from.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { surfacePoint } from "../geometry/surface-point.js";
import { type Mounted, mount } from "../listen/mounted.js";
import { fittingOf } from "../place/fitting.js";
import { neighbourObstacles, takenBy } from "../place/obstacles.js";
import type { Room } from "../room/room.js";
import { TOLD_ONE_BY_ONE } from "../standards/house-limits.js";

/** Of the openings round one those that are told one by one, and of the others that are too near how many. */
export interface Crowding {
  readonly told: readonly Mounted[];
  readonly others: Others;
}

export type CrowdingOf = (mounted: Mounted, near: readonly Mounted[]) => Crowding;

const NO_OTHERS: Others = { others: 0, errors: 0 };

/**
 * Tells of a room's openings, and of those that may be too near to each, which are told one by one: all of them, or
 * where more than so many are too near the nearest of these. In the order that they come in.
 */
export function crowdingIn(room: Room): CrowdingOf {
  const tooNearOf = nearnessIn(room);
  return (mounted, near) => {
    if (near.length <= TOLD_ONE_BY_ONE) return { told: near, others: NO_OTHERS };
    const tooNear = near.flatMap((other) => tooNearOf(mounted, other) ?? []);
    if (tooNear.length <= TOLD_ONE_BY_ONE) return { told: near, others: NO_OTHERS };
    const nearestFirst = [...tooNear].sort((a, b) => a.gapMm - b.gapMm);
    const told = new Set(nearestFirst.slice(0, TOLD_ONE_BY_ONE).map(({ other }) => other));
    const others = nearestFirst.slice(TOLD_ONE_BY_ONE);
    const errors = others.filter(({ gapMm }) => gapMm < -EPSILON_MM).length;
    return { told: near.filter((other) => told.has(other)), others: { others: others.length, errors } };
  };
}

/** An opening that is too near, and how far apart the two openings are. */
interface TooNear {
  readonly other: Mounted;
  readonly gapMm: number;
}

/** How near one of a kind is to one of another, by where the second lies from the first. */
interface Nearness {
  readonly isTooNear: (u: number, v: number) => boolean;
  readonly gapMm: DistanceMm;
}

/** Null for two that are not too near. Two hundred thousand pairs are asked for: each pair of kinds is worked out once. */
function nearnessIn(room: Room): (mounted: Mounted, other: Mounted) => TooNear | null {
  const kindOf = kindsOf(room);
  const known = new Map<number, Map<number, Nearness>>();
  return (mounted, other) => {
    const [own, its] = [kindOf(mounted), kindOf(other)];
    const ofOwn = known.get(own) ?? new Map<number, Nearness>();
    known.set(own, ofOwn);
    const nearness = ofOwn.get(its) ?? nearnessOf(room, mounted, other);
    ofOwn.set(its, nearness);
    const [u, v] = [mounted.centre.u - other.centre.u, mounted.centre.v - other.centre.v];
    return nearness.isTooNear(u, v) ? { other, gapMm: nearness.gapMm(u, v) } : null;
  };
}

/** Numbers openings by what of them meets others: those of one model mostly have one number. */
function kindsOf({ checks }: Room): (mounted: Mounted) => number {
  const numbers = new Map<string, number>();
  const known = new WeakMap<Mounted, number>();
  return (mounted) => {
    const before = known.get(mounted);
    if (before !== undefined) return before;
    const key = JSON.stringify(fittingOf(mounted.speaker, checks));
    const kind = numbers.get(key) ?? numbers.size;
    numbers.set(key, kind);
    known.set(mounted, kind);
    return kind;
  };
}

function nearnessOf({ checks }: Room, { speaker }: Mounted, other: Mounted): Nearness {
  const atZero = mount(other.speaker, other.surface, surfacePoint(0, 0));
  const obstacles = neighbourObstacles([atZero], fittingOf(speaker, checks));
  const taken = obstacles.map((obstacle) => distanceFrom(takenBy(obstacle)));
  const [openings] = obstacles.map((obstacle) =>
    distanceFrom(takenBy({ ...obstacle, wantedMm: EPSILON_MM })),
  );
  return {
    isTooNear: (u, v) => taken.some((distanceMm) => distanceMm(u, v) < 0),
    gapMm: openings ?? (() => Number.POSITIVE_INFINITY),
  };
}
