import type { Effort } from "../effort.js";
import { toWorld } from "../geometry/frame.js";
import { distanceMm } from "../geometry/surface-point.js";
import type { SurfacePoint, Vector } from "../geometry/vector.js";
import type { Member } from "../room/room.js";
import { type Box, isIn, passesThrough } from "./box.js";
import { type Axis, type Band, crossedBy, type Field, isUncounted, otherAxis } from "./field.js";
import { bayMiddles, joinsOf, lanesOf, stepMm, turnMm } from "./lanes.js";
import { type Boring, type Network, networkOf, type Spot } from "./network.js";
import { shortestWay } from "./shortest.js";

/** A straight length of cable on one surface. */
export interface Leg {
  readonly field: Field;
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
  readonly lengthMm: number;
  /** Along the joists or studs, as up a bay, or across them. */
  readonly way: "along" | "across";
  /** What stands at the surface's edge that it goes toward: a wall's name, "floor" or "ceiling". */
  readonly toward: string;
  /** Members that it passes through, in the order in which it meets them. */
  readonly crossed: readonly Member[];
  /** True where it passes framing that nobody has measured: then the holes are not known. */
  readonly uncounted: boolean;
  /** How far up from the ceiling before it cable has come, down below 0; 0 from anything else. */
  readonly upMm: number;
  /** Numbers of the joists or studs at both sides of a leg along them; null where there is none. */
  readonly between: readonly [number | null, number | null] | null;
}

export interface Route {
  readonly legs: readonly Leg[];
  /** With the square turns from one surface into another, without loops or spare. */
  readonly lengthMm: number;
}

export interface Ask {
  /** Every surface that cable may use. */
  readonly fields: readonly Field[];
  /** Equipment, the points to go by, and the loudspeaker. */
  readonly spots: readonly Spot[];
  /** What is gone round only where the way would meet it, as other openings: box and its field. */
  readonly others: readonly { readonly field: Field; readonly box: Box }[];
  readonly boring: Boring;
  readonly effort: Effort;
}

/** The shortest way from spot to spot with square turns; null where the allowed ways do not lead there. */
export function routeThrough(ask: Ask): Route | null {
  const parts = ask.spots.slice(1).map((to, index) => stage(ask, ask.spots[index] ?? to, to));
  const found = parts.flatMap((part) => (part === null ? [] : [part]));
  if (found.length < parts.length) return null;
  return {
    legs: found.flatMap(({ legs }) => legs),
    lengthMm: found.reduce((sum, part) => sum + part.lengthMm, 0),
  };
}

/**
 * One stage. What would be gone round only if it were met is left out first and put in when it is: a shortest way
 * among fewer blocks that meets none of the others is the shortest among all of them.
 */
function stage(ask: Ask, from: Spot, to: Spot): Route | null {
  let met: Ask["others"] = [];
  for (;;) {
    const route = shortest(ask, met, [from, to]);
    if (route === null) return null;
    const more = ask.others.filter(
      (other) => isMet(other, route) && !met.includes(other) && !holdsAnEnd(other, [from, to]),
    );
    if (more.length === 0) return route;
    met = [...met, ...more];
  }
}

const isMet = ({ field, box }: Ask["others"][number], { legs }: Route): boolean =>
  legs.some((leg) => leg.field.surface === field.surface && passesThrough(box, leg.from, leg.to));

const holdsAnEnd = ({ field, box }: Ask["others"][number], ends: readonly Spot[]): boolean =>
  ends.some((end) => end.field.surface === field.surface && isIn(box, end.at));

function shortest(ask: Ask, met: Ask["others"], [from, to]: readonly [Spot, Spot]): Route | null {
  const used = ask.fields.filter(
    ({ surface }) =>
      surface.kind === "ceiling" || surface === from.field.surface || surface === to.field.surface,
  );
  const fields = used.map((field) => withBlocks(field, met, [from, to]));
  const ends = [from, to].map(({ field, at }) => ({ field: named(fields, field), at }));
  const joins = joinsOf(fields);
  const points = new Map(
    fields.map((field) => [
      field,
      [
        ...ends.filter((end) => end.field === field).map(({ at }) => at),
        ...(ask.boring.everyBay ? bayMiddles(field) : []),
      ],
    ]),
  );
  const passing = { boring: ask.boring, effort: ask.effort };
  const network = networkOf({ lanes: lanesOf(fields, joins, points), joins, ends, ...passing });
  const [first, last] = ends;
  const way = first === undefined || last === undefined ? null : wayBetween(network, first, last);
  return way === null ? null : routeOf(way, ask.effort);
}

/** Blocks that hold an end are no blocks to it: a loudspeaker in an obstruction is a finding of its own. */
function withBlocks(field: Field, met: Ask["others"], ends: readonly Spot[]): Field {
  const here = ends.filter((end) => end.field.surface === field.surface);
  const more = met.filter((other) => other.field.surface === field.surface).map(({ box }) => box);
  const free = (box: Box): boolean => !here.some(({ at }) => isIn(box, at));
  return { ...field, blocks: [...field.blocks, ...more].filter(free) };
}

function named(fields: readonly Field[], { surface }: Field): Field {
  const found = fields.find((field) => field.surface === surface);
  if (found === undefined) throw new RangeError(`no field of ${surface.name}`);
  return found;
}

/** A node more at each end stands for both of its axes, so that the first and the last stretch count no turn. */
function wayBetween(network: Network, from: Spot, to: Spot): readonly Spot[] | null {
  const [start, end] = [network.count, network.count + 1];
  const [firsts, lasts] = [network.nodesAt(from), network.nodesAt(to)];
  const linksOf = (node: number) => {
    if (node === start) return firsts.map((first) => ({ to: first, cost: 0 }));
    return lasts.includes(node) ? [{ to: end, cost: 0 }, ...network.linksOf(node)] : network.linksOf(node);
  };
  const isUpright = network.lanes.every(({ field }) => isAligned(field));
  const goal = inWorld(to);
  // Both nodes of a place lie at one point.
  const least = new Float64Array(network.count).fill(Number.NaN);
  const leastToGo = (node: number): number => {
    if (node >= network.count) return 0;
    const place = node - (node % 2);
    const known = least[place] ?? Number.NaN;
    if (!Number.isNaN(known)) return known;
    const found = leastMm(inWorld(network.spotOf(node)), goal, isUpright);
    least[place] = found;
    return found;
  };
  const way = shortestWay({ count: network.count + 2, linksOf, leastToGo }, [start, end]);
  return way === null ? null : way.slice(1, -1).map((node) => network.spotOf(node));
}

const inWorld = ({ field, at }: Spot): Vector => toWorld(field.surface.frame, at);

/** Square turns among surfaces that stand and lie with the room's axes are never shorter than the steps along these. */
function leastMm(from: Vector, to: Vector, isUpright: boolean): number {
  const [x, y, z] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y), Math.abs(to.z - from.z)];
  return isUpright ? x + y + z : Math.hypot(x, y, z);
}

const isAligned = ({ surface: { frame } }: Field): boolean =>
  [frame.u, frame.v].every(({ x, y, z }) => Math.max(Math.abs(x), Math.abs(y), Math.abs(z)) > 1 - 1e-12);

/** What it takes to tell a hole, next to seeing whether a member is passed. */
const LOOKS_FOR_A_HOLE = 10;

/** The legs of a way by the spots at which it turns or changes surfaces. */
export function routeOf(way: readonly Spot[], effort: Effort): Route {
  const legs: Leg[] = [];
  let turnsMm = 0;
  let upMm = 0;
  for (const run of straightRuns(way)) {
    const [first, last] = [run[0], run.at(-1)];
    if (first === undefined || last === undefined) continue;
    if (first.field !== last.field) {
      turnsMm += turnMm(first, last);
      upMm = stepMm(first, last);
    } else if (distanceMm(first.at, last.at) > 0) {
      const leg = legOf(first.field, first.at, last.at);
      // Each member that it passes is a hole later on.
      effort.spend(first.field.members.length + LOOKS_FOR_A_HOLE * leg.crossed.length);
      legs.push({ ...leg, upMm });
      upMm = 0;
    }
  }
  return { legs, lengthMm: turnsMm + legs.reduce((sum, leg) => sum + leg.lengthMm, 0) };
}

/** Spots in a row that lie on one line of one surface; a step into another surface is a run of its own. */
function straightRuns(way: readonly Spot[]): readonly (readonly Spot[])[] {
  const runs: Spot[][] = [];
  way.slice(1).forEach((spot, index) => {
    const before = way[index] ?? spot;
    const run = runs.at(-1);
    const start = run?.[0];
    if (run !== undefined && start !== undefined && isStraight(start, before, spot)) run.push(spot);
    else runs.push([before, spot]);
  });
  return runs;
}

const isStraight = (start: Spot, before: Spot, next: Spot): boolean =>
  start.field === next.field &&
  before.field === next.field &&
  axisOf(start.at, next.at) !== null &&
  (axisOf(start.at, before.at) === axisOf(before.at, next.at) || distanceMm(before.at, next.at) === 0);

/** The axis on which two points differ; null where they differ on both or on neither. */
function axisOf(from: SurfacePoint, to: SurfacePoint): Axis | null {
  if (from.u !== to.u && from.v !== to.v) return null;
  if (from.u === to.u && from.v === to.v) return null;
  return from.u === to.u ? "v" : "u";
}

function legOf(field: Field, from: SurfacePoint, to: SurfacePoint): Omit<Leg, "upMm"> {
  const axis = axisOf(from, to) ?? "u";
  const stretch = { axis, from, to };
  const crossed = crossedBy(field, stretch);
  const along = liesAlong(field, axis) && !crossed.some(isRepeating);
  const uncounted = along ? false : isUncounted(field, stretch);
  return {
    field,
    from,
    to,
    lengthMm: distanceMm(from, to),
    way: along ? "along" : "across",
    toward: towardOf(field, from, to),
    crossed: to[axis] > from[axis] ? inOrder(crossed, axis) : [...inOrder(crossed, axis)].reverse(),
    uncounted,
    between: along ? neighbours(field, axis, from) : null,
  };
}

/** Joists and studs, by whose bays a way is told. */
const isRepeating = ({ kind }: Member): boolean => kind === "joist" || kind === "stud";

const liesAlong = ({ surface }: Field, axis: Axis): boolean =>
  surface.framing.kind === "known" ? surface.framing.run === axis : surface.kind === "wall" && axis === "v";

const inOrder = (members: readonly Member[], axis: Axis): readonly Member[] =>
  [...members].sort((a, b) => a.from[axis] - b.from[axis]);

/** Up or down a wall; else the edge whose outward side faces the way most. */
function towardOf({ surface }: Field, from: SurfacePoint, to: SurfacePoint): string {
  if (surface.kind === "wall" && from.u === to.u) return to.v > from.v ? "ceiling" : "floor";
  const facing = ({ from: a, to: b }: { from: SurfacePoint; to: SurfacePoint }): number => {
    const size = distanceMm(a, b);
    return ((b.v - a.v) * (to.u - from.u) - (b.u - a.u) * (to.v - from.v)) / size;
  };
  return [...surface.edges].sort((a, b) => facing(b) - facing(a))[0]?.along ?? surface.name;
}

/** Numbers of the nearest before and after, the lower first; a line that comes twice counts as its first. */
function neighbours({ bands }: Field, axis: Axis, at: SurfacePoint): Leg["between"] {
  const atMm = at[otherAxis(axis)];
  let before: Band | null = null;
  let after: Band | null = null;
  for (const band of bands[axis]) {
    if (!isRepeating(band.member)) continue;
    const offMm = band.atMm - atMm;
    if (offMm < 0) before = before === null || offMm > before.atMm - atMm ? band : before;
    else after = after === null || offMm < after.atMm - atMm ? band : after;
  }
  const pair = [before?.member.number ?? null, after?.member.number ?? null];
  const [low = null, high = null] = pair.sort((a, b) => (a ?? 0) - (b ?? 0));
  return [low, high];
}
