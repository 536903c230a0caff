import type { Effort } from "../../effort.js";
import { distanceToSegmentMm, sidesOf } from "../../geometry/distance.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { type Axis, cornersOf, type Field, otherAxis } from "../field.js";
import {
  bayMiddles,
  besideWoodOf,
  carried,
  type Join,
  type Lanes,
  meetings,
  ROUNDS,
  type Spot,
} from "../lanes.js";
import { heldBy } from "./held.js";

/*
 * A straight length of a shortest way that touches nothing can be shifted sideways, at no cost, until it does. So of a
 * lane only those tracks are worth looking at that come to what the lane is there for: the side of a box, a corner, an
 * end, the point at which it goes on in another surface.
 */

/** From where to where along a lane that lies which it is there for. */
export interface Cause {
  readonly lowMm: number;
  readonly highMm: number;
}

export interface CausedLanes extends Lanes {
  /** By lane of each axis; null where all of its tracks are to be looked at. */
  readonly causes: Readonly<Record<Axis, readonly (readonly Cause[])[] | null>>;
}

interface Seed extends Cause {
  /** Where the lane lies. */
  readonly laneMm: number;
  /** The field whose lane goes on here; null for one that begins here. */
  readonly from: Field | null;
}

type Seeds = Readonly<Record<Axis, readonly Seed[]>>;

interface Asked {
  readonly fields: readonly Field[];
  readonly joins: readonly Join[];
  readonly spots: readonly Spot[];
  readonly everyBay: boolean;
  readonly effort: Effort;
}

export function causedLanesOf(asked: Asked): readonly CausedLanes[] {
  const { fields, joins, effort } = asked;
  let seeds = new Map(fields.map((field) => [field, seedsOf(field, asked)]));
  for (let round = 0; round < ROUNDS; round += 1) {
    const lanes = new Map([...seeds].map(([field, own]) => [field, along(field, own, effort)]));
    seeds = new Map(
      [...seeds].map(([field, own]) => {
        const points = acrossJoins(field, { joins, lanes, effort });
        return [field, { u: [...own.u, ...points.u], v: [...own.v, ...points.v] }];
      }),
    );
  }
  return [...seeds].map(([field, own]) => lanesOfSeeds(field, own, asked));
}

function seedsOf(field: Field, { spots, everyBay }: Asked): Seeds {
  const corners = cornersOf(field);
  const here = spots.filter((spot) => spot.field === field);
  const seedsAlong = (axis: Axis): readonly Seed[] => {
    const across = otherAxis(axis);
    const at = (point: SurfacePoint): Seed => seed(point[across], point[axis], point[axis]);
    return [
      ...corners.map(at),
      ...field.blocks.flatMap(({ min, max }) =>
        [min, max].map((corner) => seed(corner[across], min[axis], max[axis])),
      ),
      ...here.map((spot) => {
        const { min, max } = heldBy(spot);
        return seed(spot.at[across], min[axis], max[axis]);
      }),
      ...(everyBay ? bayMiddles(field).map(at) : []),
    ];
  };
  return { u: seedsAlong("u"), v: seedsAlong("v") };
}

const seed = (laneMm: number, lowMm: number, highMm: number): Seed => ({ laneMm, lowMm, highMm, from: null });

/** By axis, the lanes with their seeds, beside wood where they would lie in it. */
type Along = Readonly<Record<Axis, readonly (readonly Seed[])[]>>;

function along(field: Field, seeds: Seeds, effort: Effort): Along {
  const grouped = (axis: Axis): readonly (readonly Seed[])[] => {
    const beside = besideWoodOf(field.bands[axis]);
    const all = [...seeds[axis]];
    if (!field.isOver) {
      for (const each of seeds[axis]) {
        const { lowMm, highMm, from } = each;
        for (const laneMm of beside(each.laneMm)) all.push({ laneMm, lowMm, highMm, from });
      }
    }
    effort.spend(all.length);
    const groups: Seed[][] = [];
    let last = Number.NEGATIVE_INFINITY;
    for (const each of all.sort((a, b) => a.laneMm - b.laneMm)) {
      if (each.laneMm - last > EPSILON_MM) groups.push([each]);
      else groups.at(-1)?.push(each);
      last = each.laneMm;
    }
    return groups;
  };
  return { u: grouped("u"), v: grouped("v") };
}

const valuesOf = (groups: readonly (readonly Seed[])[]): readonly number[] =>
  groups.map(([first]) => first?.laneMm ?? 0);

interface Coming {
  readonly point: SurfacePoint;
  readonly other: Field;
  readonly isBack: boolean;
}

/** What it takes to see where a lane of another surface comes out, next to passing a stretch. */
const LOOKS_TO_CARRY = 4;

interface Across {
  readonly joins: readonly Join[];
  readonly lanes: ReadonlyMap<Field, Along>;
  readonly effort: Effort;
}

/** No track comes to it. */
const NO_CAUSE: Cause = { lowMm: Number.POSITIVE_INFINITY, highMm: Number.NEGATIVE_INFINITY };

/**
 * Where lanes of the joins' other surfaces come to this one. Those that come from here themselves lie on it already,
 * but for an edge aslant: where they meet that, a lane of the other axis has to be.
 */
function acrossJoins(field: Field, { joins, lanes, effort }: Across): Seeds {
  const points = joins.flatMap(({ fields, edges }) => {
    const at = fields.indexOf(field);
    if (at !== 0 && at !== 1) return [];
    const other = fields[at === 0 ? 1 : 0];
    const own = lanes.get(other);
    if (own === undefined) return [];
    effort.spend(LOOKS_TO_CARRY * (own.u.length + own.v.length));
    const { from, to } = edges[at];
    const isAslant = Math.abs(to.u - from.u) > EPSILON_MM && Math.abs(to.v - from.v) > EPSILON_MM;
    const edge = edges[at === 0 ? 1 : 0];
    const coming = (isBack: boolean): readonly Coming[] => {
      const some = (groups: readonly (readonly Seed[])[]): readonly number[] =>
        valuesOf(groups.filter((group) => group.every((each) => each.from === field) === isBack));
      return meetings({ field: other, us: some(own.v), vs: some(own.u) }, edge).map((point) => ({
        point: carried(other, field, point),
        other,
        isBack,
      }));
    };
    return isAslant ? [...coming(false), ...coming(true)] : coming(false);
  });
  const seedsAlong = (axis: Axis): readonly Seed[] =>
    points.map(({ point, other, isBack }) => ({
      laneMm: point[otherAxis(axis)],
      ...(isBack ? NO_CAUSE : { lowMm: point[axis], highMm: point[axis] }),
      from: other,
    }));
  return { u: seedsAlong("u"), v: seedsAlong("v") };
}

function lanesOfSeeds(field: Field, seeds: Seeds, { everyBay, effort }: Asked): CausedLanes {
  const groups = along(field, seeds, effort);
  const causesOf = (axis: Axis): CausedLanes["causes"]["u"] =>
    everyBay || endsAmid(field, axis) ? null : groups[axis];
  return {
    field,
    us: valuesOf(groups.v),
    vs: valuesOf(groups.u),
    causes: { u: causesOf("u"), v: causesOf("v") },
  };
}

/** Nearer to the border of its surface a member reaches it. */
const REACHES_MM = 1;

/** Whether a member along an axis ends amid the surface: then a way may go on beside it that touches nothing else. */
function endsAmid(field: Field, axis: Axis): boolean {
  const sides = [
    field.outline,
    ...field.surface.voids.map(({ edges }) => edges.map(({ from }) => from)),
  ].flatMap(sidesOf);
  return field.bands[axis].some(({ member }) =>
    [member.from, member.to].some((end) =>
      sides.every((side) => distanceToSegmentMm(end, side) > REACHES_MM),
    ),
  );
}
