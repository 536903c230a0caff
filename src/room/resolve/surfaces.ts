import { InternalError } from "../../findings/internal-error.js";
import { toSurface } from "../../geometry/frame.js";
import type { Polygon } from "../../geometry/shape.js";
import {
  directionOf,
  inner,
  minus,
  outer,
  plus,
  quarterTurn,
  surfacePoint,
  times,
} from "../../geometry/surface-point.js";
import { add, type SurfacePoint, scale } from "../../geometry/vector.js";
import type { Edge, Surface } from "../room.js";
import type { RoomFile } from "../schema.js";
import type { Shell, Wall } from "./shell.js";

/** A surface before its framing and obstructions are known. */
export type BareSurface = Omit<Surface, "framing" | "obstructions">;

/** The ceiling, then the walls in their order. */
export function bareSurfaces(shell: Shell, file: RoomFile): readonly BareSurface[] {
  return [ceilingSurface(shell, file), ...shell.walls.map((wall) => wallSurface(wall, shell, file))];
}

function ceilingSurface(shell: Shell, file: RoomFile): BareSurface {
  const { frame, boardMm } = shell.ceiling;
  // Clockwise from above is anticlockwise for a person who looks up.
  const edges = shell.walls.map(
    (wall): Edge => ({
      along: wall.name,
      from: toSurface(frame, wall.frame.origin),
      to: toSurface(frame, rightEnd(wall)),
      boardMm: wall.boardMm,
    }),
  );
  return {
    name: "ceiling",
    kind: "ceiling",
    frame,
    edges,
    boardMm,
    ...outlineOf(edges),
    ...known(file, "ceiling"),
  };
}

const rightEnd = ({ frame, lengthMm }: Wall) => add(frame.origin, scale(frame.u, lengthMm));

function wallSurface(wall: Wall, shell: Shell, file: RoomFile): BareSurface {
  const { name, frame, lengthMm, boardMm } = wall;
  const [before, after] = neighbours(wall, shell);
  const corners = {
    bottomLeft: surfacePoint(0, 0),
    bottomRight: surfacePoint(lengthMm, 0),
    topRight: surfacePoint(lengthMm, shell.heightMm),
    topLeft: surfacePoint(0, shell.heightMm),
  };
  const edges: readonly Edge[] = [
    { along: "floor", from: corners.bottomLeft, to: corners.bottomRight, boardMm: 0 },
    { along: after.name, from: corners.bottomRight, to: corners.topRight, boardMm: after.boardMm },
    { along: "ceiling", from: corners.topRight, to: corners.topLeft, boardMm: shell.ceiling.boardMm },
    { along: before.name, from: corners.topLeft, to: corners.bottomLeft, boardMm: before.boardMm },
  ];
  return { name, kind: "wall", frame, edges, boardMm, ...outlineOf(edges), ...known(file, name) };
}

/** The walls at the left and at the right end of a wall, as one faces it. */
function neighbours(wall: Wall, { walls }: Shell): readonly [Wall, Wall] {
  const index = walls.indexOf(wall);
  const before = walls.at(index - 1);
  const after = walls[(index + 1) % walls.length];
  if (before === undefined || after === undefined) throw new InternalError(`${wall.name} has no neighbours`);
  return [before, after];
}

const outlineOf = (edges: readonly Edge[]): Pick<Surface, "finished"> => ({
  finished: finishedOutline(edges),
});

/** The outline between finished faces: each edge moved in by its neighbour's board. */
export function finishedOutline(edges: readonly Edge[]): Polygon {
  return edges.map((edge, index) => corner(edges.at(index - 1) ?? edge, edge));
}

/** Where an edge and the one before it meet once both are moved in; edges along each other have their own corner. */
function corner(before: Edge, edge: Edge): SurfacePoint {
  const [a, b] = [movedIn(before), movedIn(edge)];
  const turn = outer(a.inward, b.inward);
  if (turn === 0) return plus(edge.from, times(b.inward, edge.boardMm));
  return surfacePoint(
    (a.offsetMm * b.inward.v - b.offsetMm * a.inward.v) / turn,
    (a.inward.u * b.offsetMm - b.inward.u * a.offsetMm) / turn,
  );
}

/** The line along the edge on its neighbour's finished face: the points p with `inward` · p = `offsetMm`. */
function movedIn({ from, to, boardMm }: Edge): { readonly inward: SurfacePoint; readonly offsetMm: number } {
  const inward = quarterTurn(directionOf(minus(to, from)));
  return { inward, offsetMm: inner(inward, from) + boardMm };
}

type Known = Pick<Surface, "rated" | "enclosure" | "insulation" | "secondSupport">;

function known({ surfaces }: RoomFile, name: string): Known {
  const said = Object.entries(surfaces ?? {}).find(([surface]) => surface === name)?.[1];
  return {
    rated: said?.rated ?? false,
    enclosure: said?.enclosure ?? false,
    insulation: said?.insulation ?? null,
    secondSupport: said?.second_support ?? false,
  };
}
