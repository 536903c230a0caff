import { degrees, type Vector } from "../geometry/vector.js";
import { EVEN_WITHIN_DB } from "../standards/coverage-spacing.js";
import { SENSITIVITY_DISTANCE_MM } from "../standards/sound.js";
import { axisOf, leanOf } from "./axis.js";
import { offAxisLossDb } from "./level.js";
import type { Mounted } from "./mounted.js";

/*
 * The level that many loudspeakers make together on the plane of the ears, and how even it is. The model is the one of
 * level.ts for each of them; their powers are added as if they were unrelated, which the sound of many loudspeakers in
 * a room comes near to over a band of frequencies. No reflections, no interference.
 */

/** A loudspeaker as the plane of the ears hears it. */
export interface Source {
  readonly position: Vector;
  /** Of length 1; null where nobody knows it. */
  readonly axis: Vector | null;
  readonly coverageDeg: number | null;
  /** At 1 m on the axis with 2.83 V, or 0 dB where it is not stated. */
  readonly sensitivityDb: number;
}

export function sourceOf(mounted: Mounted): Source {
  const { target, model } = mounted.speaker;
  return {
    position: mounted.position,
    axis: axisOf(mounted, leanOf(mounted, target.kind === "none" ? null : target.at)),
    coverageDeg: model.coverageDeg,
    sensitivityDb: model.sensitivityDb ?? 0,
  };
}

/** Level of sounds that have nothing to do with each other, together: 10 lg of the sum of 10^(L / 10). */
export function sumDb(levelsDb: readonly number[]): number {
  return 10 * Math.log10(levelsDb.reduce((sum, levelDb) => sum + 10 ** (levelDb / 10), 0));
}

/**
 * Level in dB that all the sources make together at a point of the world, each with 2.83 V; where no sensitivity is
 * stated, against that of one loudspeaker at 1 m on its axis.
 */
export function levelAtDb(sources: readonly Source[], at: Vector): number {
  let power = 0;
  for (const source of sources) power += powerAt(source, at);
  return 10 * Math.log10(power);
}

/** 10^(L / 10) of one source: the same as `levelDb`, without what costs time for a million of them. */
function powerAt({ position, axis, coverageDeg, sensitivityDb }: Source, at: Vector): number {
  const [x, y, z] = [at.x - position.x, at.y - position.y, at.z - position.z];
  const squareMm2 = x * x + y * y + z * z;
  const nearer = SENSITIVITY_DISTANCE_MM ** 2 / squareMm2;
  if (axis === null || coverageDeg === null) return nearer * 10 ** (sensitivityDb / 10);
  const cosine = (x * axis.x + y * axis.y + z * axis.z) / Math.sqrt(squareMm2);
  const offAxisDeg = degrees(Math.acos(Math.max(-1, Math.min(1, cosine))));
  return nearer * 10 ** ((sensitivityDb - offAxisLossDb(offAxisDeg, coverageDeg)) / 10);
}

/** How even the level is over an area, in dB; each against the mean of the levels, which are all at 2.83 V. */
export interface Spread {
  readonly meanDb: number;
  /** Below 0. */
  readonly leastDb: number;
  readonly mostDb: number;
  readonly deviationDb: number;
  /** Share of the area within `EVEN_WITHIN_DB` of the mean, 0 to 1. */
  readonly evenShare: number;
  /** Points that were listened at. */
  readonly points: number;
}

export function spreadOver(sources: readonly Source[], ears: readonly Vector[]): Spread {
  const levels = ears.map((ear) => levelAtDb(sources, ear));
  const meanDb = meanOf(levels);
  const away = levels.map((level) => level - meanDb);
  return {
    meanDb,
    leastDb: away.reduce((least, each) => Math.min(least, each), 0),
    mostDb: away.reduce((most, each) => Math.max(most, each), 0),
    deviationDb: Math.sqrt(meanOf(away.map((each) => each * each))),
    evenShare: meanOf(away.map((each) => (Math.abs(each) <= EVEN_WITHIN_DB ? 1 : 0))),
    points: ears.length,
  };
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
