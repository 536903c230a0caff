import type { Opening } from "../job.js";
import type { Heard } from "../listen/heard.js";
import type { Measure } from "../words/measure.js";
import type { Words } from "../words/words.js";

/** A level as people read it: one place after the point, and its sign where it is a difference. */
export const decibels = (db: number): string => `${Number(db.toFixed(1)) + 0} dB`;

const signed = (db: number): string => (Number(db.toFixed(1)) > 0 ? `+${decibels(db)}` : decibels(db));

export const watts = (w: number): string => `${w < 10 ? w.toFixed(1) : w.toFixed(0)} W`;

/** Direction, distance, window, angle off the axis, level and delay of one loudspeaker at one seat. */
export function heardCells(words: Words, measure: Measure, heard: Heard): readonly string[] {
  const { direction, inside, offAxisDeg, levelDb, delayMs, samples, seat } = heard;
  const { listening } = words;
  return [
    seat.name,
    `${direction.azimuthDeg.toFixed(1)}° / ${direction.elevationDeg.toFixed(1)}°`,
    measure.length(direction.distanceMm),
    inside === null ? "" : inside ? listening.inside : listening.outside,
    offAxisDeg === null ? listening.unknown : `${offAxisDeg.toFixed(1)}°`,
    signed(levelDb),
    `${delayMs.toFixed(2)} ms`,
    String(samples),
  ];
}

/** Power for the target, what is stated, and the headroom that this leaves; none where it cannot be reckoned. */
export function powerCells({ speaker, listening }: Opening): readonly (readonly string[])[] {
  const { drive } = listening;
  if (drive === null) return [];
  const { powerW } = speaker.model;
  return [
    [
      speaker.id,
      watts(drive.powerW),
      powerW === null ? "" : watts(powerW),
      drive.headroomDb === null ? "" : decibels(drive.headroomDb),
    ],
  ];
}
