import { InternalError } from "../findings/internal-error.js";
import { movedIn } from "../geometry/ring.js";
import type { Polygon } from "../geometry/shape.js";
import { directionOf, inner, minus, outer, plus, quarterTurn, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Edge, Faces, Surface } from "../room/room.js";

/**
 * The edges of a surface's outline as they stand on the faces asked for: against bare framing, or with the walls
 * boarded. Either way they are measured on the surface as it is when it is cut, which is boarded.
 */
export function edgesOn(surface: Surface, faces: Faces): readonly Edge[] {
  return onFaces(surface, faces);
}

/** The edges round what lies in the surface and is not of it. */
export const voidEdgesOn = ({ voids }: Surface, faces: Faces): readonly Edge[] =>
  voids.flatMap((each) => onFaces(each, faces));

/** Both: all that bounds the surface. */
export const allEdgesOn = (surface: Surface, faces: Faces): Edge[] => [
  ...edgesOn(surface, faces),
  ...voidEdgesOn(surface, faces),
];

type Outlined = Pick<Surface, "name" | "edges" | "finished">;

function onFaces(outlined: Outlined, faces: Faces): readonly Edge[] {
  const { name, edges, finished } = outlined;
  if (faces === "framing") return onBareWalls(edges);
  if (finished.length !== edges.length) {
    throw new InternalError(`the finished outline of ${name} has other corners than its edges`);
  }
  return withCorners(edges, finished).map((edge) => ({ ...edge, boardMm: 0, slantMm: 0 }));
}

/** On a slope the surface's own board shifts where its face meets a wall; nothing shifts where all is square. */
function onBareWalls(edges: readonly Edge[]): readonly Edge[] {
  if (edges.every(({ slantMm }) => slantMm === 0)) return edges;
  const corners = movedIn(edges.map(({ from, to, slantMm }) => ({ from, to, inMm: slantMm })));
  return withCorners(edges, corners).map((edge) => ({
    ...edge,
    boardMm: edge.boardMm - edge.slantMm,
    slantMm: 0,
  }));
}

const withCorners = (edges: readonly Edge[], corners: Polygon): readonly Edge[] =>
  edges.map((edge, index) => ({
    ...edge,
    from: corners[index] ?? edge.from,
    to: corners[(index + 1) % corners.length] ?? edge.to,
  }));

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

/** A place on a surface, as an opening's centre is. */
export interface Spot {
  readonly surface: Surface;
  readonly centre: SurfacePoint;
}

/**
 * What stands along the edge that one looks at in a direction: the one straight ahead, where it faces about this way;
 * else the one that faces it squarest, of several the furthest. In an L two walls may look the same way. One may be
 * left out because it names something else already.
 */
export function edgeToward(
  { surface, centre }: Spot,
  direction: SurfacePoint,
  except: string | null = null,
): string {
  const facing = (edge: Edge): number =>
    -inner(quarterTurn(directionOf(minus(edge.to, edge.from))), direction);
  const edges = surface.edges.filter(({ along }) => along !== except);
  const ahead = exitThrough(edges, { from: centre, direction });
  if (ahead !== null && facing(ahead.edge) > FACES) return ahead.edge.along;
  const far = (edge: Edge): number => inner(edge.from, direction);
  const isBetter = (edge: Edge, best: Edge): boolean => {
    const squarer = facing(edge) - facing(best);
    return Math.abs(squarer) > SLACK ? squarer > 0 : far(edge) > far(best) + SLACK;
  };
  const [first, ...others] = edges;
  if (first === undefined) throw new InternalError(`${surface.name} has no edges`);
  return others.reduce((best, edge) => (isBetter(edge, best) ? edge : best), first).along;
}

/** Cosine of 45 degrees: an edge that stands more aslant than that is not what one looks at. Our own choice. */
const FACES = Math.SQRT1_2;
