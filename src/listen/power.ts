import type { Model, Room } from "../room/room.js";
import { SENSITIVITY_VOLTS } from "../standards/sound.js";

/** What a loudspeaker needs at its terminals for the target at the reference seat, and what its own limit leaves. */
export interface Drive {
  /** Level at the reference seat with the voltage of data sheets, 2.83 V, in dB. */
  readonly atVoltageDb: number;
  /** Power for the target and the headroom above it, in W. */
  readonly powerW: number;
  /** How far above the target its stated power goes at the reference seat, in dB; null where none is stated. */
  readonly headroomDb: number | null;
}

/** Power in W at which a model stands for its sensitivity: 2.83 V into its impedance. */
const sensitivityW = (impedanceOhm: number): number => SENSITIVITY_VOLTS ** 2 / impedanceOhm;

/**
 * Power into the nominal impedance for a level at the seat: L = S + 10 lg(P / P(2.83 V)) + level over the path, one
 * loudspeaker alone, no help from the room. Null where sensitivity or impedance is not stated.
 */
export function driveOf(
  { sensitivityDb, impedanceOhm, powerW }: Model,
  pathDb: number,
  { targetDb, headroomDb }: Room["listening"],
): Drive | null {
  if (sensitivityDb === null || impedanceOhm === null) return null;
  const unitW = sensitivityW(impedanceOhm);
  const atVoltageDb = sensitivityDb + pathDb;
  return {
    atVoltageDb,
    powerW: unitW * 10 ** ((targetDb + headroomDb - atVoltageDb) / 10),
    headroomDb: powerW === null ? null : atVoltageDb + 10 * Math.log10(powerW / unitW) - targetDb,
  };
}
