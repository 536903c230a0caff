import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Member } from "../room/room.js";
import { type Axis, crossedBy, type Field, isOpen, isUncounted, otherAxis, type Stretch } from "./field.js";
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
const HOLE_COSTS_MM = 1e-3;
const OWN_HOLE_COSTS_MM = 1e-5;
const TURN_COSTS_MM = 1e-7;

/** Each crossing of lanes is two nodes, by the axis on which cable came to it, so that turns can be counted. */
const AXES: readonly Axis[] = ["u", "v"];

const STEPS = [-1, 1] as const;

interface Place {
  readonly lanes: Lanes;
  readonly column: number;
  readonly row: number;
  readonly axis: Axis;
}

interface Parts {
  readonly lanes: readonly Lanes[];
  readonly joins: readonly Join[];
  /** Ends of the route: from them cable may leave wood that they lie in. */
  readonly ends: readonly Spot[];
  readonly boring: Boring;
}

export function networkOf({ lanes, joins, ends, boring }: Parts): Network {
  const firsts = firstNodes(lanes);
  const links = new Map<number, readonly Link[]>();
  const crossings = crossingsOf(lanes, joins, firsts);

  const placeOf = (node: number): Place => {
    const index = firsts.findLastIndex((first) => first <= node);
    const own = lanes[index];
    if (own === undefined) throw new RangeError(`no node ${node}`);
    const [inside, axisIndex] = [Math.floor((node - (firsts[index] ?? 0)) / 2), node % 2];
    const column = inside % own.us.length;
    return { lanes: own, column, row: (inside - column) / own.us.length, axis: AXES[axisIndex] ?? "u" };
  };
  const nodeOf = ({ lanes: own, column, row }: Place, axis: Axis): number =>
    (firsts[lanes.indexOf(own)] ?? 0) + 2 * (row * own.us.length + column) + AXES.indexOf(axis);

  // Either way along it and after a turn or not, a stretch costs the same but for the turn.
  const costs = new Map<number, number | null>();
  const costBetween = (low: Place, high: Place): number | null => {
    const key = nodeOf(low, high.axis);
    const known = costs.get(key);
    if (known !== undefined) return known;
    const cost = stretchCost(low, high, { ends, boring });
    costs.set(key, cost);
    return cost;
  };

  const linksFrom = (node: number): readonly Link[] => {
    const place = placeOf(node);
    const own: Link[] = [];
    for (const axis of AXES) {
      for (const step of STEPS) {
        const to = stepped(place, axis, step);
        if (to === null) continue;
        const cost = step < 0 ? costBetween(to, { ...place, axis }) : costBetween(place, to);
        if (cost !== null)
          own.push({ to: nodeOf(to, axis), cost: cost + (place.axis === axis ? 0 : TURN_COSTS_MM) });
      }
    }
    return [...own, ...(crossings.get(node) ?? [])];
  };
  return {
    lanes,
    count: lanes.reduce((sum, own) => sum + 2 * own.us.length * own.vs.length, 0),
    spotOf: (node) => spotAt(placeOf(node)),
    nodesAt: (spot) => nodesAt(lanes, firsts, spot),
    linksOf: (node) => {
      const known = links.get(node) ?? linksFrom(node);
      links.set(node, known);
      return known;
    },
  };
}

function firstNodes(lanes: readonly Lanes[]): readonly number[] {
  let next = 0;
  return lanes.map(({ us, vs }) => {
    const first = next;
    next += 2 * us.length * vs.length;
    return first;
  });
}

const spotAt = ({ lanes: { field, us, vs }, column, row }: Place): Spot => ({
  field,
  at: { u: us[column] ?? 0, v: vs[row] ?? 0 },
});

function stepped(place: Place, axis: Axis, step: number): Place | null {
  const { lanes } = place;
  const column = axis === "u" ? place.column + step : place.column;
  const row = axis === "v" ? place.row + step : place.row;
  if (column < 0 || row < 0 || column >= lanes.us.length || row >= lanes.vs.length) return null;
  return { lanes, column, row, axis };
}

/** Length of a stretch with what its holes cost; null where no cable may lie. */
function stretchCost(
  from: Place,
  to: Place,
  { ends, boring }: Pick<Parts, "ends" | "boring">,
): number | null {
  const { field } = from.lanes;
  const stretch: Stretch = { axis: to.axis, from: spotAt(from).at, to: spotAt(to).at };
  const leavesWood =
    isAcross(field, to.axis) && ends.some((end) => end.field === field && touches(stretch, end.at));
  if (!isOpen(field, stretch, leavesWood)) return null;
  const crossed = crossedBy(field, stretch);
  if (crossed.some((member) => boring.isForbidden(field, member))) return null;
  const lengthMm = Math.abs(stretch.to[to.axis] - stretch.from[to.axis]);
  const holes = crossed.length + (isUncounted(field, stretch) ? 1 : 0);
  const alongMm = stretch.from[otherAxis(to.axis)];
  const own = crossed.reduce((sum, member) => sum + boring.unwanted(field, member, alongMm), 0);
  return lengthMm + holes * HOLE_COSTS_MM + own * OWN_HOLE_COSTS_MM;
}

/** Out of a stud or joist cable comes to one side, be it at a plate; never along in it. */
const isAcross = ({ surface: { framing } }: Field, axis: Axis): boolean =>
  framing.kind === "known" && framing.run !== axis;

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
  for (const { fields, edges } of joins) {
    const [one, other] = fields;
    const own = lanes.find(({ field }) => field === one);
    for (const at of own === undefined ? [] : meetings(own, edges[0])) {
      const end = { field: other, at: carried(one, other, at) };
      const cost = turnMm({ field: one, at }, end);
      const here = nodesAt(lanes, firsts, { field: one, at });
      const there = nodesAt(lanes, firsts, end);
      for (const node of here)
        links.set(node, [...(links.get(node) ?? []), ...there.map((to) => ({ to, cost }))]);
      for (const node of there)
        links.set(node, [...(links.get(node) ?? []), ...here.map((to) => ({ to, cost }))]);
    }
  }
  return links;
}

function nodesAt(lanes: readonly Lanes[], firsts: readonly number[], { field, at }: Spot): readonly number[] {
  const index = lanes.findIndex((own) => own.field === field);
  const own = lanes[index];
  if (own === undefined) return [];
  const column = own.us.findIndex((u) => Math.abs(u - at.u) <= EPSILON_MM);
  const row = own.vs.findIndex((v) => Math.abs(v - at.v) <= EPSILON_MM);
  if (column < 0 || row < 0) return [];
  const first = (firsts[index] ?? 0) + 2 * (row * own.us.length + column);
  return [first, first + 1];
}
