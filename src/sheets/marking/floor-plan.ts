import { InternalError } from "../../findings/internal-error.js";
import { inner } from "../../geometry/surface-point.js";
import { dot, type SurfacePoint } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { type Edge, type Room, type Surface, surfaceNamed, type Tape } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { type HeldTape, stagesOf, tapesHeld, tapesOf } from "../tapes.js";

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

/**
 * The tapes that can be held over the floor from the walls' bare studs, square to them, to the point below an opening.
 * The plan is turned over for it, so that its walls go round as edges of a surface do.
 */
export function floorTapes({ walls, corners }: FloorPlan, { position }: Opening): readonly HeldTape[] {
  const edges = walls.map(({ name, boardMm }, index): Edge => {
    const [from, to] = [corners[index], corners[(index + 1) % corners.length]];
    if (from === undefined || to === undefined) throw new InternalError(`no corner at ${name}`);
    return { along: name, from: turnedOver(from), to: turnedOver(to), boardMm, slantMm: 0 };
  });
  return tapesHeld(edges, turnedOver(below(position)), "ceiling");
}

const turnedOver = ({ u, v }: SurfacePoint): SurfacePoint => ({ u: 0 - u, v });

/** Tapes to the point below an opening. */
export interface FloorTapes {
  /** From both control walls, or from the wall before one that cannot be reached. */
  readonly governing: readonly Tape[];
  /** From across; fewer where none can be held. */
  readonly checks: readonly Tape[];
}

export function floorTapesOf(plan: FloorPlan, opening: Opening): FloorTapes {
  const held = floorTapes(plan, opening);
  const governing = plan.control.flatMap((wall) => {
    const { x, y } = wall.frame.n;
    const alike = held.filter(({ direction }) => inner(direction, { u: -x, v: y }) > ALONGSIDE);
    return alike.find(({ from }) => from === wall.name) ?? alike[0] ?? instead(held, wall);
  });
  return { governing, checks: governing.flatMap((tape) => acrossFrom(tape, held)) };
}

/** Cosine of the angle under which two tapes lie along each other. */
const ALONGSIDE = 1 - 1e-6;

/** Where nothing looks the same way, the tape that comes nearest to it. */
function instead(held: readonly HeldTape[], { frame: { n } }: Surface): readonly HeldTape[] {
  const alike = ({ direction }: HeldTape): number => inner(direction, { u: -n.x, v: n.y });
  return [...held].sort((a, b) => alike(b) - alike(a)).slice(0, 1);
}

function acrossFrom(tape: HeldTape, held: readonly HeldTape[]): readonly HeldTape[] {
  return held.filter(({ direction }) => inner(direction, tape.direction) < -ALONGSIDE).slice(0, 1);
}

/** The point of the floor below something. */
export const below = ({ x, y }: { readonly x: number; readonly y: number }): SurfacePoint => ({ u: x, v: y });
