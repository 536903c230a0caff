import type { MemberName } from "../findings/finding.js";
import { type Body, bodyOfBand, bodyOfShape, separationMm } from "../geometry/body.js";
import { convexHull } from "../geometry/convex.js";
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
  return framing.kind === "unknown" ? null : gapsIn(framing, mounted);
}

function gapsIn(framing: KnownFraming, mounted: Mounted): readonly MemberGap[] {
  const gaps = gapsFound.get(mounted) ?? gapsTo(framing, mounted);
  gapsFound.set(mounted, gaps);
  return gaps;
}

function gapsTo(framing: KnownFraming, mounted: Mounted): readonly MemberGap[] {
  const opening = bodyOfShape(mounted.speaker.opening, mounted.centre);
  return nearestOf(framing, mounted)
    .map(({ of, body, side }) => ({
      mm: separationMm(body, opening),
      member: { surface: mounted.surface.name, kind: of.kind, number: of.number },
      side,
      of,
    }))
    .sort((a, b) => a.mm - b.mm);
}

interface Band {
  readonly of: Member;
  readonly body: Body;
}

/** The members of a framing, with figures of each that every opening asks for: one after another, to be read fast. */
interface Bands {
  readonly bands: readonly Band[];
  readonly figures: Float64Array;
}

/** Of each member: where it begins, how far it goes, half its width, its middle, and whether it lies along the run. */
const FIGURES = 8;

function figuresOf(member: Member, framing: KnownFraming): readonly number[] {
  const { from, to, widthMm } = member;
  const along = minus(to, from);
  const middle = middleOf(member);
  const runs = runsWithFraming(member, framing) ? 1 : 0;
  return [from.u, from.v, along.u, along.v, widthMm / 2, middle.u, middle.v, runs];
}

/** Of each framing once, however many openings ask. */
const bandsFound = new WeakMap<KnownFraming, Bands>();

function bandsOf(framing: KnownFraming): Bands {
  const found = bandsFound.get(framing);
  if (found !== undefined) return found;
  const { members } = framing;
  const figures = Float64Array.from(members.flatMap((member) => figuresOf(member, framing)));
  const made = { bands: members.map((of) => ({ of, body: bodyOfBand(of) })), figures };
  bandsFound.set(framing, made);
  return made;
}

interface Seen extends Band {
  readonly side: Side;
}

/**
 * The members that may be the nearest on their side, or before or after the opening across the run, and all that the
 * opening may go into. Of thousands very few have to be measured to, which plain figures tell of all of them.
 */
function nearestOf(framing: KnownFraming, { speaker, centre }: Mounted): readonly Seen[] {
  const opening = bodyOfShape(speaker.opening, centre);
  const ownMm = longestMm(speaker.opening) / 2;
  const { away } = framing.layout.zero;
  const { bands, figures } = bandsOf(framing);
  const kinds = new Uint8Array(bands.length);
  /** The gap is no less than this. */
  const leastMm = new Float64Array(bands.length);
  const first = new Int32Array(KINDS).fill(-1);
  const least = new Float64Array(KINDS).fill(Number.POSITIVE_INFINITY);
  for (let index = 0, at = 0; index < bands.length; index += 1, at += FIGURES) {
    const fromU = (figures[at] ?? 0) - centre.u;
    const fromV = (figures[at + 1] ?? 0) - centre.v;
    const alongU = figures[at + 2] ?? 0;
    const alongV = figures[at + 3] ?? 0;
    const square = alongU * alongU + alongV * alongV;
    const share = square === 0 ? 0 : -(fromU * alongU + fromV * alongV) / square;
    const kept = Math.min(1, Math.max(0, share));
    const u = fromU + alongU * kept;
    const v = fromV + alongV * kept;
    const afterMm =
      ((figures[at + 5] ?? 0) - centre.u) * away.u + ((figures[at + 6] ?? 0) - centre.v) * away.v;
    const way = figures[at + 7] === 0 ? 0 : afterMm > 0 ? 1 : 2;
    const runsUp = Math.abs(alongV) > Math.abs(alongU);
    const kind = WAYS * sideOf(runsUp, u, v) + way;
    const mm = Math.sqrt(u * u + v * v) - (figures[at + 4] ?? 0) - ownMm;
    kinds[index] = kind;
    leastMm[index] = mm;
    if (mm >= (least[kind] ?? 0)) continue;
    least[kind] = mm;
    first[kind] = index;
  }
  // What is further off than this is not the nearest of its kind, nor does the opening go into it.
  const mostMm = Float64Array.from(first, (index) => {
    const band = bands[index];
    return band === undefined ? 0 : Math.max(0, separationMm(band.body, opening)) + EPSILON_MM;
  });
  const seen: Seen[] = [];
  bands.forEach(({ of, body }, index) => {
    const kind = kinds[index] ?? 0;
    if ((leastMm[index] ?? 0) > (mostMm[kind] ?? 0)) return;
    const side = SIDES[Math.floor(kind / WAYS)];
    if (side !== undefined) seen.push({ of, body, side });
  });
  return seen;
}

const SIDES = ["left", "right", "above", "below"] as const satisfies readonly Side[];
/** After the opening across the run, before it, or not along the run. */
const WAYS = 3;
const KINDS = SIDES.length * WAYS;

/** The side on which a member's centre line passes the point nearest; left or below where it goes through it. */
function sideOf(runsUp: boolean, u: number, v: number): number {
  const sideways = u === 0 && v === 0 ? runsUp : Math.abs(u) >= Math.abs(v);
  if (sideways) return u > 0 ? 1 : 0;
  return v > 0 ? 2 : 3;
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
  if (framing === null) return { before: null, after: null };
  const { away } = framing.layout.zero;
  const along = gapsIn(framing, mounted).filter(({ of }) => runsWithFraming(of, framing));
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
  const framing = framingAt(mounted);
  return framing === null ? null : plain(gapsIn(framing, mounted)[0]);
}
