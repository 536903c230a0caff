import type { Listening } from "./heard.js";

/** Level at the reference seat of the softest of several at one voltage, in dB; infinite where none is known. */
export const softestDb = (all: readonly Listening[]): number =>
  Math.min(...all.flatMap(({ drive }) => drive?.atVoltageDb ?? []));

/**
 * How much a loudspeaker is turned down for all to be as loud as the softest at one voltage, in dB, 0 or less: nobody
 * turns one up to meet the loudest. Null where its level is not known.
 */
export function trimDb({ drive }: Listening, softest: number): number | null {
  return drive === null ? null : softest - drive.atVoltageDb;
}
