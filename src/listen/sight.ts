import { InternalError } from "../findings/internal-error.js";
import { distanceMm } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Edge, Faces, Room, Surface } from "../room/room.js";
import { type Exit, edgesOn, exitThrough } from "./edges.js";
import type { Mounted } from "./mounted.js";

export interface Sight {
  readonly wall: string;
  /** Wall at the corner that the tape hooks on. */
  readonly from: string;
  readonly mm: number;
}

/**
 * The mark to sight along the arrow to: where its line meets the next wall in the plane of the surface (of a wall,
 * its next neighbour, the floor or the ceiling), as a tape from the nearer corner there. Null where the loudspeaker
 * stands outside the outline and looks away from it.
 */
export function sightOf(
  { surface, centre }: Mounted,
  lean: SurfacePoint,
  stage: Room["stage"],
): Sight | null {
  const edges = edgesOn(surface, facesWhenCutting(surface, stage));
  const exit = exitThrough(edges, { from: centre, direction: lean });
  return exit === null ? null : fromNearerCorner(edges, exit);
}

/** Ceilings are often boarded and cut while the walls are bare; when a wall is cut, what it meets is boarded. */
export function facesWhenCutting(surface: Surface, stage: Room["stage"]): Faces {
  if (surface.kind === "wall") return stage === "bare" ? "framing" : "finish";
  return stage === "boarded" ? "finish" : "framing";
}

function fromNearerCorner(edges: readonly Edge[], { edge, index, at }: Exit): Sight {
  const toStart = distanceMm(edge.from, at);
  const toEnd = distanceMm(at, edge.to);
  const nextIsNearer = toEnd < toStart;
  return {
    wall: edge.along,
    from: alongAt(edges, nextIsNearer ? index + 1 : index - 1),
    mm: nextIsNearer ? toEnd : toStart,
  };
}

function alongAt(edges: readonly Edge[], index: number): string {
  const edge = edges[(index + edges.length) % edges.length];
  if (edge === undefined) throw new InternalError(`no edge ${index}`);
  return edge.along;
}
