import { toWorld } from "../geometry/frame.js";
import { dot, type SurfacePoint, subtract } from "../geometry/vector.js";
import type { Edge, Surface } from "../room/room.js";

/**
 * A ceiling that hangs below another, as a soffit, without the rims that are lower than the step up to that one: the
 * space over it is open so far, and cable goes over them. Any other surface as it is.
 */
export function withoutRimsPassedOver(surface: Surface, all: readonly Surface[]): Surface {
  const { framing, kind } = surface;
  if (framing.kind === "unknown" || kind === "wall") return surface;
  const openMm = Math.max(0, ...surface.edges.map((edge) => stepMm(surface, edge, all)));
  const members = framing.members.filter((member) => member.kind !== "rim" || member.depthMm > openMm);
  return members.length === framing.members.length
    ? surface
    : { ...surface, framing: { ...framing, members } };
}

/** How much higher the ceiling stands that meets this one along an edge, over the edge's middle, in mm; 0 for none. */
function stepMm({ frame }: Surface, { along, from, to }: Edge, all: readonly Surface[]): number {
  const higher = all.find(({ name, kind }) => name === along && kind === "ceiling");
  if (higher === undefined) return 0;
  const middle: SurfacePoint = { u: (from.u + to.u) / 2, v: (from.v + to.v) / 2 };
  return -dot(subtract(toWorld(frame, middle), higher.frame.origin), higher.frame.n) / higher.frame.n.z;
}
