import { InternalError } from "../findings/internal-error.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import {
  directionOf,
  inner,
  lengthMm,
  minus,
  outer,
  quarterTurn,
  surfacePoint,
  times,
} from "../geometry/surface-point.js";
import { dot, type SurfacePoint, subtract } from "../geometry/vector.js";
import { type Faces, type Room, type Surface, surfaceNamed } from "../room/room.js";

/** A tape over a surface: what it reads at a point, `inner(direction, point) + offsetMm`. */
export interface TapeLine {
  readonly from: string;
  readonly direction: SurfacePoint;
  readonly offsetMm: number;
}

/**
 * The tape that hooks on a named wall, the floor or the ceiling, square to it, on the faces that the file's tapes
 * hook on unless said otherwise. Throws `InternalError` where there is no such wall.
 */
export function tapeLine(
  room: Room,
  surface: Surface,
  from: string,
  faces: Faces = room.measuredTo,
): TapeLine {
  if (from === "floor") return plumb(surface);
  if (from === "ceiling" && surface.kind === "wall") return fromOverhead(surface, faces);
  if (!room.walls.includes(from)) return fromEdge(surface, from, faces);
  return alongSurface(surface, surfaceNamed(room, from), faces);
}

/** From the ceiling over a wall; from the floor where that ceiling is not one level edge, and so no one line. */
function fromOverhead(surface: Surface, faces: Faces): TapeLine {
  const overhead = surface.edges.filter(
    ({ along, from, to }) => along !== "floor" && Math.abs(from.u - to.u) > EPSILON_MM,
  );
  const [only] = overhead;
  const isLevel = only !== undefined && Math.abs(only.from.v - only.to.v) < EPSILON_MM;
  if (overhead.length > 1 || only === undefined || !isLevel) return plumb(surface);
  return fromEdge(surface, only.along, faces);
}

/** Height over the floor. */
const plumb = ({ frame }: Surface): TapeLine => ({
  from: "floor",
  direction: { u: frame.u.z, v: frame.v.z },
  offsetMm: frame.origin.z,
});

/**
 * The tape lies on the surface, square to the line in which that meets the wall: over a slope it is longer than the
 * same tape held level, and on finished faces the surface's own board shifts it too.
 */
function alongSurface({ frame, boardMm }: Surface, wall: Surface, faces: Faces): TapeLine {
  const normal = wall.frame.n;
  const direction = { u: dot(frame.u, normal), v: dot(frame.v, normal) };
  const along = lengthMm(direction);
  const shiftMm = faces === "finish" ? wall.boardMm - boardMm * dot(normal, frame.n) : 0;
  const onFramingMm = dot(subtract(frame.origin, wall.frame.origin), normal);
  return {
    from: wall.name,
    direction: along === 0 ? direction : times(direction, 1 / along),
    offsetMm: along === 0 ? 0 : (onFramingMm - shiftMm) / along,
  };
}

function fromEdge(surface: Surface, from: string, faces: Faces): TapeLine {
  const edge = surface.edges.find(({ along }) => along === from);
  if (edge === undefined) throw new InternalError(`${surface.name} does not meet ${from}`);
  const inward = quarterTurn(directionOf(minus(edge.to, edge.from)));
  const boardMm = faces === "finish" ? edge.boardMm : 0;
  return { from, direction: inward, offsetMm: -inner(inward, edge.from) - boardMm };
}

/** What the tape reads at a point, in mm. */
export function tapeMm({ direction, offsetMm }: TapeLine, point: SurfacePoint): number {
  return inner(direction, point) + offsetMm;
}

/** The point at which two tapes read `mm`; null where they run side by side and fix none. */
export function pointAt(
  [first, second]: readonly [TapeLine, TapeLine],
  [firstMm, secondMm]: readonly [number, number],
): SurfacePoint | null {
  const turn = outer(first.direction, second.direction);
  if (Math.abs(turn) < SIDE_BY_SIDE) return null;
  const a = firstMm - first.offsetMm;
  const b = secondMm - second.offsetMm;
  return surfacePoint(
    (a * second.direction.v - b * first.direction.v) / turn,
    (b * first.direction.u - a * second.direction.u) / turn,
  );
}

/** Sine of the least angle between two tapes that is taken to fix a point: no real pair of walls comes near it. */
const SIDE_BY_SIDE = 1e-6;
