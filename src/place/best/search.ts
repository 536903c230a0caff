import type { SurfacePoint } from "../../geometry/vector.js";
import { mount } from "../../listen/mounted.js";
import type { Tape } from "../../room/room.js";
import { isClearFor } from "./asking.js";
import { isIn, leastCost, liesOutside, overJoints, stillInTheWay } from "./bound.js";
import { type Cost, costAt, totalDeg, worstOf } from "./cost.js";
import { type Apart, boxFor, type Field, type Spot } from "./field.js";
import { piecesOf, type Taken } from "./ground.js";
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
  /** Of how much that must not be met besides account is taken, likewise. */
  readonly kept: readonly number[];
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
  return searchOf(field, box).best(field, belowDeg);
}

/** A search that goes on from where it came to. */
export interface Search {
  /**
   * The clear marks that cost least; null where there are none, or none below the limit. Asked again, the field may be
   * of another loudspeaker that wants the same, with more to stay away from after all that there was before.
   */
  best(field: Field, belowDeg: number): Found | null;
}

export function searchOf(start: Field, box: Box = leaderMarks(start)): Search {
  const queue = queueOf<Node>();
  const root = rootOf(start, box);
  if (root !== null) queue.add(root);
  let looked = 0;
  return {
    best(field, belowDeg) {
      for (let node = queue.next(); node !== undefined; node = queue.next()) {
        if (node.costDeg >= belowDeg) return null;
        const found = isSingle(node.box) ? lookAt(field, node.box) : null;
        // It stays where it is: the next that asks may be answered by it too.
        if (found !== null) return found.costDeg < belowDeg ? found : null;
        queue.take();
        looked += 1;
        if (isSingle(node.box) || (looked > MANY && !mayHold(field, node))) continue;
        const now = besideMore(field, node);
        if (now !== null) for (const half of branchesOf(field, now)) queue.add(half);
      }
      return null;
    },
  };
}

/** So many boxes are looked at before it is asked which pieces of a ground may hold anything, which takes long. */
const MANY = 4000;

/**
 * Whether anything in the node may be clear of what stands on the grounds: of many things together no single one of
 * which takes all of a box.
 */
const mayHold = ({ spots }: Field, { hulls }: Node): boolean =>
  spots.every(({ asking }, index) => {
    const hull = hulls[index];
    const pieces = piecesOf(asking.ground);
    asking.ground.effort.spend(pieces.length / FAR_FOR_ONE_LOOK);
    return hull !== undefined && isIn(hull, pieces);
  });

/** A node with what there is to stay away from since it was made; null where that takes all of it. */
function besideMore({ spots }: Field, node: Node): Node | null {
  if (spots.every(({ asking }, index) => asking.kept.length === node.kept[index])) return node;
  const inTheWay: (readonly Taken[])[] = [];
  for (const [index, { asking }] of spots.entries()) {
    const hull = node.hulls[index];
    const more = hull && stillInTheWay(hull, asking.kept.slice(node.kept[index]));
    if (more === undefined || more === null) return null;
    inTheWay.push([...(node.inTheWay[index] ?? []), ...more]);
  }
  return { ...node, inTheWay, kept: keptIn(spots) };
}

const keptIn = (spots: Field["spots"]): readonly number[] => spots.map(({ asking }) => asking.kept.length);

const leaderMarks = ({ spots: [leader] }: Field): Box => allMarks(leader.marks);

export function rootOf(field: Field, box: Box = leaderMarks(field)): Node | null {
  const all = field.spots.map(({ asking }) => [...asking.ground.taken, ...asking.kept]);
  const joints = field.spots.map(({ asking: { ground, wish } }) =>
    wish.jointDeg > 0 ? ground.overJoints : [],
  );
  return isEmpty(box) ? null : nodeOf(field, box, { inTheWay: all, joints, kept: keptIn(field.spots) });
}

/** Both halves of a node that may hold something. */
export function branchesOf(field: Field, node: Node): readonly Node[] {
  return halves(node.box, field.spots[0].marks).flatMap((half) => nodeOf(field, half, node) ?? []);
}

/** What a box of marks takes: itself, and all that may come into it. */
const looksFor = ({ inTheWay, joints }: Pick<Node, "inTheWay" | "joints">): number =>
  [...inTheWay, ...joints].reduce((sum, each) => sum + each.length, LOOKS_FOR_A_BOX);

const LOOKS_FOR_A_BOX = 40;

/** Of what is taken so many that lie far from a mark are passed over in the time of a look. */
const FAR_FOR_ONE_LOOK = 8;

/** Null where nothing in the box is clear. */
function nodeOf(field: Field, box: Box, before: Pick<Node, "inTheWay" | "joints" | "kept">): Node | null {
  field.spots[0].asking.ground.effort.spend(looksFor(before));
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
  return { box, hulls, inTheWay, joints, kept: before.kept, costDeg: totalDeg(worstOf(costs)) };
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
  const { effort, taken, overJoints } = asking.ground;
  effort.spend(LOOKS_FOR_A_BOX + (taken.length + overJoints.length) / FAR_FOR_ONE_LOOK);
  const centre = pointAtMarks(marks, first, second);
  if (!isClearFor(asking, centre)) return null;
  const { position } = mount(asking.speaker, asking.ground.surface, centre);
  const [a, b] = marks.axes;
  return {
    tapes: [tapeAt(a, first), tapeAt(b, second)],
    centre,
    cost: costAt(asking.wish, { position, isOverJoint: asking.ground.isOverJoint(centre) }),
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
