import { isInside } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Polygon } from "../geometry/shape.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Member, Surface } from "../room/room.js";
import { type Box, isIn } from "./box.js";

export type Axis = "u" | "v";

export const otherAxis = (axis: Axis): Axis => (axis === "u" ? "v" : "u");

/** A surface as cable sees it: what it may lie between, what it has to pass through, what it goes round. */
export interface Field {
  readonly surface: Surface;
  readonly outline: Polygon;
  readonly members: readonly Member[];
  /** Where nobody has measured the framing: cable may pass, and how many holes that takes is unknown. */
  readonly unknown: readonly Polygon[];
  /** How far behind the framing face cable lies: half a member's depth, or all of it over an open attic. */
  readonly levelMm: number;
  /** True where cable lies over the members, so that none is bored. */
  readonly isOver: boolean;
  readonly blocks: readonly Box[];
}

/** A straight stretch along one axis of a surface. */
export interface Stretch {
  readonly axis: Axis;
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
}

export function fieldOf(surface: Surface, blocks: readonly Box[]): Field {
  const { framing } = surface;
  const outline = surface.edges.map(({ from }) => from);
  if (framing.kind === "unknown") {
    return { surface, outline, members: [], unknown: [outline], levelMm: 0, isOver: false, blocks };
  }
  const depthMm = Math.max(0, ...framing.members.map((member) => member.depthMm));
  const isOver = surface.kind === "ceiling" && framing.cavityMm === Number.POSITIVE_INFINITY;
  return {
    surface,
    outline,
    members: framing.members,
    unknown: framing.unknown,
    levelMm: isOver ? depthMm : depthMm / 2,
    isOver,
    blocks,
  };
}

const middleOf = ({ from, to }: Stretch): SurfacePoint => ({
  u: (from.u + to.u) / 2,
  v: (from.v + to.v) / 2,
});

/** The axis that a member runs on. */
export const runOf = ({ from, to }: Member): Axis =>
  Math.abs(to.u - from.u) > Math.abs(to.v - from.v) ? "u" : "v";

const between = (value: number, a: number, b: number): boolean =>
  value >= Math.min(a, b) - EPSILON_MM && value <= Math.max(a, b) + EPSILON_MM;

/** Whether a place across a member lies within the wood. */
export function isInWood(member: Member, across: number): boolean {
  const axis = otherAxis(runOf(member));
  return Math.abs(across - member.from[axis]) < member.widthMm / 2 - EPSILON_MM;
}

/** Whether cable may lie along a stretch between neighbouring lanes: on the surface, round the blocks, not in wood. */
export function isOpen(field: Field, stretch: Stretch, leavesWood: boolean): boolean {
  const middle = middleOf(stretch);
  if (!isInside(middle, field.outline) || (field.surface.kind === "wall" && isOnEdge(field, stretch)))
    return false;
  if (field.blocks.some((block) => isIn(block, middle))) return false;
  return leavesWood || field.isOver || !runsInWood(field, stretch, middle);
}

const runsInWood = ({ members }: Field, { axis }: Stretch, middle: SurfacePoint): boolean =>
  members.some(
    (member) =>
      runOf(member) === axis &&
      isInWood(member, middle[otherAxis(axis)]) &&
      between(middle[axis], member.from[axis], member.to[axis]),
  );

/** Along the border of a wall there is a floor, a ceiling or a corner, not a bay. */
function isOnEdge({ outline }: Field, { axis, from }: Stretch): boolean {
  const across = otherAxis(axis);
  const places = outline.map((corner) => corner[across]);
  const at = from[across];
  return at - Math.min(...places) < EPSILON_MM || Math.max(...places) - at < EPSILON_MM;
}

/** Members that a stretch passes through, in the field's order; each is counted on one side of its centre line only. */
export function crossedBy({ members, isOver }: Field, { axis, from, to }: Stretch): readonly Member[] {
  if (isOver) return [];
  const across = otherAxis(axis);
  const [low, high] = [Math.min(from[axis], to[axis]), Math.max(from[axis], to[axis])];
  return members.filter(
    (member) =>
      runOf(member) === across &&
      member.from[axis] >= low &&
      member.from[axis] < high &&
      between(from[across], member.from[across], member.to[across]),
  );
}

/** Whether nobody knows what a stretch passes through. */
export const isUncounted = ({ unknown, isOver }: Field, stretch: Stretch): boolean =>
  !isOver && unknown.some((polygon) => isInside(middleOf(stretch), polygon));
