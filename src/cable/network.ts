import type { Effort } from "../effort.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Member } from "../room/room.js";
import {
  type Axis,
  cornersOf,
  crossedBy,
  type Field,
  isAcross,
  isOpen,
  isUncounted,
  otherAxis,
  type Stretch,
} from "./field.js";
import { carried, type Join, type Lanes, meetings, type Spot, turnMm } from "./lanes.js";
import type { Link } from "./shortest.js";

export type { Spot };

/** The lanes of all fields as a graph: a node for each crossing of lanes and each way that cable may leave it. */
export interface Network {
  readonly lanes: readonly Lanes[];
  readonly count: number;
  /** Where a node lies. */
  spotOf(node: number): Spot;
  nodesAt(spot: Spot): readonly number[];
  linksOf(node: number): readonly Link[];
}

/** What a route thinks of passing a member at a place across the members' run. */
export interface Boring {
  /** Whether it may not pass there at all. */
  isForbidden(field: Field, member: Member): boolean;
  /**
   * How little a hole there is wanted, from 0 to 2: none where other cables pass already and it can go along with
   * them, more the further from the equipment, so that cables keep together from there on.
   */
  unwanted(field: Field, member: Member, alongMm: number): number;
  /** Whether the way is looked for in every bay, as it must be where members are forbidden. */
  readonly everyBay: boolean;
}

/*
 * Ways of one length are many: of those the one with the fewest holes is taken, then the one that goes along with
 * other cables most, then the one with the fewest turns. All of it costs so little that it never makes up for a
 * length that anybody could measure.
 */
export const HOLE_COSTS_MM = 1e-3;
export const OWN_HOLE_COSTS_MM = 1e-5;
export const TURN_COSTS_MM = 1e-7;

/** Each crossing of lanes is two nodes, by the axis on which cable came to it, so that turns can be counted. */
const AXES: readonly Axis[] = ["u", "v"];

interface Place {
  readonly lanes: Lanes;
  readonly column: number;
  readonly row: number;
}

interface Parts {
  readonly lanes: readonly Lanes[];
  readonly joins: readonly Join[];
  /** Ends of the route: from them cable may leave wood that they lie in. */
  readonly ends: readonly Spot[];
  readonly boring: Boring;
  readonly effort: Effort;
}

export function networkOf({ lanes, joins, ends, boring, effort }: Parts): Network {
  const firsts = firstNodes(lanes);
  const count = lanes.reduce((sum, own) => sum + 2 * own.us.length * own.vs.length, 0);
  effort.spend(count);
  const crossings = crossingsOf(lanes, joins, firsts);
  const grounds = lanes.map((own) => groundOf(own, { ends, boring }));
  const indexOf = (node: number): number => firsts.findLastIndex((first) => first <= node);

  // Either way along it and after a turn or not, a stretch costs the same but for the turn: by the node at its lower
  // end that stands for its axis.
  const costs = new Float64Array(count).fill(Number.NaN);
  const costFrom = (low: number, ground: Ground, place: Place, axis: Axis): number => {
    const known = costs[low] ?? Number.NaN;
    if (!Number.isNaN(known)) return known;
    effort.spend(ground.looks);
    const cost = stretchCost(ground, place, axis);
    costs[low] = cost;
    return cost;
  };

  const linksOf = (node: number): readonly Link[] => {
    const index = indexOf(node);
    const ground = grounds[index];
    if (ground === undefined) throw new RangeError(`no node ${node}`);
    const place = placeIn(ground.lanes, node - (firsts[index] ?? 0));
    const came = node % 2;
    const links: Link[] = [];
    for (const [axisIndex, axis] of AXES.entries()) {
      const turn = came === axisIndex ? 0 : TURN_COSTS_MM;
      const away = axis === "u" ? 2 : 2 * ground.lanes.us.length;
      const here = node - came + axisIndex;
      const before = stepped(place, axis, -1);
      if (before !== null) addLink(links, here - away, costFrom(here - away, ground, before, axis) + turn);
      const after = stepped(place, axis, 1);
      if (after !== null) addLink(links, here + away, costFrom(here, ground, place, axis) + turn);
    }
    const across = crossings.get(node);
    return across === undefined ? links : links.concat(across);
  };
  return {
    lanes,
    count,
    spotOf: (node) => {
      const index = indexOf(node);
      const own = lanes[index];
      if (own === undefined) throw new RangeError(`no node ${node}`);
      return { field: own.field, at: pointAt(placeIn(own, node - (firsts[index] ?? 0))) };
    },
    nodesAt: (spot) => nodesAt(lanes, firsts, spot),
    linksOf,
  };
}

function addLink(links: Link[], to: number, cost: number): void {
  if (cost !== NO_WAY) links.push({ to, cost });
}

/** What no cable may lie along costs that. */
const NO_WAY = Number.POSITIVE_INFINITY;

function firstNodes(lanes: readonly Lanes[]): readonly number[] {
  let next = 0;
  return lanes.map(({ us, vs }) => {
    const first = next;
    next += 2 * us.length * vs.length;
    return first;
  });
}

/** The place of a node, counted from the first of its lanes. */
function placeIn(lanes: Lanes, node: number): Place {
  const inside = Math.floor(node / 2);
  const column = inside % lanes.us.length;
  return { lanes, column, row: (inside - column) / lanes.us.length };
}

const pointAt = ({ lanes: { us, vs }, column, row }: Place): SurfacePoint => ({
  u: us[column] ?? 0,
  v: vs[row] ?? 0,
});

function stepped({ lanes, column, row }: Place, axis: Axis, step: number): Place | null {
  if (axis === "u") {
    const next = column + step;
    return next < 0 || next >= lanes.us.length ? null : { lanes, column: next, row };
  }
  const next = row + step;
  return next < 0 || next >= lanes.vs.length ? null : { lanes, column, row: next };
}

/** Lanes with what the cost of their stretches takes besides. */
interface Ground {
  readonly lanes: Lanes;
  /** Ends of the route on this field. */
  readonly ends: readonly SurfacePoint[];
  readonly boring: Boring;
  /** What one stretch takes. */
  readonly looks: number;
}

const groundOf = (lanes: Lanes, { ends, boring }: Pick<Parts, "ends" | "boring">): Ground => ({
  lanes,
  boring,
  looks: 1 + lanes.field.blocks.length + cornersOf(lanes.field).length + lanes.field.aslant.length,
  ends: ends.filter(({ field }) => field === lanes.field).map(({ at }) => at),
});

/** Length of the stretch up an axis with what its holes cost; `NO_WAY` where no cable may lie. */
function stretchCost({ lanes: { field }, ends, boring }: Ground, low: Place, axis: Axis): number {
  const from = pointAt(low);
  const stretch: Stretch = { axis, from, to: pointAt(stepped(low, axis, 1) ?? low) };
  const leavesWood = ends.length > 0 && isAcross(field, axis) && ends.some((at) => touches(stretch, at));
  if (!isOpen(field, stretch, leavesWood)) return NO_WAY;
  const crossed = crossedBy(field, stretch);
  const lengthMm = Math.abs(stretch.to[axis] - from[axis]);
  const uncounted = isUncounted(field, stretch) ? 1 : 0;
  if (crossed.length === 0) return lengthMm + uncounted * HOLE_COSTS_MM;
  if (crossed.some((member) => boring.isForbidden(field, member))) return NO_WAY;
  const alongMm = from[otherAxis(axis)];
  const own = crossed.reduce((sum, member) => sum + boring.unwanted(field, member, alongMm), 0);
  return lengthMm + (crossed.length + uncounted) * HOLE_COSTS_MM + own * OWN_HOLE_COSTS_MM;
}

const isSame = (a: SurfacePoint, b: SurfacePoint): boolean =>
  Math.abs(a.u - b.u) < EPSILON_MM && Math.abs(a.v - b.v) < EPSILON_MM;

const touches = ({ from, to }: Stretch, at: SurfacePoint): boolean => isSame(from, at) || isSame(to, at);

/** Links through the joins, both ways: up behind one surface and out behind the other, at a right angle. */
function crossingsOf(
  lanes: readonly Lanes[],
  joins: readonly Join[],
  firsts: readonly number[],
): ReadonlyMap<number, readonly Link[]> {
  const links = new Map<number, Link[]>();
  const add = (from: number, link: Link): void => {
    const known = links.get(from);
    if (known === undefined) links.set(from, [link]);
    else known.push(link);
  };
  for (const { fields, edges } of joins) {
    const [one, other] = fields;
    const own = lanes.find(({ field }) => field === one);
    for (const at of own === undefined ? [] : meetings(own, edges[0])) {
      const end = { field: other, at: carried(one, other, at) };
      const cost = turnMm({ field: one, at }, end);
      const here = nodesAt(lanes, firsts, { field: one, at });
      const there = nodesAt(lanes, firsts, end);
      for (const node of here) {
        for (const other of there) {
          add(node, { to: other, cost });
        }
      }
      for (const node of there) {
        for (const other of here) {
          add(node, { to: other, cost });
        }
      }
    }
  }
  return links;
}

function nodesAt(lanes: readonly Lanes[], firsts: readonly number[], { field, at }: Spot): readonly number[] {
  const index = lanes.findIndex((own) => own.field === field);
  const own = lanes[index];
  if (own === undefined) return [];
  const column = placeOf(own.us, at.u);
  const row = placeOf(own.vs, at.v);
  if (column < 0 || row < 0) return [];
  const first = (firsts[index] ?? 0) + 2 * (row * own.us.length + column);
  return [first, first + 1];
}

/** Where a figure stands in an ascending list, the first that it equals; -1 for nowhere. */
function placeOf(values: readonly number[], value: number): number {
  let [low, high] = [0, values.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) - value < -EPSILON_MM) low = middle + 1;
    else high = middle;
  }
  return Math.abs((values[low] ?? Number.POSITIVE_INFINITY) - value) <= EPSILON_MM ? low : -1;
}
