import { length, subtract, type Vector } from "../geometry/vector.js";
import type { Room, Seat } from "../room/room.js";
import { leanOf, offAxisDeg } from "./axis.js";
import { alignDelayMs, samplesOf } from "./delay.js";
import { type Direction, directionFrom } from "./direction.js";
import { levelDb } from "./level.js";
import type { Mounted } from "./mounted.js";
import { type Drive, driveOf } from "./power.js";
import { isInWindow, windowOf } from "./window.js";

/** One loudspeaker as a seat hears it. */
export interface Heard {
  readonly seat: Seat;
  readonly direction: Direction;
  /** Whether the direction lies in the channel's window, as if the layout were built round this seat; null without one. */
  readonly inside: boolean | null;
  /** Between the acoustic axis and the line to the ear; null where nobody can say which way the axis points. */
  readonly offAxisDeg: number | null;
  /** Against the reference seat, by distance and, where coverage is stated and the axis known, by the model of it. */
  readonly levelDb: number;
  /** Delay that brings it level with the furthest loudspeaker at this seat. */
  readonly delayMs: number;
  readonly samples: number;
}

export interface Listening {
  readonly heard: readonly Heard[];
  /** At the reference seat; null where sensitivity or impedance is not stated, and for one of many that fill an area. */
  readonly drive: Drive | null;
  /** Whether levels take the stated coverage in, or distance alone. */
  readonly byCoverage: boolean;
}

/** How far each seat is from the loudspeaker that is furthest from it, in mm. */
export const furthestOf = (room: Room, all: readonly Mounted[]): ReadonlyMap<Seat, number> =>
  new Map(
    room.seats.map((seat) => [
      seat,
      Math.max(...all.map((other) => length(subtract(other.position, seat.ear)))),
    ]),
  );

/** How every seat hears one of the loudspeakers, each in the room's order. */
export function listeningOf(room: Room, mounted: Mounted, furthest: ReadonlyMap<Seat, number>): Listening {
  const { model, target, area } = mounted.speaker;
  const lean = leanOf(mounted, target.kind === "none" ? null : target.at);
  const axisAt = (ear: Vector): number | null => offAxisDeg(mounted, lean, ear);
  const levelAt = (ear: Vector): number =>
    levelDb({
      distanceMm: length(subtract(mounted.position, ear)),
      offAxisDeg: axisAt(ear),
      coverageDeg: model.coverageDeg,
    });
  const atReference = levelAt(room.reference.ear);
  return {
    heard: room.seats.map((seat) => ({
      ...arrivalAt(room, mounted, { seat, furthestMm: furthest.get(seat) ?? 0 }),
      offAxisDeg: axisAt(seat.ear),
      levelDb: levelAt(seat.ear) - atReference,
    })),
    drive: area === null ? driveOf(model, atReference, room.listening) : null,
    byCoverage: model.coverageDeg !== null && axisAt(room.reference.ear) !== null,
  };
}

type Arrival = Omit<Heard, "offAxisDeg" | "levelDb">;

function arrivalAt(
  room: Room,
  { speaker, position }: Mounted,
  { seat, furthestMm }: { readonly seat: Seat; readonly furthestMm: number },
): Arrival {
  const direction = directionFrom(seat.ear, position);
  const window = windowOf(room, speaker.channel);
  const delayMs = alignDelayMs(direction.distanceMm, furthestMm, room.listening.temperatureC);
  return {
    seat,
    direction,
    inside: window === null ? null : isInWindow(window, direction),
    delayMs,
    samples: samplesOf(delayMs),
  };
}
