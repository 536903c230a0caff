import type { Room, Speaker, Wiring } from "../room/room.js";
import {
  USUAL_GAUGES,
  USUAL_LOOP_MM,
  USUAL_RACK_LOOP_MM,
  USUAL_SPARE_PERCENT,
} from "../standards/cable-practice.js";
import { USUAL_TEMPERATURE_C } from "../standards/sound.js";
import {
  conductorsOf,
  type Loss,
  lossOf,
  type Size,
  thinnestFirst,
  thinnestOf,
  USUAL_LIMIT_DB,
  type Wanted,
} from "./gauge.js";
import type { Leg, Route } from "./route.js";

/** The cable of one loudspeaker, from the equipment on. */
export interface CableRun {
  readonly speaker: Speaker;
  readonly legs: readonly Leg[];
  /** Along the framing, with the way from the equipment to its wall. */
  readonly routeMm: number;
  /** To be cut: with the loops at both ends and the spare; the user's own figure where there is one. */
  readonly lengthMm: number;
  /** Members that it passes through; null where it passes framing that nobody has measured. */
  readonly bored: number | null;
  /**
   * As given, or the thinnest at hand that keeps within the limit (the thickest where none does); null where none was
   * given and the impedance is not known.
   */
  readonly size: Size | null;
  readonly wiring: Wiring;
  readonly conductors: number;
  /** With `size`; null where size or impedance is not known. */
  readonly loss: Loss | null;
  readonly limitDb: number;
  /** Whose figures length, size and the number of conductors are. */
  readonly from: {
    readonly length: "computed" | "given";
    readonly size: "computed" | "given";
    readonly conductors: "assumed" | "given";
  };
}

/** The cable of a loudspeaker by its route. */
export function runOf(room: Room, speaker: Speaker, { legs, lengthMm: routeMm }: Route): CableRun {
  const lengthMm = speaker.cable.lengthMm ?? cutLengthMm(room, routeMm);
  const wanted = wantedOf(room, speaker, lengthMm);
  const given = sizeGiven(speaker);
  const size = given ?? (wanted === null ? null : sizeFor(room, wanted));
  const wiring = wiringOf(room, speaker);
  return {
    speaker,
    legs,
    routeMm,
    lengthMm,
    bored: legs.some((leg) => leg.uncounted) ? null : legs.reduce((sum, leg) => sum + leg.crossed.length, 0),
    size,
    wiring,
    conductors: speaker.cable.conductors ?? conductorsOf(wiring),
    loss: size === null || wanted === null ? null : lossOf(size, wanted, wanted.impedanceOhm),
    limitDb: room.cable.lossDb ?? USUAL_LIMIT_DB,
    from: {
      length: speaker.cable.lengthMm === null ? "computed" : "given",
      size: given === null ? "computed" : "given",
      conductors: isWiringGiven(room, speaker) ? "given" : "assumed",
    },
  };
}

const wiringOf = ({ cable }: Room, speaker: Speaker): Wiring =>
  speaker.cable.wiring ?? cable.wiring ?? "single";

const isWiringGiven = ({ cable }: Room, speaker: Speaker): boolean =>
  speaker.cable.conductors !== null || (speaker.cable.wiring ?? cable.wiring) !== null;

/** What a run of that length is chosen by; null where the load's impedance is not known. */
export function wantedOf(room: Room, speaker: Speaker, lengthMm: number): Wanted | null {
  const { minimumImpedanceOhm, impedanceOhm } = speaker.model;
  const load = minimumImpedanceOhm ?? impedanceOhm;
  if (load === null) return null;
  return {
    lengthMm,
    wiring: wiringOf(room, speaker),
    temperatureC: room.cable.temperatureC ?? USUAL_TEMPERATURE_C,
    limitDb: room.cable.lossDb ?? USUAL_LIMIT_DB,
    impedanceOhm: load,
  };
}

/** What is left at each end, and what is added to everything. */
export interface Ends {
  readonly loopMm: number;
  readonly rackMm: number;
  readonly sparePercent: number;
}

export const endsOf = ({ cable }: Room): Ends => ({
  loopMm: cable.loopMm ?? USUAL_LOOP_MM,
  rackMm: cable.rackLoopMm ?? cable.loopMm ?? USUAL_RACK_LOOP_MM,
  sparePercent: cable.sparePercent ?? USUAL_SPARE_PERCENT,
});

function cutLengthMm(room: Room, routeMm: number): number {
  const { loopMm, rackMm, sparePercent } = endsOf(room);
  return (routeMm + loopMm + rackMm) * (1 + sparePercent / 100);
}

/** The size that the user gave; null where he gave none. */
export function sizeGiven({ cable }: Speaker): Size | null {
  if (cable.gauge !== null) return { kind: "gauge", gauge: cable.gauge };
  return cable.areaMm2 === null ? null : { kind: "area", areaMm2: cable.areaMm2 };
}

/** Sizes that are at hand, thinnest first. */
export function sizesAtHand({ cable }: Room): readonly Size[] {
  const areas = cable.areasMm2.map((areaMm2): Size => ({ kind: "area", areaMm2 }));
  const gauges = cable.gauges.length === 0 && areas.length === 0 ? USUAL_GAUGES : cable.gauges;
  return thinnestFirst([...areas, ...gauges.map((gauge): Size => ({ kind: "gauge", gauge }))]);
}

/** The thinnest that does; where none does, the thickest there is, which the finding then speaks of. */
function sizeFor(room: Room, wanted: Wanted): Size | null {
  const sizes = sizesAtHand(room);
  return thinnestOf(sizes, wanted) ?? sizes.at(-1) ?? null;
}
