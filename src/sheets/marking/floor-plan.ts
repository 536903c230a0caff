import { InternalError } from "../../findings/internal-error.js";
import { dot, type SurfacePoint, subtract } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { type Room, type Surface, surfaceNamed } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { stagesOf, tapesOf } from "../tapes.js";

/** The floor seen from above: x to the right, y toward the front, on framing faces. */
export interface FloorPlan {
  readonly walls: readonly Surface[];
  readonly corners: readonly SurfacePoint[];
  readonly openings: readonly Opening[];
  /** The two walls that every mark is measured from: one zero each. */
  readonly control: readonly [Surface, Surface];
}

/** The plan with its marks; null where nothing is overhead. */
export function floorPlanOf(order: Order): FloorPlan | null {
  const { room, openings } = order.job;
  const overhead = openings.filter(({ surface }) => surface.kind === "ceiling");
  if (overhead.length === 0) return null;
  const walls = room.walls.map((name) => surfaceNamed(room, name));
  const corners = walls.map(({ frame: { origin } }) => ({ u: origin.x, v: origin.y }));
  return { walls, corners, openings: overhead, control: controlWalls(room, walls, overhead) };
}

/** The walls that most governing tapes of the ceiling hook on, so that floor and ceiling are marked from the same ones. */
function controlWalls(
  room: Room,
  walls: readonly Surface[],
  openings: readonly Opening[],
): [Surface, Surface] {
  const hooked = openings.flatMap((opening) => {
    const [stage = "bare"] = stagesOf(room, opening.surface);
    return tapesOf(room, opening, stage).governing.map(({ from }) => from);
  });
  const votes = ({ name }: Surface): number => hooked.filter((each) => each === name).length;
  const ranked = [...walls].sort((a, b) => votes(b) - votes(a));
  const [first] = ranked;
  const second = ranked.find((wall) => first !== undefined && !isParallel(first, wall));
  if (first === undefined || second === undefined) throw new InternalError("no two walls meet");
  return [first, second];
}

const isParallel = (a: Surface, b: Surface): boolean => Math.abs(dot(a.frame.n, b.frame.n)) > 1 - 1e-9;

/** A tape over the floor from a wall's bare studs, square to it, to the point below an opening, in mm. */
export function floorTapeMm({ frame }: Surface, { position }: Opening): number {
  return dot(subtract(position, frame.origin), frame.n);
}

/** The wall on the other side of the room: its face is the most opposite. */
export function wallFacing(walls: readonly Surface[], wall: Surface): Surface {
  return walls.reduce((best, other) =>
    dot(other.frame.n, wall.frame.n) < dot(best.frame.n, wall.frame.n) ? other : best,
  );
}

/** The point of the floor below something. */
export const below = ({ x, y }: { readonly x: number; readonly y: number }): SurfacePoint => ({ u: x, v: y });
