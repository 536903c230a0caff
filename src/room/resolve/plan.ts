import type { Problem } from "../../findings/complaint.js";
import { InternalError } from "../../findings/internal-error.js";
import { areaMm2, difference, intersection, type Region } from "../../geometry/clip.js";
import { distanceToSegmentMm, nearestOnSegment, type Segment, sidesOf } from "../../geometry/distance.js";
import { crossingSides, movedIn, shortestSideMm, twiceAreaMm2 } from "../../geometry/ring.js";
import type { Polygon } from "../../geometry/shape.js";
import { directionOf, distanceMm, inner, minus, plus, surfacePoint } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { BOX_WALLS } from "../names.js";
import type { Path } from "../room.js";
import type { CeilingFile, CornerFile } from "../schema/room.js";
import type { RoomFile } from "../schema.js";
import { ceilingFaceMm, wallFaceMm } from "./face.js";
import { all, andThen, type Resolved, refused, resolved } from "./resolved.js";
import { planeOver, type Rise, raised, riseAt } from "./rise.js";

/*
 * The room on plan as it is seen from below: u to the room's LEFT (x = -u), v to the front. So rings go round
 * anticlockwise as those of ceilings do, and the back-right corner of a box is the origin of its ceiling. On framing
 * faces, moved so that the leftmost and the backmost points are the world's 0.
 */

/** A wall on plan, from its left end to its right end as one faces it. */
export interface PlanWall extends Segment {
  readonly name: string;
}

/** A flat or sloped piece of ceiling on plan. */
export interface PlanCeiling {
  readonly name: string;
  readonly corners: Polygon;
  /** Outlines of what lies in it and is not of it, clockwise. */
  readonly holes: readonly Polygon[];
  /** Height of its framing over the floor. */
  readonly rise: Rise;
}

export interface Plan {
  readonly walls: readonly PlanWall[];
  readonly ceilings: readonly PlanCeiling[];
}

/** The shortest wall that is one; a shorter one is a slip. Our own choice. */
const LEAST_WALL_MM = 10;
/** A corner of a ceiling that lies this near to a wall or a corner was meant to lie on it. Our own choice. */
const SNAP_MM = 5;
/** What a corner's height may be out of its ceiling's plane: about what four tapes read to 1/16 in make. Our own choice. */
const OUT_OF_PLANE_MM = 3;
/** Ceilings that reach past a wall or over each other by less than this do not, for rounding. */
const LEAST_PIECE_MM2 = 100;

export function planOf(file: RoomFile): Resolved<Plan> {
  const { room, board } = file;
  const typed = typedOutline(room);
  const wrong = outlineProblem(typed);
  if (wrong !== null) return refused(wrong);
  const isFinish = room.measured_to === "finish";
  const outMm = (index: number): number => (isFinish ? wallFaceMm(file, typed.names[index] ?? "") : 0);
  const upMm = (name?: string): number => (isFinish ? ceilingFaceMm(file, name) : 0);
  const outline = movedIn(sidesOf(typed.corners).map((side, index) => ({ ...side, inMm: -outMm(index) })));
  const to = toOrigin(outline);
  const walls = sidesOf(outline).map(({ from, to: end }, index) => ({
    name: typed.names[index] ?? "",
    from: plus(from, to),
    to: plus(end, to),
  }));
  const fasciaMm = isFinish ? board.walls : 0;
  const ground: Ground = { typed, walls, to, fasciaMm, outMm, upMm };
  const named = all(
    (room.ceilings ?? []).map((entry, index) => ceilingOf(entry, ["room", "ceilings", index], ground)),
  );
  if (!named.ok) return named;
  return andThen(
    placed(named.value, ground, raised({ mm: room.height, du: 0, dv: 0 }, upMm())),
    (ceilings) => ({
      walls,
      ceilings,
    }),
  );
}

interface TypedOutline {
  /** As typed, from below, anticlockwise. */
  readonly corners: Polygon;
  readonly names: readonly string[];
  readonly path: Path;
}

/** Ring of the walls: left, front, right, back of a box. */
function typedOutline({ outline, walls, width, length }: RoomFile["room"]): TypedOutline {
  if (outline !== undefined && walls !== undefined) {
    return inOrder(outline.map(fromBelow), walls);
  }
  if (width === undefined || length === undefined) throw new InternalError("a room without a form");
  const corners = [
    surfacePoint(0, -length),
    surfacePoint(0, 0),
    surfacePoint(-width, 0),
    surfacePoint(-width, -length),
  ];
  return { corners, names: BOX_WALLS, path: ["room"] };
}

const fromBelow = ({ left, front }: CornerFile): SurfacePoint => surfacePoint(-left, -front);

/** The same walls anticlockwise, whichever way round they were typed; each keeps its two corners. */
function inOrder(corners: Polygon, names: readonly string[]): TypedOutline {
  const path = ["room", "outline"];
  if (twiceAreaMm2(corners) > 0) return { corners, names, path };
  const [first, ...others] = corners;
  if (first === undefined) throw new InternalError("an outline without corners");
  return { corners: [first, ...others.reverse()], names: [...names].reverse(), path };
}

function outlineProblem({ corners, names, path }: TypedOutline): Problem | null {
  const nameOf = (index: number): string => names[index] ?? "";
  const shortest = sidesOf(corners).findIndex(({ from, to }) => distanceMm(from, to) < LEAST_WALL_MM);
  if (shortest >= 0) {
    const figures = { wall: nameOf(shortest), lengthMm: shortestSideMm(corners), leastMm: LEAST_WALL_MM };
    return { code: "wall-too-short", path, at: "value", figures };
  }
  const crossing = crossingSides(corners);
  if (crossing === null) return null;
  const [first, second] = crossing;
  return {
    code: "walls-cross",
    path,
    at: "value",
    figures: { first: nameOf(first), second: nameOf(second) },
  };
}

/** From a point as typed to where the world has it. */
const toOrigin = (outline: Polygon): SurfacePoint =>
  surfacePoint(-Math.max(...outline.map(({ u }) => u)), -Math.min(...outline.map(({ v }) => v)));

interface Ground {
  readonly typed: TypedOutline;
  readonly walls: readonly PlanWall[];
  readonly to: SurfacePoint;
  /** Board between the typed face of a soffit's side and its framing; 0 where tapes hook on framing. */
  readonly fasciaMm: number;
  /** Between a wall's typed face and its framing, by its place. */
  outMm(index: number): number;
  /** The same of a ceiling, by its name. */
  upMm(name?: string): number;
}

interface NamedCeiling {
  readonly name: string;
  readonly path: Path;
  /** As typed but on the plan, to the faces that tapes hook on. */
  readonly corners: Polygon;
  readonly rise: Rise;
}

function ceilingOf(entry: CeilingFile, path: Path, ground: Ground): Resolved<NamedCeiling> {
  const corners = entry.corners.map(fromBelow).map((corner) => snapped(corner, ground.typed.corners));
  const at = { ceiling: entry.name };
  const isNothing = Math.abs(twiceAreaMm2(corners)) < LEAST_PIECE_MM2 || crossingSides(corners) !== null;
  if (isNothing)
    return refused({ code: "ceiling-no-area", path: [...path, "corners"], at: "value", figures: at });
  const outside = outsideMm(corners, ground.typed.corners);
  if (outside > 0) {
    const figures = { ...at, byMm: outside };
    return refused({ code: "ceiling-outside", path: [...path, "corners"], at: "value", figures });
  }
  const fit = riseOf(entry, corners);
  if (fit.outMm > OUT_OF_PLANE_MM) {
    const figures = { ...at, corner: fit.corner + 1, byMm: fit.outMm, mostMm: OUT_OF_PLANE_MM };
    return refused({ code: "not-one-plane", path: [...path, "heights"], at: "value", figures });
  }
  return resolved({
    name: entry.name,
    path,
    corners: twiceAreaMm2(corners) > 0 ? corners : [...corners].reverse(),
    rise: raised(fit.rise, ground.upMm(entry.name)),
  });
}

function riseOf(entry: CeilingFile, corners: Polygon) {
  if ("height" in entry) return { rise: { mm: entry.height, du: 0, dv: 0 }, outMm: 0, corner: 0 };
  const { heights } = entry;
  return planeOver(corners.map((at, index) => ({ at, mm: heights[index] ?? 0 })));
}

/** A corner on the nearest corner, else on the nearest wall, where either is near enough to have been meant. */
function snapped(corner: SurfacePoint, outline: Polygon): SurfacePoint {
  const nearest = (points: readonly SurfacePoint[]): SurfacePoint | undefined =>
    points
      .filter((point) => distanceMm(point, corner) <= SNAP_MM)
      .sort((a, b) => distanceMm(a, corner) - distanceMm(b, corner))[0];
  return (
    nearest(outline) ?? nearest(sidesOf(outline).map((side) => nearestOnSegment(corner, side))) ?? corner
  );
}

/** How far the furthest corner lies past the walls; 0 where nothing of it does. */
function outsideMm(corners: Polygon, outline: Polygon): number {
  const beyond = difference([corners], [outline]);
  if (areaMm2(beyond) < LEAST_PIECE_MM2) return 0;
  const away = (point: SurfacePoint): number =>
    Math.min(...sidesOf(outline).map((side) => distanceToSegmentMm(point, side)));
  return Math.max(...beyond.flat().map(away));
}

/** The named ceilings with what they leave of the one at the room's height, which comes first; none over another. */
function placed(
  named: readonly NamedCeiling[],
  ground: Ground,
  rise: Rise,
): Resolved<readonly PlanCeiling[]> {
  const overlaps = named.flatMap((one, index) =>
    named.slice(index + 1).flatMap((other) => overlap(one, other)),
  );
  if (overlaps.length > 0) return refused(...overlaps);
  const framed = named.map((one) => onFraming(one, { named, ground, main: rise }));
  const outline = ground.walls.map(({ from }) => from);
  const left = difference(
    [outline],
    framed.map(({ corners }) => corners),
  ).filter((piece) => Math.abs(areaMm2([piece])) >= LEAST_PIECE_MM2);
  const pieces = left.filter((piece) => twiceAreaMm2(piece) > 0);
  if (pieces.length > 1) {
    const figures = { pieces: pieces.length };
    return refused({ code: "ceiling-in-pieces", path: ["room", "ceilings"], at: "key", figures });
  }
  const corners = [...outline, ...framed.flatMap((one) => one.corners)];
  const main = pieces.map(
    (piece): PlanCeiling => ({
      name: "ceiling",
      corners: exactly(piece, corners),
      holes: left.filter((hole) => twiceAreaMm2(hole) < 0).map((hole) => exactly(hole, corners)),
      rise,
    }),
  );
  return resolved([...main, ...framed.map((one) => ({ ...one, holes: [] }))]);
}

function overlap(one: NamedCeiling, other: NamedCeiling): readonly Problem[] {
  const shared: Region = intersection([one.corners], [other.corners]);
  if (areaMm2(shared) < LEAST_PIECE_MM2) return [];
  const figures = { ceiling: one.name, other: other.name };
  return [{ code: "ceilings-overlap", path: [...other.path, "corners"], at: "value", figures }];
}

interface Around {
  readonly named: readonly NamedCeiling[];
  readonly ground: Ground;
  readonly main: Rise;
}

/**
 * A ceiling on framing faces: where tapes hook on board, its sides along walls lie a board further out, and where it
 * ends in the open the lower side's framing lies a board behind its face.
 */
function onFraming(
  one: NamedCeiling,
  { named, ground, main }: Around,
): { readonly name: string; readonly corners: Polygon; readonly rise: Rise } {
  const { typed, to, fasciaMm, outMm } = ground;
  const typedWalls = sidesOf(typed.corners);
  const sides = sidesOf(one.corners).map((side) => {
    const middle = middleOf(side);
    const wall = typedWalls.findIndex((each) => distanceToSegmentMm(middle, each) < ON_LINE_MM);
    const beyond = named.find(
      (other) =>
        other !== one &&
        sidesOf(other.corners).some((along) => distanceToSegmentMm(middle, along) < ON_LINE_MM),
    );
    const stepMm = riseAt(beyond?.rise ?? main, middle) - riseAt(one.rise, middle);
    return {
      ...side,
      inMm: wall >= 0 ? -outMm(wall) : Math.abs(stepMm) < FLUSH_MM ? 0 : Math.sign(stepMm) * fasciaMm,
    };
  });
  return {
    name: one.name,
    corners: movedIn(sides).map((corner) => plus(corner, to)),
    rise: shifted(one.rise, to),
  };
}

/** The same plane over points that were moved. */
const shifted = ({ mm, du, dv }: Rise, by: SurfacePoint): Rise => ({
  mm: mm - du * by.u - dv * by.v,
  du,
  dv,
});

export const middleOf = ({ from, to }: Segment): SurfacePoint =>
  surfacePoint((from.u + to.u) / 2, (from.v + to.v) / 2);

/** Two points nearer than this are one, two lines one line; far above rounding, far under any tape. */
export const ON_LINE_MM = 0.1;
/** Ceilings that meet within this height make a crease, not a step. */
export const FLUSH_MM = 3;

/** The clipping library reckons in whole steps: its corners are corners that were there. From the first of them on. */
function exactly(piece: Polygon, corners: Polygon): Polygon {
  const ring = piece.map(
    (corner) => corners.find((known) => distanceMm(known, corner) < ON_LINE_MM) ?? corner,
  );
  const first = corners.find((corner) => ring.includes(corner));
  const start = first === undefined ? 0 : ring.indexOf(first);
  return [...ring.slice(start), ...ring.slice(0, start)];
}

/** A ring's sides, parted wherever one of the points lies on one of them. */
export function parted(ring: Polygon, points: readonly SurfacePoint[]): readonly Segment[] {
  return sidesOf(ring).flatMap((side) => {
    const along = directionOf(minus(side.to, side.from));
    const lengthMm = distanceMm(side.from, side.to);
    const places = points
      .filter((point) => distanceToSegmentMm(point, side) < ON_LINE_MM)
      .map((point) => ({ point, mm: inner(along, minus(point, side.from)) }))
      .filter(({ mm }) => mm > ON_LINE_MM && mm < lengthMm - ON_LINE_MM)
      .sort((a, b) => a.mm - b.mm)
      .filter(({ mm }, index, all) => index === 0 || mm - (all[index - 1]?.mm ?? 0) > ON_LINE_MM)
      .map(({ point }) => point);
    const stops = [side.from, ...places, side.to];
    return stops.slice(1).map((to, index) => ({ from: stops[index] ?? side.from, to }));
  });
}
