import { sidedName } from "../../findings/edge-name.js";
import { distanceToSegmentMm, isInside, type Segment } from "../../geometry/distance.js";
import { ceilingFrame, type Frame, wallFrame } from "../../geometry/frame.js";
import type { Polygon } from "../../geometry/shape.js";
import { directionOf, distanceMm, inner, minus, quarterTurn } from "../../geometry/surface-point.js";
import { type SurfacePoint, type Vector, vector } from "../../geometry/vector.js";
import type { Faces } from "../room.js";
import type { RoomFile } from "../schema.js";
import { ceilingFaceMm, wallFaceMm } from "./face.js";
import {
  FLUSH_MM,
  middleOf,
  ON_LINE_MM,
  type Plan,
  type PlanCeiling,
  type PlanWall,
  parted,
  planOf,
} from "./plan.js";
import { andThen, type Resolved } from "./resolved.js";
import { normalOf, riseAt } from "./rise.js";

/** A wall as a plane: what a tape hooks on. */
export interface Wall {
  readonly name: string;
  readonly frame: Frame;
  readonly lengthMm: number;
  readonly boardMm: number;
}

/** A face that a surface ends at: where it is, which way it looks, the board on it. */
export interface Face {
  readonly name: string;
  /** Into the room, of length 1. */
  readonly normal: Vector;
  /** On the framing. */
  readonly on: Vector;
  readonly boardMm: number;
}

/** A side of a ceiling in the world, from its left to its right as one looks at what stands along it from inside. */
export interface CeilingSide {
  readonly from: Vector;
  readonly to: Vector;
  readonly along: Face;
}

/** A flat or sloped ceiling, soffit or tray. */
export interface Ceiling {
  readonly name: string;
  readonly frame: Frame;
  readonly boardMm: number;
  readonly sides: readonly CeilingSide[];
  /** Sides of what lies in it and is not of it, the other way round. */
  readonly holes: readonly (readonly CeilingSide[])[];
  readonly plan: PlanCeiling;
}

/** What stands round the room, on framing faces; walls in order, clockwise as seen from above. */
export interface Shell {
  readonly walls: readonly Wall[];
  /** The one at the room's height first, where there is one. */
  readonly ceilings: readonly Ceiling[];
  /** The walls' corners from below, anticlockwise. */
  readonly outline: Polygon;
  readonly measuredTo: Faces;
}

/** Walls and ceilings of a box or of any other room. */
export function shellOf(file: RoomFile): Resolved<Shell> {
  return andThen(planOf(file), (plan) => standing(plan, file));
}

function standing(plan: Plan, file: RoomFile): Shell {
  const { room } = file;
  const walls = plan.walls.map((wall) => standingWall(wall, wallFaceMm(file, wall.name)));
  return {
    walls,
    ceilings: plan.ceilings.map((ceiling) => hung(ceiling, plan, { walls, file })),
    outline: plan.walls.map(({ from }) => from),
    measuredTo: room.measured_to,
  };
}

const standingWall = ({ name, from, to }: PlanWall, boardMm: number): Wall => ({
  name,
  frame: wallFrame(worldOf(from, 0), worldOf(to, 0)),
  lengthMm: distanceMm(from, to),
  boardMm,
});

/** The world's point over one of the plan; taken from 0 so that no -0 comes about. */
const worldOf = ({ u, v }: SurfacePoint, z: number): Vector => vector(0 - u, v + 0, z);

export const planPoint = ({ x, y }: Vector): SurfacePoint => ({ u: -x, v: y });

interface Around {
  readonly walls: readonly Wall[];
  readonly file: RoomFile;
}

function hung(ceiling: PlanCeiling, plan: Plan, around: Around): Ceiling {
  const right = Math.min(...plan.walls.map(({ from }) => from.u));
  const origin = { u: right, v: 0 };
  const points = [...plan.walls.map(({ from }) => from), ...plan.ceilings.flatMap(({ corners }) => corners)];
  const sidesOfRing = (ring: Polygon): readonly NamedSide[] =>
    joined(parted(ring, points).map((side) => ({ ...side, along: alongside(side, ceiling, plan, around) })));
  const hang = (sides: readonly NamedSide[]): readonly CeilingSide[] =>
    sides.map(({ from, to, along }) => ({
      from: worldOf(from, riseAt(ceiling.rise, from)),
      to: worldOf(to, riseAt(ceiling.rise, to)),
      along,
    }));
  return {
    name: ceiling.name,
    frame: ceilingFrame(worldOf(origin, riseAt(ceiling.rise, origin)), normalOf(ceiling.rise)),
    boardMm: ceilingFaceMm(around.file, ceiling.name),
    sides: hang(toldApart(sidesOfRing(ceiling.corners), plan, "outline")),
    holes: ceiling.holes.map((hole) => hang(toldApart(sidesOfRing(hole), plan, "hole"))),
    plan: ceiling,
  };
}

interface NamedSide extends Segment {
  readonly along: Face;
}

/**
 * Sides along one neighbour that is no wall, each by the wall that lies its way: a tape must say which it hooks on. Of
 * an outline it is the wall behind the side; of a hole, the one before it, so that a tray's left side is its left.
 */
function toldApart(
  sides: readonly NamedSide[],
  { walls }: Plan,
  of: "outline" | "hole",
): readonly NamedSide[] {
  const isWall = (name: string): boolean => walls.some((wall) => wall.name === name);
  const used = new Map<string, number>();
  return sides.map((side) => {
    const { name } = side.along;
    const alike = sides.filter(({ along }) => along.name === name).length;
    if (alike < 2 || isWall(name)) return side;
    const sided = sidedName(name, wallOn(side, walls, of));
    const before = used.get(sided) ?? 0;
    used.set(sided, before + 1);
    return { ...side, along: { ...side.along, name: before === 0 ? sided : `${sided}-${before + 1}` } };
  });
}

function wallOn(side: Segment, walls: readonly PlanWall[], of: "outline" | "hole"): string {
  const inward = (each: Segment): SurfacePoint => quarterTurn(directionOf(minus(each.to, each.from)));
  const looks = inward(side);
  const alike = (wall: PlanWall): number => inner(inward(wall), looks) * (of === "outline" ? 1 : -1);
  const [first, ...others] = walls;
  if (first === undefined) return "";
  return others.reduce((best, wall) => (alike(wall) > alike(best) + 1e-9 ? wall : best), first).name;
}

/** Neighbours in a ring that are one line along one face are one side. */
function joined(sides: readonly NamedSide[]): readonly NamedSide[] {
  const found: NamedSide[] = [];
  for (const side of sides) {
    const last = found.at(-1);
    if (last !== undefined && isOneLine(last, side)) found.splice(-1, 1, { ...last, to: side.to });
    else found.push(side);
  }
  const [first] = found;
  const last = found.at(-1);
  if (found.length < 2 || first === undefined || last === undefined || !isOneLine(last, first)) return found;
  return [{ ...first, from: last.from }, ...found.slice(1, -1)];
}

const isOneLine = (a: NamedSide, b: NamedSide): boolean =>
  a.along.name === b.along.name && distanceToSegmentMm(a.to, { from: a.from, to: b.to }) < ON_LINE_MM;

/** What stands along a side: a wall; the board on the side of a soffit; or a crease, where nothing stands. */
function alongside(side: Segment, ceiling: PlanCeiling, plan: Plan, { walls, file }: Around): Face {
  const middle = middleOf(side);
  const index = plan.walls.findIndex((each) => distanceToSegmentMm(middle, each) < ON_LINE_MM);
  const wall = walls[index];
  if (wall !== undefined) return faceOfWall(wall);
  const beyond = plan.ceilings.find((other) => other !== ceiling && liesIn(justOutside(side, middle), other));
  const stepMm = beyond === undefined ? 0 : riseAt(beyond.rise, middle) - riseAt(ceiling.rise, middle);
  const inward = quarterTurn(directionOf(minus(side.to, side.from)));
  // The side of the lower one looks at the higher one: away from here where this is the lower.
  const looks = stepMm > 0 ? -1 : 1;
  return {
    name: beyond?.name ?? "ceiling",
    normal: vector(-inward.u * looks, inward.v * looks, 0),
    on: worldOf(middle, 0),
    boardMm: Math.abs(stepMm) < FLUSH_MM ? 0 : file.board.walls,
  };
}

export const faceOfWall = ({ name, frame, boardMm }: Wall): Face => ({
  name,
  normal: frame.n,
  on: frame.origin,
  boardMm,
});

/** A point next to a side, outside of an anticlockwise ring. */
function justOutside({ from, to }: Segment, middle: SurfacePoint): SurfacePoint {
  const inward = quarterTurn(directionOf(minus(to, from)));
  return { u: middle.u - inward.u * BESIDE_MM, v: middle.v - inward.v * BESIDE_MM };
}

/** Nearer to a side than anything that is built. */
const BESIDE_MM = 1;

const liesIn = (point: SurfacePoint, { corners, holes }: PlanCeiling): boolean =>
  isInside(point, corners) && !holes.some((hole) => isInside(point, hole));

/** The ceiling over a point of the world; the lowest where it lies under a step. Null outside the walls. */
export function ceilingOver({ ceilings }: Shell, point: Vector): Ceiling | null {
  const at = planPoint(point);
  const over = ceilings.filter(({ plan }) => liesIn(at, plan));
  return over.sort((a, b) => riseAt(a.plan.rise, at) - riseAt(b.plan.rise, at))[0] ?? null;
}

/** Height of a ceiling's framing over the floor there, plumb. */
export const heightUnder = ({ plan }: Ceiling, point: Vector): number => riseAt(plan.rise, planPoint(point));
