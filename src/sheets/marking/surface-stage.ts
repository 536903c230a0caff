import { EPSILON_MM } from "../../geometry/epsilon.js";
import { inner, minus } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { edgesOn } from "../../listen/edges.js";
import { inward } from "../../place/run.js";
import type { Edge, Room, Surface } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { facesAt, type Stage, tapesOf } from "../tapes.js";
import { rowsOf } from "./rows.js";

/** One surface as it stands when its openings are cut, and where its running dimensions begin. */
export interface SurfaceStage {
  readonly surface: Surface;
  readonly stage: Stage;
  readonly openings: readonly Opening[];
  /** On the faces that the tape touches then. */
  readonly edges: readonly Edge[];
  /** The edges that running figures in u and in v count from; null where none lies square to the axis. */
  readonly zero: Zero;
  /** The same for the members, which lie over the whole surface. */
  readonly membersZero: Zero;
}

interface Zero {
  readonly u: Edge | null;
  readonly v: Edge | null;
}

export function surfaceAt(order: Order, surface: Surface, stage: Stage): SurfaceStage {
  const { room, openings } = order.job;
  const own = openings.filter((opening) => opening.surface.name === surface.name);
  const edges = edgesOn(surface, facesAt(stage));
  const hooked = own.flatMap((opening) => tapesOf(room, opening, stage).governing.map(({ from }) => from));
  const layoutFrom = rowsOf(surface).map(({ layout }) => layout.from);
  const corners = edges.map(({ from }) => from);
  const zeroBefore = (points: readonly SurfacePoint[]): Zero => {
    const of = (axis: "u" | "v"): Edge | null =>
      mostHooked(
        edges.filter((edge) => isSquareTo(edge, axis) && liesBehind(edge, points)),
        [...hooked, ...layoutFrom],
      );
    return { u: of("u"), v: of("v") };
  };
  return {
    surface,
    stage,
    openings: own,
    edges,
    zero: zeroBefore(own.map(({ centre }) => centre)),
    membersZero: zeroBefore(corners),
  };
}

/** True where the edge is a line of constant u (or v), so that figures along that axis count from it. */
const isSquareTo = ({ from, to }: Edge, axis: "u" | "v"): boolean =>
  Math.abs(to[axis] - from[axis]) < EPSILON_MM;

/** None of the points lies behind the edge's line, so that no figure from it falls below 0. */
const liesBehind = (edge: Edge, points: readonly SurfacePoint[]): boolean =>
  points.every((point) => inner(inward(edge), minus(point, edge.from)) > -EPSILON_MM);

/** The edge that most governing tapes hook on: one zero for each axis, and the fewest openings that need another. */
function mostHooked(edges: readonly Edge[], hooked: readonly string[]): Edge | null {
  const votes = (edge: Edge): number => hooked.filter((name) => name === edge.along).length;
  return edges.reduce<Edge | null>(
    (best, edge) => (best === null || votes(edge) > votes(best) ? edge : best),
    null,
  );
}

/** Surfaces with openings, ceilings first, then the walls as they follow round the room. */
export function surfacesToMark({
  room,
  openings,
}: {
  room: Room;
  openings: readonly Opening[];
}): readonly Surface[] {
  const marked = room.surfaces.filter(({ name }) => openings.some(({ surface }) => surface.name === name));
  return [
    ...marked.filter(({ kind }) => kind === "ceiling"),
    ...marked.filter(({ kind }) => kind === "wall"),
  ];
}
