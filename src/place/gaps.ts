import type { MemberName } from "../findings/finding.js";
import { bodyOfBand, bodyOfShape, separationMm } from "../geometry/body.js";
import { convexHull } from "../geometry/convex.js";
import { nearestOnSegment } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { inner, minus, plus, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Framing, Member } from "../room/room.js";
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

/** Gaps to all the members of the surface, the smallest first; null where its framing is unknown. */
export function memberGaps(mounted: Mounted): readonly MemberGap[] | null {
  const { framing } = mounted.surface;
  if (framing.kind === "unknown") return null;
  const gaps = gapsFound.get(mounted) ?? gapsTo(framing, mounted);
  gapsFound.set(mounted, gaps);
  return gaps;
}

function gapsTo(framing: KnownFraming, { surface, speaker, centre }: Mounted): readonly MemberGap[] {
  const opening = bodyOfShape(speaker.opening, centre);
  return framing.members
    .map((of) => ({
      mm: separationMm(bodyOfBand(of), opening),
      member: { surface: surface.name, kind: of.kind, number: of.number },
      side: sideOf(of, centre),
      of,
    }))
    .sort((a, b) => a.mm - b.mm);
}

/** The side on which a member's centre line passes the point nearest; left or below where it goes through it. */
function sideOf(member: Member, centre: SurfacePoint): Side {
  const { u, v } = minus(nearestOnSegment(centre, member), centre);
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
  const { away } = framing.layout.zero;
  const along = gaps.filter(({ of }) => runsWithFraming(of, framing));
  const isAfter = ({ of }: MemberGap): boolean => inner(minus(middleOf(of), mounted.centre), away) > 0;
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
