import type { MemberName } from "../findings/finding.js";
import { type Body, bodyOfBand, bodyOfShape, separationMm } from "../geometry/body.js";
import { convexHull } from "../geometry/convex.js";
import { nearestOnSegment } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { inner, minus, plus, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Framing, Member } from "../room/room.js";
import { longestMm } from "./fitting.js";
import { runsWithFraming } from "./run.js";

export interface Gap {
  /** Edge to edge in the framing plane, in mm; negative where the opening cuts the member. */
  readonly mm: number;
  readonly member: MemberName;
}

/** Where a member lies from an opening, as seen facing the surface. */
export type Side = "left" | "right" | "above" | "below";

export interface MemberGap extends Gap {
  readonly side: Side;
  readonly of: Member;
}

export type KnownFraming = Extract<Framing, { kind: "known" }>;

/** The framing where the opening stands; null where it is unknown there. */
export function framingAt({ surface: { framing }, speaker, centre }: Mounted): KnownFraming | null {
  if (framing.kind === "unknown") return null;
  const opening = bodyOfShape(speaker.opening, centre);
  const liesIn = framing.unknown.some(
    (stretch) => separationMm({ core: convexHull(stretch), radiusMm: 0 }, opening) < -EPSILON_MM,
  );
  return liesIn ? null : framing;
}

/** Of each opening once: the rules and the answer ask again. */
const gapsFound = new WeakMap<Mounted, readonly MemberGap[]>();

/**
 * Gaps to the members of the surface, the smallest first: all that the opening goes into, and of the others the nearest
 * on each side, and before and after it across the run. Null where its framing is unknown.
 */
export function memberGaps(mounted: Mounted): readonly MemberGap[] | null {
  const { framing } = mounted.surface;
  if (framing.kind === "unknown") return null;
  const gaps = gapsFound.get(mounted) ?? gapsTo(framing, mounted);
  gapsFound.set(mounted, gaps);
  return gaps;
}

function gapsTo(framing: KnownFraming, mounted: Mounted): readonly MemberGap[] {
  const opening = bodyOfShape(mounted.speaker.opening, mounted.centre);
  return nearestOf(framing, mounted)
    .map(({ banded: { of, body }, side }) => ({
      mm: separationMm(body, opening),
      member: { surface: mounted.surface.name, kind: of.kind, number: of.number },
      side,
      of,
    }))
    .sort((a, b) => a.mm - b.mm);
}

/** A member and the part of the surface that it takes. */
interface Banded {
  readonly of: Member;
  readonly body: Body;
  readonly runsAlong: boolean;
  readonly middle: SurfacePoint;
}

/** Of each framing once, however many openings ask. */
const bandsFound = new WeakMap<KnownFraming, readonly Banded[]>();

function bandsOf(framing: KnownFraming): readonly Banded[] {
  const found = bandsFound.get(framing) ?? framing.members.map((of) => bandedOf(of, framing));
  bandsFound.set(framing, found);
  return found;
}

const bandedOf = (of: Member, framing: KnownFraming): Banded => ({
  ...{ of, body: bodyOfBand(of), runsAlong: runsWithFraming(of, framing) },
  middle: middleOf(of),
});

/** Before or after an opening across the run; null for a member that does not lie along that. */
type Way = "before" | "after" | null;

interface Seen {
  readonly banded: Banded;
  readonly side: Side;
}

/**
 * The members that may be the nearest on their side or their way, and all that the opening may go into: of thousands
 * very few have to be measured to.
 */
function nearestOf(framing: KnownFraming, { speaker, centre }: Mounted): readonly Seen[] {
  const opening = bodyOfShape(speaker.opening, centre);
  const ownMm = longestMm(speaker.opening) / 2;
  const bands = bandsOf(framing);
  const sides: Side[] = [];
  const ways: Way[] = [];
  const least: number[] = [];
  const first = new Map<Side | Way, { readonly leastMm: number; readonly body: Body }>();
  const note = (key: Side | Way, leastMm: number, body: Body): void => {
    if (leastMm < (first.get(key)?.leastMm ?? Number.POSITIVE_INFINITY)) first.set(key, { leastMm, body });
  };
  for (const { of, body, runsAlong, middle } of bands) {
    const off = minus(nearestOnSegment(centre, of), centre);
    const side = sideOf(of, off);
    const way = runsAlong ? wayTo(middle, centre, framing) : null;
    const leastMm = Math.hypot(off.u, off.v) - of.widthMm / 2 - ownMm;
    sides.push(side);
    ways.push(way);
    least.push(leastMm);
    note(side, leastMm, body);
    if (way !== null) note(way, leastMm, body);
  }
  // None of which the least is over this is the nearest, nor does the opening go into it.
  const upToMm = new Map(
    [...first].map(([key, { body }]) => [key, Math.max(0, separationMm(body, opening)) + EPSILON_MM]),
  );
  const mayBeNearest = (key: Side | Way | undefined, mm: number): boolean =>
    key !== undefined && key !== null && mm <= (upToMm.get(key) ?? 0);
  return bands.flatMap((banded, index) => {
    const [side, mm] = [sides[index], least[index] ?? 0];
    if (side === undefined) return [];
    return mayBeNearest(side, mm) || mayBeNearest(ways[index], mm) ? [{ banded, side }] : [];
  });
}

const wayTo = (middle: SurfacePoint, centre: SurfacePoint, { layout }: KnownFraming): Way =>
  inner(minus(middle, centre), layout.zero.away) > 0 ? "after" : "before";

/** The side on which a member's centre line passes the point nearest; left or below where it goes through it. */
function sideOf(member: Member, { u, v }: SurfacePoint): Side {
  const runsUp = Math.abs(member.to.v - member.from.v) > Math.abs(member.to.u - member.from.u);
  const sideways = u === 0 && v === 0 ? runsUp : Math.abs(u) >= Math.abs(v);
  if (sideways) return u > 0 ? "right" : "left";
  return v > 0 ? "above" : "below";
}

export interface SideGaps {
  readonly before: Gap | null;
  readonly after: Gap | null;
}

/**
 * Gaps to the nearest member on each side across the run: `before` is toward the wall that the framing is measured
 * from. Null where there is none, or where the framing is unknown.
 */
export function sideGaps(mounted: Mounted): SideGaps {
  const framing = framingAt(mounted);
  const gaps = memberGaps(mounted);
  if (framing === null || gaps === null) return { before: null, after: null };
  const along = gaps.filter(({ of }) => runsWithFraming(of, framing));
  const isAfter = ({ of }: MemberGap): boolean => wayTo(middleOf(of), mounted.centre, framing) === "after";
  return {
    before: plain(along.find((gap) => !isAfter(gap))),
    after: plain(along.find(isAfter)),
  };
}

const middleOf = ({ from, to }: Member): SurfacePoint => times(plus(from, to), 1 / 2);

const plain = (gap: Gap | undefined): Gap | null =>
  gap === undefined ? null : { mm: gap.mm, member: gap.member };

/** Gap to the nearest member of all; null where the framing is unknown or there are none. */
export function nearestGap(mounted: Mounted): Gap | null {
  if (framingAt(mounted) === null) return null;
  return plain(memberGaps(mounted)?.[0]);
}
