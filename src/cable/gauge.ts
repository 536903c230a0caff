import type { Wiring } from "../room/room.js";
import { MOST_SHARE_OF_LOAD } from "../standards/cable-practice.js";
import { awgOhmPerKm, type ConductorSize, copperFactor, crossSectionOhmPerKm } from "../standards/wire.js";

export type Size = ConductorSize;

/** Conductors that a wiring takes. */
export const conductorsOf = (wiring: Wiring): number => (wiring === "single" ? 2 : 4);

/** Resistance of one conductor in ohm per km at a temperature of the copper. */
export function ohmPerKm(size: Size, temperatureC: number): number {
  const at20 = size.kind === "gauge" ? awgOhmPerKm(size.gauge) : crossSectionOhmPerKm(size.areaMm2);
  return at20 * copperFactor(temperatureC);
}

export interface Run {
  readonly lengthMm: number;
  readonly wiring: Wiring;
  readonly temperatureC: number;
}

const MM_PER_KM = 1e6;

/** Resistance out and back in ohm; half of it where two pairs lie side by side. */
export function loopOhm(size: Size, { lengthMm, wiring, temperatureC }: Run): number {
  const pairs = wiring === "doubled" ? 2 : 1;
  return (2 * ohmPerKm(size, temperatureC) * lengthMm) / MM_PER_KM / pairs;
}

/** What a run takes from its load, at the least impedance that the load has. */
export interface Loss {
  readonly loopOhm: number;
  /** 20 lg((Z + R) / Z): level lost across the wire, from an amplifier of no resistance. */
  readonly lossDb: number;
  /** R / Z. */
  readonly shareOfLoad: number;
  /** Z / R: damping factor that the wire alone leaves. */
  readonly damping: number;
}

export function lossOf(size: Size, run: Run, impedanceOhm: number): Loss {
  const ohm = loopOhm(size, run);
  const share = ohm / impedanceOhm;
  return { loopOhm: ohm, lossDb: shareToDb(share), shareOfLoad: share, damping: impedanceOhm / ohm };
}

const shareToDb = (share: number): number => 20 * Math.log10(1 + share);

/** The limit where the room file gives none. */
export const USUAL_LIMIT_DB = shareToDb(MOST_SHARE_OF_LOAD);

/** Above the noise of doubles, so that exactly at the limit passes. */
const EPSILON_DB = 1e-9;

export const isWithin = (lossDb: number, limitDb: number): boolean => lossDb <= limitDb + EPSILON_DB;

export interface Wanted extends Run {
  readonly impedanceOhm: number;
  readonly limitDb: number;
}

/** The thinnest of the sizes that keeps a run's loss within the limit; null where none does. */
export function thinnestOf(sizes: readonly Size[], wanted: Wanted): Size | null {
  const { impedanceOhm, limitDb } = wanted;
  const enough = (size: Size): boolean => isWithin(lossOf(size, wanted, impedanceOhm).lossDb, limitDb);
  return thinnestFirst(sizes).find(enough) ?? null;
}

/** By resistance: a cross-section and a gauge of one area differ by what the standards allow. */
export const thinnestFirst = (sizes: readonly Size[]): readonly Size[] =>
  [...sizes].sort((a, b) => ohmPerKm(b, 20) - ohmPerKm(a, 20));
