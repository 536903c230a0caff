import { InternalError } from "../findings/internal-error.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Member } from "../room/room.js";
import {
  bundleHoleMm,
  JOIST_HOLE_EDGE_MM,
  joistHoleMm,
  needsNailPlate,
  plateNeedsTie,
  studHoleMm,
} from "../standards/boring-limits.js";
import { BIT_STEP_MM } from "../standards/cable-practice.js";
import { type Field, meeting, runOf } from "./field.js";
import type { Leg } from "./route.js";

/** Where one loudspeaker's cable passes a member. */
interface Crossing {
  readonly field: Field;
  readonly member: Member;
  readonly at: SurfacePoint;
  readonly speaker: string;
  readonly cableMm: number;
}

/** What the residential code says of a hole through the middle of a member. */
export type Verdict =
  | { readonly kind: "allowed"; readonly mostMm: number; readonly nailPlate: boolean; readonly tie: boolean }
  | { readonly kind: "too-large"; readonly mostMm: number }
  /** Engineered: only its maker or an engineer can say. */
  | { readonly kind: "by-maker" };

/** A hole to be bored, for all the cables that pass the member there. */
export interface Hole {
  readonly surface: string;
  readonly member: Member;
  /** On the member's centre line. */
  readonly at: SurfacePoint;
  readonly speakers: readonly string[];
  /** The bit that the bundle takes. */
  readonly diameterMm: number;
  readonly verdict: Verdict;
}

export interface Pulled {
  readonly speaker: string;
  readonly legs: readonly Leg[];
  readonly cableMm: number;
}

/**
 * Cables that pass one member within this share a hole: holes of a joist stand 2 in apart at least, and nobody bores
 * two where one does. Our own choice.
 */
export const SHARED_WITHIN_MM = 3 * JOIST_HOLE_EDGE_MM;

/** Every hole that the runs take, by surface and member in their order. */
export function holesOf(runs: readonly Pulled[]): readonly Hole[] {
  const crossings = runs.flatMap(({ speaker, legs, cableMm }) =>
    legs.flatMap((leg) =>
      leg.crossed.map(
        (member): Crossing => ({
          field: leg.field,
          member,
          at: metBy(leg, member),
          speaker,
          cableMm,
        }),
      ),
    ),
  );
  return byMember(crossings).flatMap(bundles).map(holeFor);
}

/** Where a leg meets a member that it passes through. */
function metBy(leg: Leg, member: Member): SurfacePoint {
  const across = leg.from.u === leg.to.u ? "u" : "v";
  const at = meeting(member, across, leg.from[across]);
  if (at === null) throw new InternalError(`${member.kind} ${member.number} is crossed and not met`);
  return at;
}

function byMember(crossings: readonly Crossing[]): readonly (readonly Crossing[])[] {
  const groups = new Map<Member, Crossing[]>();
  for (const crossing of crossings) {
    const group = groups.get(crossing.member);
    if (group === undefined) groups.set(crossing.member, [crossing]);
    else group.push(crossing);
  }
  const places = new Map<Member, number>();
  for (const field of new Set(crossings.map((crossing) => crossing.field))) {
    for (const [index, member] of field.members.entries()) places.set(member, index);
  }
  return [...groups]
    .sort(([a], [b]) => (places.get(a) ?? 0) - (places.get(b) ?? 0))
    .map(([, group]) => group);
}

/** Crossings of one member in bundles, from one end on: each reaches no further than the hole is shared. */
function bundles(crossings: readonly Crossing[]): readonly (readonly Crossing[])[] {
  const [any] = crossings;
  if (any === undefined) return [];
  const along = runOf(any.member);
  const found: Crossing[][] = [];
  for (const crossing of [...crossings].sort((a, b) => a.at[along] - b.at[along])) {
    const bundle = found.at(-1);
    const first = bundle?.[0];
    const shares =
      first !== undefined && crossing.at[along] - first.at[along] <= SHARED_WITHIN_MM + EPSILON_MM;
    if (shares) bundle?.push(crossing);
    else found.push([crossing]);
  }
  return found;
}

function holeFor(bundle: readonly Crossing[]): Hole {
  const [first] = bundle;
  if (first === undefined) throw new RangeError("a hole for no cable");
  const cableMm = Math.max(...bundle.map((crossing) => crossing.cableMm));
  const diameterMm = bitFor(bundle.length, cableMm);
  return {
    surface: first.field.surface.name,
    member: first.member,
    at: first.at,
    speakers: bundle.map(({ speaker }) => speaker),
    diameterMm,
    verdict: verdictOn(first.field, first.member, diameterMm),
  };
}

/** The next bit up. */
export const bitFor = (cables: number, cableMm: number): number =>
  Math.ceil(bundleHoleMm(cables, cableMm) / BIT_STEP_MM - 1e-9) * BIT_STEP_MM;

export function verdictOn({ surface }: Field, member: Member, diameterMm: number): Verdict {
  const { framing } = surface;
  const rule = RULES[member.kind];
  if (framing.kind === "unknown" || rule === "none") return { kind: "by-maker" };
  if (framing.engineered && rule !== "plate") return { kind: "by-maker" };
  const mostMm = mostFor(rule, member.depthMm, framing.bearing);
  if (diameterMm > mostMm + EPSILON_MM) return { kind: "too-large", mostMm };
  return {
    kind: "allowed",
    mostMm,
    nailPlate: needsNailPlate(member.depthMm, diameterMm),
    tie: member.kind === "top-plate" && plateNeedsTie(member.depthMm, diameterMm),
  };
}

type Rule = "joist" | "stud" | "plate" | "none";

/** Which of the code's rules a member comes under; of beams and headers it says nothing but by an engineer. */
const RULES: Readonly<Record<Member["kind"], Rule>> = {
  joist: "joist",
  rim: "joist",
  blocking: "joist",
  stud: "stud",
  "end-stud": "stud",
  "opening-stud": "stud",
  "top-plate": "plate",
  "bottom-plate": "plate",
  sill: "plate",
  beam: "none",
  header: "none",
  // Cable lies behind them: they are never met.
  strap: "none",
  channel: "none",
};

/** Largest hole through the middle of a member, across its depth behind the surface. */
function mostFor(rule: Exclude<Rule, "none">, depthMm: number, bearing: boolean): number {
  if (rule === "joist") return joistHoleMm(depthMm);
  // The code sets no limit on a hole in a plate: past half its width it is tied. The bit has to stay in the wood.
  return rule === "plate" ? depthMm : studHoleMm(depthMm, bearing);
}

/** Fewest holes that the same cables can be parted over, none over the limit; null where not even one cable may pass. */
export function partedOver(
  cables: number,
  cableMm: number,
  mostMm: number,
): { holes: number; eachMm: number } | null {
  for (let holes = 2; holes <= cables; holes += 1) {
    const eachMm = bitFor(Math.ceil(cables / holes), cableMm);
    if (eachMm <= mostMm + EPSILON_MM) return { holes, eachMm };
  }
  return null;
}
