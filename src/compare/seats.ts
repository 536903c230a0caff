import { EPSILON_MM } from "../geometry/epsilon.js";
import { toWorld } from "../geometry/frame.js";
import type { Room, Seat } from "../room/room.js";

/** One thing that is otherwise about one seat. */
export type SeatChange = { readonly seat: string } & (
  | { readonly what: "added" | "gone" | "reference" }
  /** From the room's left and front ends, on framing faces, and the height of the ear. */
  | { readonly what: "moved"; readonly before: SeatPlace; readonly after: SeatPlace }
);

export interface SeatPlace {
  readonly fromLeftMm: number;
  readonly fromFrontMm: number;
  readonly earMm: number;
}

/** Seats by their names. */
export function seatChanges(before: Room, after: Room): readonly SeatChange[] {
  const names = new Set(after.seats.map(({ name }) => name));
  return [
    ...after.seats.flatMap((seat): readonly SeatChange[] => {
      const was = before.seats.find(({ name }) => name === seat.name);
      if (was === undefined) return [{ seat: seat.name, what: "added" }];
      return changesOf(was, seat, { before, after });
    }),
    ...before.seats
      .filter(({ name }) => !names.has(name))
      .map(({ name }) => ({ seat: name, what: "gone" }) as const),
  ];
}

function changesOf(was: Seat, is: Seat, rooms: { before: Room; after: Room }): readonly SeatChange[] {
  const [before, after] = [placeOf(was, rooms.before), placeOf(is, rooms.after)];
  const becameReference = is.reference && !was.reference;
  return [
    ...(isSame(before, after) ? [] : [{ seat: is.name, what: "moved", before, after } as const]),
    ...(becameReference ? [{ seat: is.name, what: "reference" } as const] : []),
  ];
}

/** The room's own ends, since the world's origin moves with its back wall. */
function placeOf({ ear }: Seat, { surfaces }: Room): SeatPlace {
  const corners = surfaces
    .filter(({ kind }) => kind === "wall")
    .flatMap(({ frame, edges }) => edges.map(({ from }) => toWorld(frame, from)));
  return {
    fromLeftMm: ear.x - Math.min(...corners.map(({ x }) => x)),
    fromFrontMm: Math.max(...corners.map(({ y }) => y)) - ear.y,
    earMm: ear.z,
  };
}

const isSame = (a: SeatPlace, b: SeatPlace): boolean =>
  Math.abs(a.fromLeftMm - b.fromLeftMm) < EPSILON_MM &&
  Math.abs(a.fromFrontMm - b.fromFrontMm) < EPSILON_MM &&
  Math.abs(a.earMm - b.earMm) < EPSILON_MM;
