import { edgeNameOf } from "../../findings/edge-name.js";
import { InternalError } from "../../findings/internal-error.js";
import { type Frame, toSurface, toWorld } from "../../geometry/frame.js";
import { movedIn } from "../../geometry/ring.js";
import { directionOf, distanceMm, minus, quarterTurn, surfacePoint } from "../../geometry/surface-point.js";
import { add, type SurfacePoint, scale, vector } from "../../geometry/vector.js";
import type { Edge, Surface, Void } from "../room.js";
import type { RoomFile } from "../schema.js";
import { insetMm, slantMm } from "./meeting.js";
import { FLUSH_MM, ON_LINE_MM } from "./plan.js";
import { type Ceiling, type CeilingSide, type Face, faceOfWall, type Shell, type Wall } from "./shell.js";

/** A surface before its framing, its obstructions and the joints of its board are known. */
export type BareSurface = Omit<Surface, "framing" | "obstructions" | "joints">;

/** The ceilings, then the walls in their order. */
export function bareSurfaces(shell: Shell, file: RoomFile): readonly BareSurface[] {
  return [
    ...shell.ceilings.map((ceiling) => ceilingSurface(ceiling, file)),
    ...shell.walls.map((wall) => wallSurface(wall, shell, file)),
  ];
}

interface Plane {
  readonly frame: Frame;
  readonly boardMm: number;
}

function edgeOf(plane: Plane, from: SurfacePoint, to: SurfacePoint, along: Face): Edge {
  const aside = quarterTurn(directionOf(minus(to, from)));
  const inward = add(scale(plane.frame.u, aside.u), scale(plane.frame.v, aside.v));
  const ending = { normal: plane.frame.n, boardMm: plane.boardMm };
  return {
    along: along.name,
    from,
    to,
    boardMm: insetMm(ending, inward, along),
    slantMm: slantMm(ending, inward, along),
  };
}

const finishedOutline = (edges: readonly Edge[]): Surface["finished"] =>
  movedIn(edges.map(({ from, to, boardMm }) => ({ from, to, inMm: boardMm })));

function ceilingSurface(ceiling: Ceiling, file: RoomFile): BareSurface {
  const { name, frame, boardMm, sides, holes } = ceiling;
  const edgesOf = (ring: readonly CeilingSide[]): readonly Edge[] =>
    ring.map(({ from, to, along }) => edgeOf(ceiling, toSurface(frame, from), toSurface(frame, to), along));
  const edges = edgesOf(sides);
  return {
    name,
    kind: "ceiling",
    frame,
    edges,
    finished: finishedOutline(edges),
    voids: holes.map((hole) => voidOf(edgesOf(hole))),
    boardMm,
    layersMm: layersOf(file, "ceiling"),
    ...known(file, name),
  };
}

const layersOf = ({ board }: RoomFile, kind: Surface["kind"]): readonly number[] =>
  kind === "wall" ? board.wallLayers : board.ceilingLayers;

const voidOf = (edges: readonly Edge[]): Void => ({
  name: edgeNameOf(edges[0]?.along ?? "").name,
  edges,
  finished: finishedOutline(edges),
});

/** A wall reaches up to the ceilings that end at it: flat, sloped or in steps. */
function wallSurface(wall: Wall, shell: Shell, file: RoomFile): BareSurface {
  const { name, frame, lengthMm, boardMm } = wall;
  const [before, after] = neighbours(wall, shell);
  const tops = topsOf(wall, shell);
  const corner = (uMm: number, vMm: number): SurfacePoint => surfacePoint(uMm, vMm);
  const edge = (from: SurfacePoint, to: SurfacePoint, along: Face): readonly Edge[] =>
    distanceMm(from, to) < ON_LINE_MM ? [] : [edgeOf(wall, from, to, along)];
  const [first, last] = [tops.at(-1), tops[0]];
  if (first === undefined || last === undefined) throw new InternalError(`nothing over ${name}`);
  const edges = [
    ...edge(corner(0, 0), corner(lengthMm, 0), FLOOR),
    ...edge(corner(lengthMm, 0), last.right, faceOfWall(after)),
    ...tops.flatMap((top, index) => [
      ...edge(top.right, top.left, top.along),
      ...stepTo(tops[index + 1], top, { edge, wall }),
    ]),
    ...edge(first.left, corner(0, 0), faceOfWall(before)),
  ];
  return {
    name,
    kind: "wall",
    frame,
    edges,
    finished: finishedOutline(edges),
    voids: [],
    boardMm,
    layersMm: layersOf(file, "wall"),
    ...known(file, name),
  };
}

const FLOOR: Face = { name: "floor", normal: vector(0, 0, 1), on: vector(0, 0, 0), boardMm: 0 };

/** A piece of ceiling along the top of a wall. */
interface Top {
  readonly left: SurfacePoint;
  readonly right: SurfacePoint;
  readonly along: Face;
}

/** Pieces of ceiling over a wall from its right end to its left. */
function topsOf({ name, frame }: Wall, { ceilings }: Shell): readonly Top[] {
  return ceilings
    .flatMap((ceiling) =>
      ceiling.sides
        .filter(({ along }) => along.name === name)
        .map(({ from, to }) => ({
          left: toSurface(frame, from),
          right: toSurface(frame, to),
          along: faceOfCeiling(ceiling),
        })),
    )
    .sort((a, b) => b.left.u - a.left.u);
}

const faceOfCeiling = ({ name, frame, boardMm }: Ceiling): Face => ({
  name,
  normal: frame.n,
  on: frame.origin,
  boardMm,
});

interface Drawing {
  readonly wall: Wall;
  edge(from: SurfacePoint, to: SurfacePoint, along: Face): readonly Edge[];
}

/** The upright edge between two ceilings of different heights: the side of the lower one. */
function stepTo(next: Top | undefined, top: Top, { edge, wall }: Drawing): readonly Edge[] {
  if (next === undefined || Math.abs(next.right.v - top.left.v) < ON_LINE_MM) return [];
  const nextIsHigher = next.right.v > top.left.v;
  const toRight = wall.frame.u;
  const side: Face = {
    name: (nextIsHigher ? top : next).along.name,
    normal: nextIsHigher ? scale(toRight, -1) : toRight,
    on: toWorld(wall.frame, top.left),
    boardMm: Math.abs(next.right.v - top.left.v) < FLUSH_MM ? 0 : wall.boardMm,
  };
  return edge(top.left, { ...next.right, u: top.left.u }, side);
}

/** The walls at the left and at the right end of a wall, as one faces it. */
function neighbours(wall: Wall, { walls }: Shell): readonly [Wall, Wall] {
  const index = walls.indexOf(wall);
  const before = walls.at(index - 1);
  const after = walls[(index + 1) % walls.length];
  if (before === undefined || after === undefined) throw new InternalError(`${wall.name} has no neighbours`);
  return [before, after];
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
