import type { Effort } from "../../effort.js";
import { countBelow, countUpTo } from "../../geometry/ascending.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Polygon } from "../../geometry/shape.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import {
  type Axis,
  type Band,
  bandsOver,
  cornersOf,
  type Field,
  liesOn,
  meeting,
  otherAxis,
  passable,
} from "../field.js";
import type { Boring } from "../network.js";

/** What is looked at: all lanes of a field along one axis, and the places at which the other axis's lanes meet them. */
export interface Swept {
  readonly field: Field;
  readonly axis: Axis;
  /** Where each lane lies, ascending. */
  readonly acrossMm: Float64Array;
  /** Where its stretches begin and end, ascending. */
  readonly alongMm: Float64Array;
  readonly isForbidden: Boring["isForbidden"];
  readonly effort: Effort;
}

/** A box as the lanes see it that it shuts, and the stretches of them, the last one excluded. */
interface Shutter {
  readonly lanes: readonly [number, number];
  readonly stretches: readonly [number, number];
}

/** So many stretches of a lane are swept in the time of a look. */
const STRETCHES_FOR_ONE_LOOK = 8;

/**
 * Tells of one lane after the other, the first one first, which of its stretches cable may not lie along (1) and which
 * it may (0): on the surface, round the blocks, not in wood. The array is used again for the next lane.
 */
export function sweepOf(swept: Swept): () => Uint8Array {
  const { field, acrossMm, alongMm } = swept;
  const middlesMm = middlesOf(alongMm);
  const shut = new Uint8Array(middlesMm.length);
  // How many more boxes shut a stretch than the one before it.
  const more = new Int32Array(middlesMm.length + 1);
  const shutters = shuttersOf(swept, middlesMm);
  const coming = [...shutters].sort((a, b) => b.lanes[0] - a.lanes[0]);
  const going = [...shutters].sort((a, b) => b.lanes[1] - a.lanes[1]);
  const forbidden = forbiddenIn(swept);
  const onSurface = surfaceSweep(swept, middlesMm);
  let lane = -1;
  let inForce = 0;
  const turn = ({ stretches: [first, end] }: Shutter, by: number): void => {
    more[first] = (more[first] ?? 0) + by;
    more[end] = (more[end] ?? 0) - by;
    inForce += by;
  };
  return () => {
    lane += 1;
    swept.effort.spend(shut.length / STRETCHES_FOR_ONE_LOOK);
    for (let last = coming.at(-1); last?.lanes[0] === lane; last = coming.at(-1)) {
      turn(last, 1);
      coming.pop();
    }
    for (let last = going.at(-1); last?.lanes[1] === lane; last = going.at(-1)) {
      turn(last, -1);
      going.pop();
    }
    if (inForce === 0) shut.fill(0);
    else fillShut(shut, more);
    const laneMm = acrossMm[lane] ?? 0;
    onSurface(laneMm, shut);
    if (!field.isOver) shutInWood(swept, laneMm, middlesMm, shut);
    for (const band of forbidden) {
      if (laneMm < band.lowMm || laneMm > band.highMm) continue;
      const stretch = countUpTo(alongMm, band.atMm) - 1;
      if (stretch >= 0 && stretch < shut.length) shut[stretch] = 1;
    }
    shutAslant(swept, laneMm, shut);
    return shut;
  };

  function fillShut(into: Uint8Array, differences: Int32Array): void {
    let deep = 0;
    for (let stretch = 0; stretch < into.length; stretch += 1) {
      deep += differences[stretch] ?? 0;
      into[stretch] = deep > 0 ? 1 : 0;
    }
  }
}

function middlesOf(alongMm: Float64Array): Float64Array {
  const middles = new Float64Array(Math.max(0, alongMm.length - 1));
  for (let stretch = 0; stretch < middles.length; stretch += 1) {
    middles[stretch] = ((alongMm[stretch] ?? 0) + (alongMm[stretch + 1] ?? 0)) / 2;
  }
  return middles;
}

function shuttersOf({ field, axis, acrossMm }: Swept, middlesMm: Float64Array): readonly Shutter[] {
  const across = otherAxis(axis);
  const within = (values: Float64Array, lowMm: number, highMm: number): readonly [number, number] => [
    countUpTo(values, lowMm + EPSILON_MM),
    countBelow(values, highMm - EPSILON_MM),
  ];
  return field.blocks
    .map(
      ({ min, max }): Shutter => ({
        lanes: within(acrossMm, min[across], max[across]),
        stretches: within(middlesMm, min[axis], max[axis]),
      }),
    )
    .filter(({ lanes, stretches }) => lanes[0] < lanes[1] && stretches[0] < stretches[1]);
}

/** Along in a member cable never lies. */
function shutInWood({ field, axis }: Swept, laneMm: number, middlesMm: Float64Array, shut: Uint8Array): void {
  for (const { lowMm, highMm } of bandsOver(field.bands[axis], laneMm)) {
    shut.fill(1, countBelow(middlesMm, lowMm), countUpTo(middlesMm, highMm));
  }
}

const forbiddenIn = ({ field, axis, isForbidden }: Swept): readonly Band[] =>
  passable(field, field.bands[otherAxis(axis)], ({ member }) => member).filter(({ member }) =>
    isForbidden(field, member),
  );

function shutAslant({ field, axis, alongMm, isForbidden }: Swept, laneMm: number, shut: Uint8Array): void {
  for (const member of passable(field, field.aslant, (each) => each)) {
    if (!isForbidden(field, member)) continue;
    const at = meeting(member, otherAxis(axis), laneMm);
    const stretch = at === null ? -1 : countUpTo(alongMm, at[axis]) - 1;
    if (stretch >= 0 && stretch < shut.length) shut[stretch] = 1;
  }
}

type Marks = (laneMm: number, shut: Uint8Array) => void;

/** Shuts what lies off the surface: past its outline, in a void, along a wall's border. */
function surfaceSweep(swept: Swept, middlesMm: Float64Array): Marks {
  const { field, axis, alongMm, effort } = swept;
  const { border, outline, surface } = field;
  const across = otherAxis(axis);
  const isOnEdge = (laneMm: number): boolean =>
    surface.kind === "wall" &&
    (laneMm - border.min[across] < EPSILON_MM || border.max[across] - laneMm < EPSILON_MM);
  const rings = surface.voids.map(({ edges }) => edges.map(({ from }) => from));
  if (border.isAll && rings.length === 0) {
    return (laneMm, shut) => {
      if (isOnEdge(laneMm)) shut.fill(1);
    };
  }
  const corners = cornersOf(field).map((corner) => corner[across]);
  const oneByOne: Marks = (laneMm, shut) => {
    const point = (alongMm: number): SurfacePoint =>
      axis === "u" ? { u: alongMm, v: laneMm } : { u: laneMm, v: alongMm };
    for (let stretch = 0; stretch < shut.length; stretch += 1) {
      if (shut[stretch] === 1) continue;
      effort.spend(corners.length);
      const [from, to] = [point(alongMm[stretch] ?? 0), point(alongMm[stretch + 1] ?? 0)];
      if (!liesOn(field, { axis, from, to })) shut[stretch] = 1;
    }
  };
  return (laneMm, shut) => {
    if (isOnEdge(laneMm)) shut.fill(1);
    // Along a side, and past a corner, it takes a closer look.
    else if (corners.some((corner) => Math.abs(corner - laneMm) < EPSILON_MM)) oneByOne(laneMm, shut);
    else {
      effort.spend(corners.length);
      if (!border.isAll) shutOutside(metOn(outline, axis, laneMm), alongMm, middlesMm, shut);
      for (const ring of rings) shutAmid(metOn(ring, axis, laneMm), alongMm, shut);
    }
  };
}

/** Where a line of one u or v that meets no corner of a polygon meets its sides, ascending: in, out, in, out. */
function metOn(polygon: Polygon, axis: Axis, laneMm: number): readonly number[] {
  const across = otherAxis(axis);
  const met: number[] = [];
  let from = polygon.at(-1);
  for (const to of polygon) {
    if (from !== undefined && from[across] > laneMm !== to[across] > laneMm) {
      const share = (laneMm - from[across]) / (to[across] - from[across]);
      met.push(from[axis] + share * (to[axis] - from[axis]));
    }
    from = to;
  }
  return met.sort((a, b) => a - b);
}

function shutOutside(
  met: readonly number[],
  alongMm: Float64Array,
  middlesMm: Float64Array,
  shut: Uint8Array,
): void {
  let passed = 0;
  for (let stretch = 0; stretch < shut.length; stretch += 1) {
    while (passed < met.length && (met[passed] ?? 0) < (middlesMm[stretch] ?? 0)) passed += 1;
    const isIn =
      passed % 2 === 1 &&
      (alongMm[stretch] ?? 0) > (met[passed - 1] ?? 0) - EPSILON_MM &&
      (alongMm[stretch + 1] ?? 0) < (met[passed] ?? 0) + EPSILON_MM;
    if (!isIn) shut[stretch] = 1;
  }
}

/** Of a void what lies between its sides, and not on one of them. */
function shutAmid(met: readonly number[], alongMm: Float64Array, shut: Uint8Array): void {
  for (let side = 0; side + 1 < met.length; side += 2) {
    const [lowMm, highMm] = [(met[side] ?? 0) + EPSILON_MM, (met[side + 1] ?? 0) - EPSILON_MM];
    // Those that reach in with an end or that span it.
    const first = Math.max(0, countUpTo(alongMm, lowMm) - 1);
    const end = countBelow(alongMm, highMm);
    for (let stretch = first; stretch < end && stretch < shut.length; stretch += 1) shut[stretch] = 1;
  }
}
