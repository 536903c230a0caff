import type { Shape } from "./geometry/shape.js";
import type { Vector } from "./geometry/vector.js";
import type { Opening } from "./job.js";
import { coneOf, footprintOf } from "./listen/coverage.js";
import type { Listening } from "./listen/heard.js";
import { trimDb } from "./listen/trim.js";
import type { Room } from "./room/room.js";

/*
 * Sound for machines: what the seats are, what a room is set to, what each loudspeaker needs, has and covers.
 */

/** What all levels, powers and delays are reckoned for: dB, dB above it, °C of the air. */
export interface ListeningAtJson {
  readonly target: number;
  readonly headroom: number;
  readonly temperature: number;
}

export interface EarJson {
  readonly name: string;
  readonly reference: boolean;
  readonly ear: Vector;
}

/** What the loudspeaker needs and has at the reference seat. */
export interface ListeningJson {
  /** For the target and its headroom, W into the nominal impedance; null where sensitivity or impedance is not given. */
  readonly power: number | null;
  /** Over the target that the stated power leaves, dB. */
  readonly headroom: number | null;
  /** Whether levels take the stated coverage in, or distance alone. */
  readonly by_coverage: boolean;
  /** W, as given. */
  readonly stated: number | null;
  /** With the voltage of data sheets, dB. */
  readonly at_voltage: number | null;
  /** To be as loud as the softest of those that are heard from the seat, dB; null for one that fills an area. */
  readonly trim: number | null;
}

/** The stated -6 dB angle as a cone about the acoustic axis. */
export interface CoverageJson {
  readonly angle: number;
  /** Of length 1. */
  readonly axis: Vector;
  /** On the level plane of the reference seat's ear: an ellipse with its two diameters, open one way, or nothing. */
  readonly ear_plane: {
    readonly kind: "closed" | "open" | "none";
    readonly long: number | null;
    readonly short: number | null;
    /** Where the axis meets it. */
    readonly foot: { readonly x: number; readonly y: number } | null;
  };
}

export type ShapeJson =
  | { readonly shape: "round"; readonly diameter: number }
  | { readonly shape: "rectangle"; readonly width: number; readonly height: number };

export const listeningAtJson = ({ listening }: Room): ListeningAtJson => ({
  target: listening.targetDb,
  headroom: listening.headroomDb,
  temperature: listening.temperatureC,
});

export const earsJson = ({ seats }: Room): readonly EarJson[] =>
  seats.map(({ name, reference, ear }) => ({ name, reference, ear }));

/** `softest` as `softestDb` has it. */
export function listeningJson({ speaker, listening }: Opening, softest: number): ListeningJson {
  const { drive, byCoverage }: Listening = listening;
  return {
    power: drive?.powerW ?? null,
    headroom: drive?.headroomDb ?? null,
    by_coverage: byCoverage,
    stated: speaker.model.powerW,
    at_voltage: drive?.atVoltageDb ?? null,
    trim: speaker.area === null ? trimDb(listening, softest) : null,
  };
}

/** Null where no coverage is stated, or nobody can say which way the axis points. */
export function coverageJson(opening: Opening, { reference }: Room): CoverageJson | null {
  const cone = coneOf(opening);
  if (cone === null) return null;
  const footprint = footprintOf(cone, reference.ear.z);
  const foot = footprint.kind === "none" ? null : footprint.foot;
  return {
    angle: 2 * cone.halfDeg,
    axis: cone.axis,
    ear_plane: {
      kind: footprint.kind,
      long: footprint.kind === "closed" ? footprint.longMm : null,
      short: footprint.kind === "closed" ? footprint.shortMm : null,
      foot: foot === null ? null : { x: foot.u, y: foot.v },
    },
  };
}

export const shapeJson = (shape: Shape): ShapeJson =>
  shape.kind === "round"
    ? { shape: "round", diameter: shape.diameterMm }
    : { shape: "rectangle", width: shape.widthMm, height: shape.heightMm };
