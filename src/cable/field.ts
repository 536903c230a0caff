import { countBelow } from "../geometry/ascending.js";
import { distanceToSegmentMm, isInside, sidesOf } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Polygon } from "../geometry/shape.js";
import { minus, plus, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Member, Surface } from "../room/room.js";
import { type Box, isIn } from "./box.js";

export type Axis = "u" | "v";

export const otherAxis = (axis: Axis): Axis => (axis === "u" ? "v" : "u");

/** A surface as cable sees it: what it may lie between, what it has to pass through, what it goes round. */
export interface Field {
  readonly surface: Surface;
  readonly outline: Polygon;
  /** The outline as a box where it is one: then nothing else has to be looked at. */
  readonly border: Box & { readonly isAll: boolean };
  readonly members: readonly Member[];
  /** The members by the axis that they run on. */
  readonly bands: Readonly<Record<Axis, readonly Band[]>>;
  /** Members that run on neither, as plates under a slope: cable passes through them, never along in them. */
  readonly aslant: readonly Member[];
  /** Where nobody has measured the framing: cable may pass, and how many holes that takes is unknown. */
  readonly unknown: readonly Polygon[];
  /** How far behind the framing face cable lies: half a member's depth, or all of it over an open attic. */
  readonly levelMm: number;
  /** True where cable lies over the members, so that none is bored. */
  readonly isOver: boolean;
  /** True where joists or studs are trusses: cable passes between their webs without a hole. */
  readonly isOpenWeb: boolean;
  readonly blocks: readonly Box[];
}

/** A member as figures on its two axes. */
export interface Band {
  readonly member: Member;
  /** Its centre line, on the axis across it. */
  readonly atMm: number;
  readonly halfMm: number;
  /** Its ends, on the axis along it. */
  readonly lowMm: number;
  readonly highMm: number;
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
  const common = { surface, outline, border: borderOf(outline), blocks };
  if (framing.kind === "unknown") {
    const none = { members: [], bands: { u: [], v: [] }, aslant: [], unknown: [outline] };
    return { ...common, ...none, levelMm: 0, isOver: false, isOpenWeb: false };
  }
  const members = framing.members.filter(isBehindStraps);
  const depthMm = Math.max(0, ...members.map((member) => member.depthMm));
  const isOver = surface.kind === "ceiling" && framing.cavityMm === Number.POSITIVE_INFINITY;
  return {
    ...common,
    members,
    bands: { u: bandsAlong(members, "u"), v: bandsAlong(members, "v") },
    aslant: members.filter(isAslant),
    unknown: framing.unknown,
    levelMm: isOver ? depthMm : depthMm / 2,
    isOver,
    isOpenWeb: framing.web?.kind === "open",
  };
}

/** Of its outline and of what lies in it. */
export const cornersOf = ({
  outline,
  surface,
}: Pick<Field, "outline" | "surface">): readonly SurfacePoint[] => [
  ...outline,
  ...surface.voids.flatMap(({ edges }) => edges.map(({ from }) => from)),
];

/** Straps and channels lie in front of the framing and its cable. */
export const isBehindStraps = ({ kind }: Member): boolean => kind !== "strap" && kind !== "channel";

function borderOf(outline: Polygon): Field["border"] {
  const span = (axis: Axis, pick: (...values: number[]) => number): number =>
    pick(...outline.map((corner) => corner[axis]));
  const min = { u: span("u", Math.min), v: span("v", Math.min) };
  const max = { u: span("u", Math.max), v: span("v", Math.max) };
  const isCorner = ({ u, v }: SurfacePoint): boolean =>
    (u === min.u || u === max.u) && (v === min.v || v === max.v);
  return { min, max, isAll: outline.length === 4 && outline.every(isCorner) };
}

export const isAslant = ({ from, to }: Member): boolean =>
  Math.abs(to.u - from.u) > EPSILON_MM && Math.abs(to.v - from.v) > EPSILON_MM;

function bandsAlong(members: readonly Member[], axis: Axis): readonly Band[] {
  return members
    .filter((member) => !isAslant(member) && runOf(member) === axis)
    .map((member) => ({
      member,
      atMm: member.from[otherAxis(axis)],
      halfMm: member.widthMm / 2 - EPSILON_MM,
      lowMm: Math.min(member.from[axis], member.to[axis]) - EPSILON_MM,
      highMm: Math.max(member.from[axis], member.to[axis]) + EPSILON_MM,
    }));
}

/** Out of a stud or joist cable comes to one side, be it at a plate; never along in it. */
export const isAcross = ({ surface: { framing } }: Field, axis: Axis): boolean =>
  framing.kind === "known" && framing.run !== axis;

const middleOf = ({ from, to }: Stretch): SurfacePoint => ({
  u: (from.u + to.u) / 2,
  v: (from.v + to.v) / 2,
});

/** The axis that a member runs on. */
export const runOf = ({ from, to }: Member): Axis =>
  Math.abs(to.u - from.u) > Math.abs(to.v - from.v) ? "u" : "v";

/** Whether a place across a member lies within the wood. */
export const isInWood = ({ atMm, halfMm }: Band, acrossMm: number): boolean =>
  Math.abs(acrossMm - atMm) < halfMm;

/** Whether cable may lie along a stretch between neighbouring lanes: on the surface, round the blocks, not in wood. */
export function isOpen(field: Field, stretch: Stretch, leavesWood: boolean): boolean {
  const middle = middleOf(stretch);
  if (!liesOn(field, stretch) || (field.surface.kind === "wall" && isOnEdge(field, stretch))) return false;
  if (field.blocks.some((block) => isIn(block, middle))) return false;
  return leavesWood || field.isOver || !runsInWood(field, stretch, middle);
}

/** Its middle in the outline, its ends in it or on it, and none of them in a void: a side at an angle parts no stretch. */
export function liesOn({ border, outline, surface }: Field, stretch: Stretch): boolean {
  if (border.isAll && surface.voids.length === 0) return true;
  const middle = middleOf(stretch);
  const ends = [stretch.from, stretch.to];
  const isOn = (end: SurfacePoint): boolean =>
    isInside(end, outline) || sidesOf(outline).some((side) => distanceToSegmentMm(end, side) < EPSILON_MM);
  if (!border.isAll && !(isInside(middle, outline) && ends.every(isOn))) return false;
  return surface.voids.every(({ edges }) => {
    const ring = edges.map(({ from }) => from);
    return ![middle, ...ends].some((point) => isAmid(point, ring));
  });
}

/** Inside a polygon and not on its border: round a tray cable may lie along the edge. */
const isAmid = (point: SurfacePoint, polygon: Polygon): boolean =>
  isInside(point, polygon) && sidesOf(polygon).every((side) => distanceToSegmentMm(point, side) > EPSILON_MM);

const runsInWood = ({ bands }: Field, { axis }: Stretch, middle: SurfacePoint): boolean =>
  bandsOver(bands[axis], middle[otherAxis(axis)]).some(
    ({ lowMm, highMm }) => middle[axis] >= lowMm && middle[axis] <= highMm,
  );

/** Bands in the order of their places, with the widest's half width. */
interface InOrder {
  readonly bands: readonly Band[];
  readonly placesMm: Float64Array;
  readonly halfMm: number;
}

/** Of each surface's members once: every lane asks. */
const ordered = new WeakMap<readonly Band[], InOrder>();

export function inOrderOf(bands: readonly Band[]): InOrder {
  const known = ordered.get(bands);
  if (known !== undefined) return known;
  const sorted = [...bands].sort((a, b) => a.atMm - b.atMm);
  const found = {
    bands: sorted,
    placesMm: Float64Array.from(sorted, ({ atMm }) => atMm),
    halfMm: sorted.reduce((most, { halfMm }) => Math.max(most, halfMm), 0),
  };
  ordered.set(bands, found);
  return found;
}

/** The bands that hold a place across them. */
export function bandsOver(bands: readonly Band[], acrossMm: number): readonly Band[] {
  const { bands: sorted, placesMm, halfMm } = inOrderOf(bands);
  const over: Band[] = [];
  for (let index = countBelow(placesMm, acrossMm - halfMm); index < sorted.length; index += 1) {
    const band = sorted[index];
    if (band === undefined || band.atMm > acrossMm + halfMm) break;
    if (isInWood(band, acrossMm)) over.push(band);
  }
  return over;
}

/** Of what cable passes those that take a hole: none where it lies over them, no webs of a truss. */
export function passable<One>(
  { isOver, isOpenWeb }: Field,
  all: readonly One[],
  memberOf: (one: One) => Member,
): readonly One[] {
  if (isOver) return [];
  return isOpenWeb ? all.filter((one) => !isRepeating(memberOf(one))) : all;
}

const isRepeating = ({ kind }: Member): boolean => kind === "joist" || kind === "stud";

/** Along the border of a wall there is a floor, a ceiling or a corner, not a bay. */
function isOnEdge({ border }: Field, { axis, from }: Stretch): boolean {
  const across = otherAxis(axis);
  const at = from[across];
  return at - border.min[across] < EPSILON_MM || border.max[across] - at < EPSILON_MM;
}

/** Members that a stretch passes through; each is counted on one side of its centre line only. */
export const crossedBy = (field: Field, stretch: Stretch): readonly Member[] =>
  passable(field, passedBy(field, stretch), (member) => member);

function passedBy({ bands, aslant }: Field, stretch: Stretch): readonly Member[] {
  const { axis, from, to } = stretch;
  const across = otherAxis(axis);
  const [low, high] = [Math.min(from[axis], to[axis]), Math.max(from[axis], to[axis])];
  const at = from[across];
  const square: Member[] = [];
  const { bands: sorted, placesMm } = inOrderOf(bands[across]);
  for (let index = countBelow(placesMm, low); index < sorted.length; index += 1) {
    const band = sorted[index];
    if (band === undefined || band.atMm >= high) break;
    if (at >= band.lowMm && at <= band.highMm) square.push(band.member);
  }
  return aslant.length === 0 ? square : [...square, ...aslant.filter((member) => isCut(member, stretch))];
}

function isCut(member: Member, { axis, from, to }: Stretch): boolean {
  const at = meeting(member, otherAxis(axis), from[otherAxis(axis)]);
  if (at === null) return false;
  const [low, high] = [Math.min(from[axis], to[axis]), Math.max(from[axis], to[axis])];
  return at[axis] >= low && at[axis] < high;
}

/** The point of a member's centre line that has that u or v; null where it ends before, or has one alone. */
export function meeting({ from, to }: Member, axis: Axis, placeMm: number): SurfacePoint | null {
  const lengthMm = to[axis] - from[axis];
  if (Math.abs(lengthMm) <= EPSILON_MM) return null;
  const share = (placeMm - from[axis]) / lengthMm;
  const pastMm = Math.max(-share, share - 1) * Math.abs(lengthMm);
  return pastMm > EPSILON_MM ? null : plus(from, times(minus(to, from), share));
}

/** Whether nobody knows what a stretch passes through. */
export const isUncounted = ({ unknown, isOver }: Field, stretch: Stretch): boolean =>
  !isOver && unknown.length > 0 && unknown.some((polygon) => isInside(middleOf(stretch), polygon));
