import type { Problem } from "../../findings/complaint.js";
import { InternalError } from "../../findings/internal-error.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import { dot, subtract, type Vector } from "../../geometry/vector.js";
import type { Path, Seat } from "../room.js";
import type { SeatFile } from "../schema/speakers.js";
import type { RoomFile } from "../schema.js";
import { all, type Resolved, refused, resolved } from "./resolved.js";
import type { Shell } from "./shell.js";
import { fixAtHeight } from "./tapes.js";

/** The seats with their ears in the world; a floor that is laid later raises them. */
export function seatsOf(file: RoomFile, shell: Shell): Resolved<readonly Seat[]> {
  const floorMm = file.floor?.build_up ?? 0;
  return all(
    file.seats.map((entry, index) => seatOf(entry, { shell, floorMm, path: ["seats", index], file })),
  );
}

interface SeatPlace {
  readonly shell: Shell;
  readonly floorMm: number;
  readonly path: Path;
  readonly file: RoomFile;
}

function seatOf(entry: SeatFile, { shell, floorMm, path, file }: SeatPlace): Resolved<Seat> {
  const ear = fixAtHeight(entry.at, floorMm + entry.ear, { shell, path: [...path, "at"] });
  if (!ear.ok) return ear;
  const outside = outsideProblem(ear.value, shell, path);
  if (outside !== null) return refused(outside);
  const isOnly = file.seats.length === 1;
  return resolved({ name: entry.name, ear: ear.value, reference: isOnly || entry.reference === true });
}

/** Nobody sits outside the room: a tape is wrong. */
function outsideProblem(ear: Vector, { walls, heightMm }: Shell, path: Path): Problem | null {
  if (ear.z > heightMm)
    return { code: "seat-outside", path: [...path, "ear"], at: "value", figures: { wall: "ceiling" } };
  const wall = walls.find(({ frame }) => dot(subtract(ear, frame.origin), frame.n) < -EPSILON_MM);
  if (wall === undefined) return null;
  return { code: "seat-outside", path: [...path, "at"], at: "value", figures: { wall: wall.name } };
}

/** The seat that the layout is built round; reading made sure that there is one. */
export function referenceOf(seats: readonly Seat[]): Seat {
  const reference = seats.find((seat) => seat.reference);
  if (reference === undefined) throw new InternalError("no reference seat");
  return reference;
}
