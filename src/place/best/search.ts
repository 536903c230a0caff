import type { SurfacePoint } from "../../geometry/vector.js";
import { mount } from "../../listen/mounted.js";
import type { Tape } from "../../room/room.js";
import { isClearFor, isOverJoint } from "./asking.js";
import { leastCost, liesOutside, overJoints, stillInTheWay } from "./bound.js";
import { type Cost, costAt, totalDeg, worstOf } from "./cost.js";
import { type Apart, boxFor, type Field, type Spot } from "./field.js";
import type { Taken } from "./ground.js";
import {
  type Axis,
  allMarks,
  type Box,
  type Hull,
  halves,
  hullOf,
  isEmpty,
  isSingle,
  pointAtMarks,
  readingMm,
} from "./marks.js";
import { type Queued, queueOf } from "./queue.js";

/*
 * Branch and bound over the marks of two tapes. A box of marks is left aside where something takes all of it, and is
 * halved where it may hold something better than all that was looked at; the boxes that may hold the best are looked
 * at first. So the first clear mark that comes up is the best of all, and nothing was left out for being unlikely.
 */

/** Marks that may hold the best place, with what still comes into them for each loudspeaker. */
export interface Node extends Queued {
  readonly box: Box;
  readonly hulls: readonly Hull[];
  readonly inTheWay: readonly (readonly Taken[])[];
  /** Joints of the board that come into them, likewise. */
  readonly joints: readonly (readonly Taken[])[];
}

/** The best place: for each loudspeaker of the field its tapes, its centre and what it costs. */
export interface Found {
  /** The mark of each tape of the first loudspeaker. */
  readonly box: Box;
  readonly tapes: readonly (readonly [Tape, Tape])[];
  readonly centres: readonly SurfacePoint[];
  readonly costs: readonly Cost[];
  readonly costDeg: number;
}

export interface Limits {
  /** Only these marks. */
  readonly box?: Box;
  /** Only what costs less. */
  readonly belowDeg?: number;
}

/** The clear marks that cost least; null where there are none, or none below the limit. */
export function bestIn(
  field: Field,
  { box = leaderMarks(field), belowDeg = Infinity }: Limits = {},
): Found | null {
  const queue = queueOf<Node>();
  const add = (node: Node | null): void => {
    if (node !== null && node.costDeg < belowDeg) queue.add(node);
  };
  add(rootOf(field, box));
  for (let node = queue.take(); node !== undefined; node = queue.take()) {
    if (isSingle(node.box)) {
      const found = lookAt(field, node.box);
      if (found !== null && found.costDeg < belowDeg) return found;
    } else for (const half of branchesOf(field, node)) add(half);
  }
  return null;
}

const leaderMarks = ({ spots: [leader] }: Field): Box => allMarks(leader.marks);

export function rootOf(field: Field, box: Box = leaderMarks(field)): Node | null {
  const all = field.spots.map(({ asking }) => [...asking.ground.taken, ...asking.kept]);
  const joints = field.spots.map(({ asking: { ground, wish } }) =>
    wish.jointDeg > 0 ? ground.overJoints : [],
  );
  return isEmpty(box) ? null : nodeOf(field, box, { inTheWay: all, joints });
}

/** Both halves of a node that may hold something. */
export function branchesOf(field: Field, node: Node): readonly Node[] {
  return halves(node.box, field.spots[0].marks).flatMap((half) => nodeOf(field, half, node) ?? []);
}

/** Null where nothing in the box is clear. */
function nodeOf(field: Field, box: Box, before: Pick<Node, "inTheWay" | "joints">): Node | null {
  const leader = field.spots[0].marks;
  const hulls = field.spots.map((spot) => hullOf(spot.marks, boxFor(spot, box, leader)));
  if (field.apart.some((apart) => areTooClose(apart, hulls))) return null;
  const inTheWay: (readonly Taken[])[] = [];
  const joints: (readonly Taken[])[] = [];
  const costs: Cost[] = [];
  for (const [index, spot] of field.spots.entries()) {
    const hull = hulls[index];
    const ways = before.inTheWay[index] ?? [];
    const now = hull === undefined ? null : stillInTheWay(hull, ways);
    if (hull === undefined || now === null || liesOutside(spot, hull, { now, before: ways })) return null;
    const over = overJoints(hull, before.joints[index] ?? []);
    inTheWay.push(now);
    joints.push(over.near);
    costs.push(leastCost(spot, hull, over));
  }
  return { box, hulls, inTheWay, joints, costDeg: totalDeg(worstOf(costs)) };
}

/** Whether no two places of the two hulls are far enough apart. */
export function areTooClose({ first, second, distancesMm }: Apart, hulls: readonly Hull[]): boolean {
  const [a, b] = [hulls[first], hulls[second]];
  if (a === undefined || b === undefined) return false;
  const reachMm = a.radiusMm + b.radiusMm;
  const [u, v] = [b.centre.u - a.centre.u, b.centre.v - a.centre.v];
  return distancesMm.some((distanceMm) => distanceMm(u, v) < -reachMm);
}

/** What a single mark is, by the exact rules; null where it is not clear. */
export function lookAt(field: Field, box: Box): Found | null {
  const leader = field.spots[0].marks;
  const looked = field.spots.map((spot) => lookAtSpot(spot, boxFor(spot, box, leader).least));
  const clear = looked.filter((one) => one !== null);
  const centres = clear.map(({ centre }) => centre);
  if (clear.length < looked.length || field.apart.some((apart) => comeTooClose(apart, centres))) return null;
  const costs = clear.map(({ cost }) => cost);
  const tapes = clear.map((one) => one.tapes);
  return { box, tapes, centres, costs, costDeg: totalDeg(worstOf(costs)) };
}

interface Looked {
  readonly tapes: readonly [Tape, Tape];
  readonly centre: SurfacePoint;
  readonly cost: Cost;
}

function lookAtSpot({ asking, marks }: Spot, [first, second]: readonly [number, number]): Looked | null {
  const centre = pointAtMarks(marks, first, second);
  if (!isClearFor(asking, centre)) return null;
  const { position } = mount(asking.speaker, asking.ground.surface, centre);
  const [a, b] = marks.axes;
  return {
    tapes: [tapeAt(a, first), tapeAt(b, second)],
    centre,
    cost: costAt(asking.wish, { position, isOverJoint: isOverJoint(asking, centre) }),
  };
}

const tapeAt = (axis: Axis, mark: number): Tape => ({ from: axis.line.from, mm: readingMm(axis, mark) });

/** Whether two places are too close by the exact distance. */
export function comeTooClose(
  { first, second, distancesMm }: Apart,
  centres: readonly SurfacePoint[],
): boolean {
  const [a, b] = [centres[first], centres[second]];
  if (a === undefined || b === undefined) return false;
  return distancesMm.some((distanceMm) => distanceMm(b.u - a.u, b.v - a.v) < 0);
}
