import { countBelow, countUpTo } from "../geometry/ascending.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { toSurface, toWorld } from "../geometry/frame.js";
import { lengthMm, minus, plus, times } from "../geometry/surface-point.js";
import { dot, length, type SurfacePoint, subtract, vector } from "../geometry/vector.js";
import type { Edge, Surface } from "../room/room.js";
import { type Axis, type Band, bandsOver, type Field, inOrderOf, otherAxis } from "./field.js";

/**
 * Where cable may lie on a surface: lines of equal u and of equal v. A shortest way with square turns round square
 * blocks can always be laid along the lines through its ends and along the blocks' sides; a line that would lie in
 * wood is exchanged for the middle of the bay at either side.
 */
export interface Lanes {
  readonly field: Field;
  readonly us: readonly number[];
  readonly vs: readonly number[];
}

/** A point on a surface that cable goes to or comes from. */
export interface Spot {
  readonly field: Field;
  readonly at: SurfacePoint;
}

/** Where two surfaces meet and cable may go from one into the other. */
export interface Join {
  readonly fields: readonly [Field, Field];
  readonly edges: readonly [Edge, Edge];
}

/**
 * Walls and ceilings that have an edge in common, and ceilings of which one ends over the other's edge, as a soffit's:
 * behind its face cable goes up or down. Between wall and wall stand corner studs, and where ceilings meet at one
 * height a ridge or a beam, so there no cable goes.
 */
export function joinsOf(fields: readonly Field[]): readonly Join[] {
  const ceilings = fields.filter(({ surface }) => surface.kind === "ceiling");
  const walls = fields.filter(({ surface }) => surface.kind === "wall");
  const pairs = [
    ...walls.flatMap((wall) => ceilings.map((ceiling) => [wall, ceiling] as const)),
    ...ceilings.flatMap((one, index) => ceilings.slice(index + 1).map((other) => [one, other] as const)),
  ];
  return pairs.flatMap((pair) => commonEdges(...pair).map((edges): Join => ({ fields: pair, edges })));
}

type EdgePair = readonly [Edge, Edge];

/** Of each two surfaces once: every route asks again. */
const edgesInCommon = new WeakMap<Surface, Map<Surface, readonly EdgePair[]>>();

function commonEdges(one: Field, other: Field): readonly EdgePair[] {
  const known = edgesInCommon.get(one.surface) ?? new Map<Surface, readonly EdgePair[]>();
  edgesInCommon.set(one.surface, known);
  const pairs = known.get(other.surface) ?? foundInCommon(one, other);
  known.set(other.surface, pairs);
  return pairs;
}

function foundInCommon(one: Field, other: Field): readonly EdgePair[] {
  const others = plannedEdges(other);
  return plannedEdges(one).flatMap((planned) =>
    others
      .filter(
        (candidate) => comeNear(planned, candidate) && liesAlong(one, planned.edge, other, candidate.edge),
      )
      .map((candidate) => [planned.edge, candidate.edge] as const),
  );
}

/** An edge with the box that it takes on plan. */
interface PlannedEdge {
  readonly edge: Edge;
  readonly lowX: number;
  readonly highX: number;
  readonly lowY: number;
  readonly highY: number;
}

/** Of each surface once: it is held against all others. */
const planned = new WeakMap<Surface, readonly PlannedEdge[]>();

function plannedEdges(field: Field): readonly PlannedEdge[] {
  const { surface } = field;
  const known =
    planned.get(surface) ??
    edgesOf(field).map((edge): PlannedEdge => {
      const [from, to] = [toWorld(surface.frame, edge.from), toWorld(surface.frame, edge.to)];
      return {
        edge,
        lowX: Math.min(from.x, to.x) - EPSILON_MM,
        highX: Math.max(from.x, to.x) + EPSILON_MM,
        lowY: Math.min(from.y, to.y) - EPSILON_MM,
        highY: Math.max(from.y, to.y) + EPSILON_MM,
      };
    });
  planned.set(surface, known);
  return known;
}

/** What lies along or over another edge lies there on plan too; most do not, which is seen at once. */
const comeNear = (one: PlannedEdge, other: PlannedEdge): boolean =>
  one.lowX <= other.highX && other.lowX <= one.highX && one.lowY <= other.highY && other.lowY <= one.highY;

/** With those round what lies in it, as a tray. */
const edgesOf = ({ surface }: Field): readonly Edge[] => [
  ...surface.edges,
  ...surface.voids.flatMap(({ edges }) => edges),
];

/** Both ends of one edge lie on the other, or over it: a ceiling over part of a wall has a shorter one. */
function liesAlong(one: Field, edge: Edge, other: Field, candidate: Edge): boolean {
  const isStep = one.surface.kind === other.surface.kind;
  const onto = (from: Field, on: Field, point: SurfacePoint): SurfacePoint | null => {
    const at = toWorld(from.surface.frame, point);
    const found = carried(from, on, point);
    const apartMm = length(subtract(toWorld(on.surface.frame, found), at));
    return apartMm < EPSILON_MM === isStep ? null : found;
  };
  const within = (points: readonly (SurfacePoint | null)[], { from, to }: Edge): boolean =>
    points.every((point) => point !== null && distanceToMm(point, from, to) < EPSILON_MM);
  return (
    within([onto(other, one, candidate.from), onto(other, one, candidate.to)], edge) ||
    within([onto(one, other, edge.from), onto(one, other, edge.to)], candidate)
  );
}

function distanceToMm(point: SurfacePoint, from: SurfacePoint, to: SurfacePoint): number {
  const along = minus(to, from);
  const square = along.u ** 2 + along.v ** 2;
  const share = ((point.u - from.u) * along.u + (point.v - from.v) * along.v) / square;
  return lengthMm(minus(point, plus(from, times(along, Math.min(1, Math.max(0, share))))));
}

/** The same point of the world on the other surface of a join; of two ceilings the one straight over or under it. */
export function carried(from: Field, to: Field, point: SurfacePoint): SurfacePoint {
  const at = toWorld(from.surface.frame, point);
  const { frame, kind } = to.surface;
  if (kind === "wall" || from.surface.kind === "wall") return toSurface(frame, at);
  const offMm = dot(subtract(at, frame.origin), frame.n);
  return toSurface(frame, vector(at.x, at.y, at.z - offMm / frame.n.z));
}

/**
 * How far cable goes from one surface into the other at a join, in mm: in and out behind the faces of a wall and a
 * ceiling; straight up or down between two ceilings, from where it lies over the one to where it lies over the other.
 */
export function turnMm(from: Spot, to: Spot): number {
  if (from.field.surface.kind !== to.field.surface.kind) return from.field.levelMm + to.field.levelMm;
  const upMm = stepMm(from, to);
  return Math.max(Math.abs(upMm), Math.abs(upMm + to.field.levelMm - from.field.levelMm));
}

/** How much higher one ceiling stands over another at a join, in mm; 0 where one of the two is a wall. */
export function stepMm(from: Spot, to: Spot): number {
  if (from.field.surface.kind !== to.field.surface.kind) return 0;
  return toWorld(to.field.surface.frame, to.at).z - toWorld(from.field.surface.frame, from.at).z;
}

/** The middle of every bay of a field, with those between its border and the members next to it. */
export function bayMiddles({ bands, border }: Field): readonly SurfacePoint[] {
  return (["u", "v"] as const).flatMap((axis) => {
    const places = bands[otherAxis(axis)]
      .filter(({ member }) => isRepeating(member.kind))
      .map(({ atMm }) => atMm);
    const ends = [border.min[axis], ...places.sort((a, b) => a - b), border.max[axis]];
    return ends.slice(1).map((place, index) => {
      const middle = ((ends[index] ?? place) + place) / 2;
      return axis === "u" ? { u: middle, v: border.min.v } : { u: border.min.u, v: middle };
    });
  });
}

/** Lanes reach across joins and back: through a wall, the ceiling and the wall at the other end. */
export const ROUNDS = 2;

/** The lanes of every field through the given points, blocks and joins. */
export function lanesOf(
  fields: readonly Field[],
  joins: readonly Join[],
  points: ReadonlyMap<Field, readonly SurfacePoint[]>,
): readonly Lanes[] {
  let seeds = new Map(fields.map((field) => [field, [...cornersOf(field), ...(points.get(field) ?? [])]]));
  for (let round = 0; round < ROUNDS; round += 1) {
    const lanes = new Map([...seeds].map(([field, own]) => [field, lanesThrough(field, own)]));
    seeds = new Map([...seeds].map(([field, own]) => [field, [...own, ...acrossJoins(field, joins, lanes)]]));
  }
  return [...seeds].map(([field, own]) => lanesThrough(field, own));
}

const cornersOf = ({ blocks, outline, surface }: Field): readonly SurfacePoint[] => [
  ...outline,
  ...surface.voids.flatMap(({ edges }) => edges.map(({ from }) => from)),
  ...blocks.flatMap(({ min, max }) => [min, max]),
];

/** Points of the joins' other surfaces at which their lanes meet this one. */
function acrossJoins(
  field: Field,
  joins: readonly Join[],
  lanes: ReadonlyMap<Field, Lanes>,
): readonly SurfacePoint[] {
  return joins.flatMap(({ fields, edges }) => {
    const at = fields.indexOf(field);
    if (at < 0) return [];
    const other = fields[at === 0 ? 1 : 0];
    const edge = edges[at === 0 ? 1 : 0];
    const own = lanes.get(other);
    return own === undefined ? [] : meetings(own, edge).map((point) => carried(other, field, point));
  });
}

/** Where lanes meet an edge. */
export function meetings({ us, vs }: Lanes, { from, to }: Edge): readonly SurfacePoint[] {
  const along = minus(to, from);
  const at = (axis: Axis, values: readonly number[]): readonly SurfacePoint[] =>
    Math.abs(along[axis]) < EPSILON_MM
      ? []
      : values
          .map((value) => (value - from[axis]) / along[axis])
          .filter((share) => share >= 0 && share <= 1)
          .map((share) => plus(from, times(along, share)));
  return [...at("u", us), ...at("v", vs)];
}

function lanesThrough(field: Field, points: readonly SurfacePoint[]): Lanes {
  const along = (axis: Axis): readonly number[] => {
    // Corners of boxes and outlines share most of theirs.
    const values = [...new Set(points.map((point) => point[axis]))];
    if (field.isOver) return distinct(values);
    const beside = besideWoodOf(field.bands[otherAxis(axis)]);
    return distinct([...values, ...values.flatMap(beside)]);
  };
  return { field, us: along("u"), vs: along("v") };
}

type Beside = (value: number) => readonly number[];

/** Of each surface's members once: every route asks again, and of the same corners. */
const besideKnown = new WeakMap<readonly Band[], Beside>();

/** The middles of the bays at both sides of the wood that a lane there would lie in, by the bands along it. */
export function besideWoodOf(bands: readonly Band[]): Beside {
  const known = besideKnown.get(bands);
  if (known !== undefined) return known;
  const across = bands.filter(({ member }) => isRepeating(member.kind));
  const found = new Map<number, readonly number[]>();
  const beside: Beside = (value) => {
    const middles = found.get(value) ?? besideWood(across, value);
    found.set(value, middles);
    return middles;
  };
  besideKnown.set(bands, beside);
  return beside;
}

/** The middles of the bays at both sides of the wood that a lane of that u or v would lie in; none where it lies free. */
function besideWood(across: readonly Band[], value: number): readonly number[] {
  const over = bandsOver(across, value);
  const hit = over.length > 1 ? across.find((band) => over.includes(band)) : over[0];
  if (hit === undefined) return [];
  const { placesMm } = inOrderOf(across);
  const before = placesMm[countBelow(placesMm, hit.atMm - EPSILON_MM) - 1];
  const after = placesMm[countUpTo(placesMm, hit.atMm + EPSILON_MM)];
  return [before, after].filter((place) => place !== undefined).map((place) => (place + hit.atMm) / 2);
}

const isRepeating = (kind: string): boolean => kind === "joist" || kind === "stud" || kind === "end-stud";

function distinct(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, index) => index === 0 || value - (sorted[index - 1] ?? value) > EPSILON_MM);
}
