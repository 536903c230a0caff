import type { Assumed } from "./cable/assumed.js";
import type { Hole, Verdict } from "./cable/boring.js";
import type { Cabling } from "./cable/cabling.js";
import type { Size } from "./cable/gauge.js";
import type { Leg } from "./cable/route.js";
import type { CableRun } from "./cable/run.js";
import type { CableKind } from "./cable/spools.js";
import type { MemberName } from "./findings/finding.js";
import type { Speaker, Wiring } from "./room/room.js";

/*
 * Cable for machines: millimetres, dB, ohm. Keys may be added, never renamed. What is not known is null.
 */

export interface CableJson extends SizeJson {
  /** To be cut: the way, a loop at each end and the spare; the user's figure where `given` says so. */
  readonly length: number;
  /** At the least impedance of the load, dB. */
  readonly loss: number | null;
  /** Members that it passes through. */
  readonly bored: number | null;
  readonly conductors: number;
  readonly wiring: Wiring;
  /** Whose figures they are; what is not given is computed, and the number of conductors assumed. */
  readonly given: { readonly length: boolean; readonly size: boolean; readonly conductors: boolean };
  /** Along the framing, without loops or spare. */
  readonly route: number;
  /** Out and back, ohm; its share of the load; the damping factor that it leaves. */
  readonly resistance: number | null;
  readonly share: number | null;
  readonly damping: number | null;
  readonly way: readonly LegJson[];
}

/** AWG, or the nominal cross-section in mm²: one of the two. */
interface SizeJson {
  readonly gauge: number | null;
  readonly area: number | null;
}

interface LegJson {
  readonly surface: string;
  /** A wall's name, "floor" or "ceiling". */
  readonly toward: string;
  readonly length: number;
  /** Up from the ceiling before it, below 0 down; 0 from anything else. */
  readonly up: number;
  readonly members: "along" | "across";
  readonly crossed: readonly MemberJson[];
}

interface MemberJson {
  readonly kind: MemberName["kind"];
  readonly number: number;
}

/** What the room file leaves open and a figure rests on: `what` it is and what was taken, lengths in mm. */
interface AssumedJson {
  readonly what: Assumed["what"];
  readonly [figure: string]: unknown;
}

export interface CablingJson {
  /** Left at the loudspeaker and at the equipment, and what is added to all, in per cent. */
  readonly ends: { readonly loop: number; readonly rack_loop: number; readonly spare: number };
  /** Outside, of cable of two and of four conductors; the bits go by it. */
  readonly diameter: { readonly two: number; readonly four: number; readonly given: boolean };
  /** Most that a run may lose, dB. */
  readonly loss_limit: number;
  readonly assumed: readonly AssumedJson[];
  readonly unreached: readonly string[];
  readonly holes: readonly HoleJson[];
  readonly spools: readonly (SizeJson & {
    readonly conductors: number;
    readonly length: number;
    readonly left: number;
    readonly runs: readonly { readonly speaker: string; readonly length: number }[];
  })[];
  readonly totals: readonly (SizeJson & {
    readonly conductors: number;
    readonly runs: number;
    readonly length: number;
    readonly spools: number;
    readonly bought: number;
  })[];
  readonly too_long: readonly string[];
  /** Whether no other grouping would buy less. */
  readonly exact: boolean;
}

interface HoleJson extends MemberJson {
  readonly surface: string;
  /** On the member's centre line. */
  readonly on_surface: { readonly u: number; readonly v: number };
  readonly speakers: readonly string[];
  readonly diameter: number;
  readonly verdict: Verdict["kind"];
  /** The most that the code allows; null where it says nothing. */
  readonly most: number | null;
  readonly nail_plate: boolean | null;
  readonly tie: boolean | null;
}

export function cableJson(cabling: Cabling | null, { id }: Speaker): CableJson | null {
  const run = cabling?.runs.find(({ speaker }) => speaker.id === id);
  return run === undefined ? null : runJson(run);
}

function runJson({ loss, size, from, ...run }: CableRun): CableJson {
  return {
    length: run.lengthMm,
    ...sizeJson(size),
    loss: loss?.lossDb ?? null,
    bored: run.bored,
    conductors: run.conductors,
    wiring: run.wiring,
    given: {
      length: from.length === "given",
      size: from.size === "given",
      conductors: from.conductors === "given",
    },
    route: run.routeMm,
    resistance: loss?.loopOhm ?? null,
    share: loss?.shareOfLoad ?? null,
    damping: loss?.damping ?? null,
    way: run.legs.map(legJson),
  };
}

const sizeJson = (size: Size | null): SizeJson => ({
  gauge: size?.kind === "gauge" ? size.gauge : null,
  area: size?.kind === "area" ? size.areaMm2 : null,
});

const legJson = ({ field, toward, lengthMm, upMm, way, crossed }: Leg): LegJson => ({
  surface: field.surface.name,
  toward,
  length: lengthMm,
  up: upMm,
  members: way,
  crossed: crossed.map(({ kind, number }) => ({ kind, number })),
});

export function cablingJson({
  unreached,
  holes,
  plan,
  ends,
  cableMm,
  assumed,
  limitDb,
}: Cabling): CablingJson {
  const kind = ({ size, conductors }: CableKind) => ({ ...sizeJson(size), conductors });
  return {
    ends: { loop: ends.loopMm, rack_loop: ends.rackMm, spare: ends.sparePercent },
    diameter: { two: cableMm.two, four: cableMm.four, given: cableMm.basis === "given" },
    loss_limit: limitDb,
    assumed: assumed.map(assumedJson),
    unreached: unreached.map(({ id }) => id),
    holes: holes.map(holeJson),
    spools: plan.spools.map((spool) => ({
      ...kind(spool),
      length: spool.spoolMm,
      left: spool.leftMm,
      runs: spool.runs.map(({ speaker, lengthMm }) => ({ speaker, length: lengthMm })),
    })),
    totals: plan.totals.map((total) => ({
      ...kind(total),
      runs: total.runs,
      length: total.lengthMm,
      spools: total.spools,
      bought: total.boughtMm,
    })),
    too_long: plan.tooLong.map(({ speaker }) => speaker),
    exact: plan.exact,
  };
}

function assumedJson({ what, ...figures }: Assumed): AssumedJson {
  const keys = Object.entries(figures).map(([key, value]) => [key.replace(/(?:Mm|Db)$/u, ""), value]);
  return { what, ...Object.fromEntries(keys) };
}

const holeJson = ({ surface, member, at, speakers, diameterMm, verdict }: Hole): HoleJson => ({
  surface,
  kind: member.kind,
  number: member.number,
  on_surface: at,
  speakers,
  diameter: diameterMm,
  verdict: verdict.kind,
  most: verdict.kind === "by-maker" ? null : verdict.mostMm,
  nail_plate: verdict.kind === "allowed" ? verdict.nailPlate : null,
  tie: verdict.kind === "allowed" ? verdict.tie : null,
});
