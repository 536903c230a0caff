import { InternalError } from "../findings/internal-error.js";
import { directionOf, inner, minus, outer, plus, quarterTurn, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Edge, Faces, Surface } from "../room/room.js";

/** The edges of a surface's outline as they stand on the faces asked for: bare framing, or with the walls boarded. */
export function edgesOn(surface: Surface, faces: Faces): readonly Edge[] {
  if (faces === "framing") return surface.edges;
  if (surface.finished.length !== surface.edges.length) {
    throw new InternalError(`the finished outline of ${surface.name} has other corners than its edges`);
  }
  return surface.edges.map((edge, index) => ({
    ...edge,
    from: cornerOf(surface, index),
    to: cornerOf(surface, (index + 1) % surface.edges.length),
    boardMm: 0,
  }));
}

function cornerOf({ name, finished }: Surface, index: number): SurfacePoint {
  const corner = finished[index];
  if (corner === undefined) throw new InternalError(`no corner ${index} on ${name}`);
  return corner;
}

/** Where a straight line out of `from` first leaves the outline, and through which edge; null where it meets none. */
export interface Exit {
  readonly edge: Edge;
  readonly index: number;
  readonly at: SurfacePoint;
}

export function exitThrough(
  edges: readonly Edge[],
  { from, direction }: { readonly from: SurfacePoint; readonly direction: SurfacePoint },
): Exit | null {
  const crossings = edges.flatMap((edge, index) => {
    const ahead = distanceAlong(edge, from, direction);
    return ahead === null ? [] : [{ edge, index, ahead }];
  });
  const [first] = crossings.sort((a, b) => a.ahead - b.ahead);
  if (first === undefined) return null;
  return { edge: first.edge, index: first.index, at: plus(from, times(direction, first.ahead)) };
}

/** How far along the line the edge is crossed, in lengths of `direction`; null where it is not, or only behind. */
function distanceAlong(edge: Edge, from: SurfacePoint, direction: SurfacePoint): number | null {
  const along = minus(edge.to, edge.from);
  const turn = outer(direction, along);
  if (turn === 0) return null;
  const toEdge = minus(edge.from, from);
  const ahead = outer(toEdge, along) / turn;
  const share = outer(toEdge, direction) / turn;
  return ahead >= 0 && share >= -SLACK && share <= 1 + SLACK ? ahead : null;
}

/** Share of an edge's length that rounding may lose at a corner, so that no line slips out between two edges. */
const SLACK = 1e-9;

/** The edge that one looks at in a direction: of those that face it squarest, what it is along. */
export function edgeToward(surface: Surface, direction: SurfacePoint): string {
  const facing = (edge: Edge): number =>
    -inner(quarterTurn(directionOf(minus(edge.to, edge.from))), direction);
  const [first, ...others] = surface.edges;
  if (first === undefined) throw new InternalError(`${surface.name} has no edges`);
  return others.reduce((best, edge) => (facing(edge) > facing(best) + SLACK ? edge : best), first).along;
}
