import { EPSILON_MM } from "./epsilon.js";
import { type Frame, toSurface } from "./frame.js";
import { surfacePoint } from "./surface-point.js";
import {
  add,
  cross,
  dot,
  length,
  radians,
  type SurfacePoint,
  scale,
  subtract,
  unit,
  type Vector,
  vector,
} from "./vector.js";

/** Everything within an angle of an axis, seen from a point: `axis` has length 1. */
export interface Cone {
  readonly apex: Vector;
  readonly axis: Vector;
  /** Between the axis and the border, 0 to 180. */
  readonly halfDeg: number;
}

/** How far a cone is followed over a plane, and which points of the plane are wanted. */
export interface Reach {
  /** Along the ray from the apex. */
  readonly mostMm: number;
  readonly keeps: (at: SurfacePoint) => boolean;
}

/**
 * Where the border of a cone meets a plane: an ellipse, a parabola or one branch of a hyperbola, and two straight lines
 * where the plane goes through the apex. In pieces, each the points of a line in order on the plane's own axes, all of
 * them on the cone itself, the ends too; a closed curve ends where it began. None where the border misses the plane.
 */
export function sectionOf(cone: Cone, plane: Frame, reach: Reach): readonly (readonly SurfacePoint[])[] {
  const heightMm = dot(subtract(cone.apex, plane.origin), plane.n);
  const border = borderOf(cone, plane.n);
  if (Math.abs(heightMm) < EPSILON_MM) return straight(cone, plane, border, reach);
  const arc = arcToward(border, -heightMm, reach.mostMm);
  if (arc === null) return [];
  const at = (turn: number): SurfacePoint => {
    const way = border.way(turn);
    return toSurface(plane, add(cone.apex, scale(way, -heightMm / dot(way, plane.n))));
  };
  return keptPieces(sampled(at, arc), { at, keeps: reach.keeps });
}

/** The directions of a cone's border by the turn about its axis; at turn 0 the one that leans most to `n`. */
interface Border {
  readonly way: (turn: number) => Vector;
  /** The part along `n` of the direction at a turn: `middle + swing cos(turn)`. */
  readonly middle: number;
  readonly swing: number;
}

function borderOf({ axis, halfDeg }: Cone, n: Vector): Border {
  const [cosine, sine] = [Math.cos(radians(halfDeg)), Math.sin(radians(halfDeg))];
  const along = dot(axis, n);
  const aside = subtract(n, scale(axis, along));
  const leaning = length(aside) < STRAIGHT ? unit(cross(axis, leastAlong(axis))) : unit(aside);
  const across = cross(axis, leaning);
  const ahead = scale(axis, cosine);
  return {
    // Asked at every halving: no vectors are made between.
    way: (turn) => {
      const [a, b] = [sine * Math.cos(turn), sine * Math.sin(turn)];
      return vector(
        ahead.x + (leaning.x * a + across.x * b),
        ahead.y + (leaning.y * a + across.y * b),
        ahead.z + (leaning.z * a + across.z * b),
      );
    },
    middle: along * cosine,
    swing: length(aside) < STRAIGHT ? 0 : length(aside) * sine,
  };
}

/** Below this an axis counts as square to the plane: any direction leans as much as another. */
const STRAIGHT = 1e-12;

/** The world's axis that a direction has least of. */
function leastAlong({ x, y, z }: Vector): Vector {
  const least = Math.min(Math.abs(x), Math.abs(y), Math.abs(z));
  if (least === Math.abs(x)) return vector(1, 0, 0);
  return least === Math.abs(y) ? vector(0, 1, 0) : vector(0, 0, 1);
}

interface Arc {
  readonly from: number;
  readonly to: number;
}

/** The turns whose rays meet a plane that lies `towardMm` along n, within `mostMm`; null for none. */
function arcToward({ middle, swing }: Border, towardMm: number, mostMm: number): Arc | null {
  const side = Math.sign(towardMm);
  const short = Math.abs(towardMm) / mostMm - side * middle;
  if (swing <= short) return null;
  const half = swing <= -short ? Math.PI : Math.acos(short / swing);
  const centre = side > 0 ? 0 : Math.PI;
  return { from: centre - half, to: centre + half };
}

interface Sample {
  readonly turn: number;
  readonly at: SurfacePoint;
}

type Curve = (turn: number) => SurfacePoint;

const LONGEST_STEP = radians(5);
/** A drawn chord strays from the true curve by no more than this: a tenth of a millimetre on paper at 1:10. */
const STRAY_MM = 1;
const MOST_HALVINGS = 12;

/** Points of a curve so close together that lines between them show it. */
function sampled(curve: Curve, { from, to }: Arc): Sample[] {
  const steps = Math.max(2, Math.ceil((to - from) / LONGEST_STEP));
  const first = { turn: from, at: curve(from) };
  const samples: Sample[] = [first];
  for (let step = 1; step <= steps; step++) {
    const turn = from + ((to - from) * step) / steps;
    samples.push(...between(curve, samples.at(-1) ?? first, { turn, at: curve(turn) }, MOST_HALVINGS));
  }
  return samples;
}

/** What comes after `from` up to and with `to`. */
function between(curve: Curve, from: Sample, to: Sample, halvings: number): Sample[] {
  const turn = (from.turn + to.turn) / 2;
  const middle = { turn, at: curve(turn) };
  if (halvings === 0 || strayMm(from.at, middle.at, to.at) <= STRAY_MM) return [to];
  return [...between(curve, from, middle, halvings - 1), ...between(curve, middle, to, halvings - 1)];
}

/** How far a point lies off the line from `from` to `to`. */
function strayMm(from: SurfacePoint, at: SurfacePoint, to: SurfacePoint): number {
  const long = Math.hypot(to.u - from.u, to.v - from.v);
  if (long === 0) return Math.hypot(at.u - from.u, at.v - from.v);
  return Math.abs((to.u - from.u) * (at.v - from.v) - (to.v - from.v) * (at.u - from.u)) / long;
}

interface Kept {
  readonly at: Curve;
  readonly keeps: Reach["keeps"];
}

/** The pieces of a curve that are kept, each ended where keeping ends. */
function keptPieces(samples: readonly Sample[], kept: Kept): SurfacePoint[][] {
  const pieces: SurfacePoint[][] = [];
  let before: (Sample & { readonly isKept: boolean }) | null = null;
  for (const sample of samples) {
    const isKept = kept.keeps(sample.at);
    const limit = before === null || before.isKept === isKept ? null : limitOf(before, sample, kept);
    if (isKept && (before === null || !before.isKept)) pieces.push(limit === null ? [] : [limit]);
    if (isKept) pieces.at(-1)?.push(sample.at);
    else if (limit !== null) pieces.at(-1)?.push(limit);
    before = { ...sample, isKept };
  }
  return pieces.filter((piece) => piece.length > 1);
}

/** More halvings than a double ever holds. */
const EXACT = 60;

/** The last kept point between one that is kept and one that is not. */
function limitOf(one: Sample, other: Sample, { at, keeps }: Kept): SurfacePoint {
  let [inside, outside] = keeps(one.at) ? [one.turn, other.turn] : [other.turn, one.turn];
  for (let halving = 0; halving < EXACT; halving++) {
    const middle = (inside + outside) / 2;
    if (middle === inside || middle === outside) break;
    if (keeps(at(middle))) inside = middle;
    else outside = middle;
  }
  return at(inside);
}

/** The two rays of the border that lie in a plane through the apex, as far as they are kept. */
function straight(
  { apex }: Cone,
  plane: Frame,
  { way, middle, swing }: Border,
  reach: Reach,
): SurfacePoint[][] {
  if (swing <= Math.abs(middle)) return [];
  const turn = Math.acos(-middle / swing);
  const from = toSurface(plane, apex);
  return [turn, -turn].flatMap((each) => {
    const along = toSurface(plane, add(plane.origin, way(each)));
    const at = (mm: number): SurfacePoint => surfacePoint(from.u + along.u * mm, from.v + along.v * mm);
    const start = { turn: EPSILON_MM, at: at(EPSILON_MM) };
    const end = { turn: reach.mostMm, at: at(reach.mostMm) };
    const kept = { at, keeps: reach.keeps };
    if (!reach.keeps(start.at)) return [];
    return [[from, reach.keeps(end.at) ? end.at : limitOf(start, end, kept)]];
  });
}

/** Where a ray meets a plane, on the plane's axes; null where it runs along it or away from it. */
export function pierced({ apex, axis }: Pick<Cone, "apex" | "axis">, plane: Frame): SurfacePoint | null {
  const ahead = -dot(subtract(apex, plane.origin), plane.n) / dot(axis, plane.n);
  return Number.isFinite(ahead) && ahead > 0 ? toSurface(plane, add(apex, scale(axis, ahead))) : null;
}
