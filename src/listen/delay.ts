import { SAMPLES_PER_S, speedOfSoundMPerS } from "../standards/sound.js";

/** Time that sound takes, in ms. */
export const travelMs = (distanceMm: number, temperatureC: number): number =>
  distanceMm / speedOfSoundMPerS(temperatureC);

/** Delay in ms that brings a loudspeaker level with the furthest one at a seat; 0 for the furthest itself. */
export function alignDelayMs(distanceMm: number, furthestMm: number, temperatureC: number): number {
  return travelMs(furthestMm - distanceMm, temperatureC);
}

/** Whole samples at 48 kHz that are nearest to a delay. */
export const samplesOf = (delayMs: number): number => Math.round((delayMs * SAMPLES_PER_S) / 1000);
