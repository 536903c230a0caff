import type { Problem } from "../../findings/complaint.js";
import { InternalError } from "../../findings/internal-error.js";
import { distanceToSegmentMm, isInside, sidesOf } from "../../geometry/distance.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Polygon } from "../../geometry/shape.js";
import { dot, type SurfacePoint, subtract, type Vector } from "../../geometry/vector.js";
import type { Path, Seat } from "../room.js";
import type { SeatFile } from "../schema/speakers.js";
import type { RoomFile } from "../schema.js";
import { all, type Resolved, refused, resolved } from "./resolved.js";
import { ceilingOver, heightUnder, planPoint, type Shell } from "./shell.js";
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
function outsideProblem(ear: Vector, shell: Shell, path: Path): Problem | null {
  const said = (key: string, wall: string): Problem => ({
    code: "seat-outside",
    path: [...path, key],
    at: "value",
    figures: { wall },
  });
  if (!isWithin(planPoint(ear), shell.outline)) return said("at", wallPassed(ear, shell));
  const over = ceilingOver(shell, ear);
  return over !== null && ear.z > heightUnder(over, ear) ? said("ear", over.name) : null;
}

/** Inside the walls or, within the house's tolerance, on one. */
const isWithin = (point: SurfacePoint, outline: Polygon): boolean =>
  isInside(point, outline) || sidesOf(outline).some((side) => distanceToSegmentMm(point, side) <= EPSILON_MM);

/** Of the walls that the point lies behind the one nearest to it. */
function wallPassed(ear: Vector, { walls, outline }: Shell): string {
  const sides = sidesOf(outline);
  const away = (index: number): number => {
    const side = sides[index];
    return side === undefined ? 0 : distanceToSegmentMm(planPoint(ear), side);
  };
  const passed = walls
    .map(({ name, frame }, index) => ({ name, frame, index }))
    .filter(({ frame }) => dot(subtract(ear, frame.origin), frame.n) < 0)
    .sort((a, b) => away(a.index) - away(b.index));
  return passed[0]?.name ?? "";
}

/** The seat that the layout is built round; reading made sure that there is one. */
export function referenceOf(seats: readonly Seat[]): Seat {
  const reference = seats.find((seat) => seat.reference);
  if (reference === undefined) throw new InternalError("no reference seat");
  return reference;
}
