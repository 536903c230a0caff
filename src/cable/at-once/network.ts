import type { Effort } from "../../effort.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Axis, Field } from "../field.js";
import { carried, type Join, type Lanes, meetings, type Spot, turnMm } from "../lanes.js";
import type { Boring } from "../network.js";
import type { Cause, CausedLanes } from "./caused-lanes.js";
import { sweepOf } from "./open-stretches.js";
import { type Tolls, tollsOf } from "./tolls.js";

/** The lanes of one axis of a field. */
export interface Side {
  readonly field: Field;
  readonly axis: Axis;
  /** Where each lane lies, ascending, and where the other axis's lanes meet it: its places. */
  readonly acrossMm: Float64Array;
  readonly alongMm: Float64Array;
  /** By lane the first of its tracks, and at the end the first that is none of this side's. */
  readonly firstTrack: Int32Array;
  /** How many lanes the sides before it have. */
  readonly lanesBefore: number;
  readonly tolls: Tolls;
}

/**
 * The lanes of all fields, parted into tracks: stretches in a row on one lane that cable may lie along, where there is
 * any use in that. Side 2n is the
 * u axis of the n-th field, 2n + 1 its v axis.
 */
export interface Network {
  readonly sides: readonly Side[];
  readonly tracks: Tracks;
  readonly portals: readonly Portal[];
  readonly portalsOn: ReadonlyMap<number, PortalsOn>;
}

/** By the number of the track: its side, its lane there, the first and the last of its places. */
export interface Tracks {
  readonly side: Uint32Array;
  readonly lane: Int32Array;
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/** A meeting of lanes at which cable leaves for other surfaces. */
export interface Portal {
  readonly meeting: Meeting;
  readonly ways: { readonly to: number; readonly costMm: number }[];
}

/** The portals that a track passes, in the order of their places there. */
export interface PortalsOn {
  readonly places: readonly number[];
  readonly portals: readonly number[];
}

/** Where two lanes of a field meet. */
export interface Meeting {
  readonly field: number;
  /** Place on the lanes of u, and so lane of v. */
  readonly column: number;
  /** Place on the lanes of v, and so lane of u. */
  readonly row: number;
}

interface Parts {
  readonly lanes: readonly CausedLanes[];
  readonly joins: readonly Join[];
  readonly boring: Boring;
  readonly effort: Effort;
}

export function networkOf({ lanes, joins, boring, effort }: Parts): Network {
  const tracks: Growing = { side: [], lane: [], low: [], high: [] };
  let before = 0;
  const sides = lanes.flatMap((own, index) => {
    const pair = sidesOf(own, index, { boring, tracks, before, effort });
    before += own.us.length + own.vs.length;
    return pair;
  });
  const portals = portalsOf(lanes, joins, effort);
  const network = {
    sides,
    portals,
    tracks: {
      side: Uint32Array.from(tracks.side),
      lane: Int32Array.from(tracks.lane),
      low: Int32Array.from(tracks.low),
      high: Int32Array.from(tracks.high),
    },
  };
  return { ...network, portalsOn: onTracks(network, portals) };
}

interface Growing {
  readonly side: number[];
  readonly lane: number[];
  readonly low: number[];
  readonly high: number[];
}

function sidesOf(
  { field, us, vs, causes }: CausedLanes,
  index: number,
  {
    boring,
    tracks,
    before,
    effort,
  }: Pick<Parts, "boring" | "effort"> & { readonly tracks: Growing; readonly before: number },
): readonly [Side, Side] {
  const [columns, rows] = [Float64Array.from(us), Float64Array.from(vs)];
  const side = (axis: Axis, acrossMm: Float64Array, alongMm: Float64Array, lanesBefore: number): Side => {
    const swept = { field, axis, acrossMm, alongMm, effort };
    const firstTrack = new Int32Array(acrossMm.length + 1);
    const next = sweepOf({ ...swept, isForbidden: boring.isForbidden });
    for (let lane = 0; lane < acrossMm.length; lane += 1) {
      firstTrack[lane] = tracks.side.length;
      part(
        next(),
        { lane, side: 2 * index + (axis === "u" ? 0 : 1), alongMm, causes: causes[axis]?.[lane] },
        tracks,
      );
    }
    firstTrack[acrossMm.length] = tracks.side.length;
    return { ...swept, firstTrack, lanesBefore, tolls: tollsOf({ ...swept, boring }) };
  };
  return [side("u", rows, columns, before), side("v", columns, rows, before + rows.length)];
}

interface Parted {
  readonly lane: number;
  readonly side: number;
  readonly alongMm: Float64Array;
  /** Nothing where all tracks are looked at. */
  readonly causes: readonly Cause[] | undefined;
}

/** A track for all open stretches of a lane that follow on each other and come to what the lane is there for. */
function part(shut: Uint8Array, { lane, side, alongMm, causes }: Parted, tracks: Growing): void {
  for (let low = 0; low < shut.length; low += 1) {
    if (shut[low] === 1) continue;
    let high = low;
    while (high < shut.length && shut[high] === 0) high += 1;
    const [lowMm, highMm] = [(alongMm[low] ?? 0) - EPSILON_MM, (alongMm[high] ?? 0) + EPSILON_MM];
    if (causes === undefined || causes.some((cause) => cause.lowMm <= highMm && cause.highMm >= lowMm)) {
      tracks.low.push(low);
      tracks.high.push(high);
      tracks.side.push(side);
      tracks.lane.push(lane);
    }
    low = high;
  }
}

/** How a lane counts a place, in mm: its own length with all that has to be passed. */
export const placedAt = (
  { alongMm, tolls: { stepOf, sums, lanes } }: Side,
  lane: number,
  place: number,
): number => (alongMm[place] ?? 0) + (sums[(stepOf[place] ?? 0) * lanes + lane] ?? 0);

/** The track of a lane that passes a place; where none does, the next one after it, with a lower end past the place. */
export function trackAt({ high }: Tracks, { firstTrack }: Side, lane: number, place: number): number {
  let track = firstTrack[lane] ?? 0;
  for (let end = firstTrack[lane + 1] ?? 0; track < end; ) {
    const middle = (track + end) >> 1;
    if ((high[middle] ?? 0) < place) track = middle + 1;
    else end = middle;
  }
  return track;
}

/** The track of a lane that passes a place, -1 for none. */
function passing(tracks: Tracks, side: Side, lane: number, place: number): number {
  const track = trackAt(tracks, side, lane, place);
  const isOn = track < (side.firstTrack[lane + 1] ?? 0) && place >= (tracks.low[track] ?? 0);
  return isOn ? track : -1;
}

/** Through the joins, both ways: up behind one surface and out behind the other, at a right angle. */
function portalsOf(lanes: readonly Lanes[], joins: readonly Join[], effort: Effort): readonly Portal[] {
  const portals: Portal[] = [];
  const known = new Map<number, number>();
  const firsts = lanes.map(() => 0);
  lanes.reduce((next, { us, vs }, index) => {
    firsts[index] = next;
    return next + us.length * vs.length;
  }, 0);
  const numberOf = (meeting: Meeting): number => {
    const { field, column, row } = meeting;
    const key = (firsts[field] ?? 0) + row * (lanes[field]?.us.length ?? 0) + column;
    const number = known.get(key) ?? portals.length;
    if (number === portals.length) portals.push({ meeting, ways: [] });
    known.set(key, number);
    return number;
  };
  for (const { fields, edges } of joins) {
    const [one, other] = fields;
    const own = lanes.find(({ field }) => field === one);
    effort.spend((own?.us.length ?? 0) + (own?.vs.length ?? 0));
    for (const at of own === undefined ? [] : meetings(own, edges[0])) {
      const end = { field: other, at: carried(one, other, at) };
      const [here, there] = [meetingAt(lanes, { field: one, at }), meetingAt(lanes, end)];
      if (here === null || there === null) continue;
      const costMm = turnMm({ field: one, at }, end);
      const [from, to] = [numberOf(here), numberOf(there)];
      portals[from]?.ways.push({ to, costMm });
      portals[to]?.ways.push({ to: from, costMm });
    }
  }
  return portals;
}

function onTracks(network: Passed, portals: readonly Portal[]): ReadonlyMap<number, PortalsOn> {
  const found = new Map<number, { readonly place: number; readonly portal: number }[]>();
  portals.forEach(({ meeting }, portal) => {
    const places = [meeting.column, meeting.row];
    tracksThrough(network, meeting).forEach((track, index) => {
      if (track < 0) return;
      const at = { place: places[index] ?? 0, portal };
      const on = found.get(track);
      if (on === undefined) found.set(track, [at]);
      else on.push(at);
    });
  });
  return new Map(
    [...found].map(([track, on]) => {
      const sorted = on.sort((a, b) => a.place - b.place);
      return [
        track,
        { places: sorted.map(({ place }) => place), portals: sorted.map(({ portal }) => portal) },
      ];
    }),
  );
}

export type Passed = Pick<Network, "sides" | "tracks">;

/** The tracks of u and of v that pass a meeting, -1 for none. */
export function tracksThrough(
  { sides, tracks }: Passed,
  { field, column, row }: Meeting,
): readonly [number, number] {
  const [u, v] = [sides[2 * field], sides[2 * field + 1]];
  if (u === undefined || v === undefined) return [-1, -1];
  return [passing(tracks, u, row, column), passing(tracks, v, column, row)];
}

/** Where a spot is a meeting of lanes; null where it is none. */
export function meetingAt(
  lanes: readonly { readonly field: Field; readonly us: ArrayLike<number>; readonly vs: ArrayLike<number> }[],
  { field, at }: Spot,
): Meeting | null {
  const index = lanes.findIndex((own) => own.field === field);
  const own = lanes[index];
  if (own === undefined) return null;
  const column = placeOf(own.us, at.u);
  const row = placeOf(own.vs, at.v);
  return column < 0 || row < 0 ? null : { field: index, column, row };
}

/** The same of a network. */
export const meetingIn = ({ sides }: Network, spot: Spot): Meeting | null =>
  meetingAt(
    sides
      .filter(({ axis }) => axis === "u")
      .map(({ field, alongMm, acrossMm }) => ({ field, us: alongMm, vs: acrossMm })),
    spot,
  );

/** The spot at which two lanes meet. */
export function spotAt(sides: readonly Side[], { field, column, row }: Meeting): Spot {
  const u = sides[2 * field];
  if (u === undefined) throw new RangeError(`no field ${field}`);
  const at: SurfacePoint = { u: u.alongMm[column] ?? 0, v: u.acrossMm[row] ?? 0 };
  return { field: u.field, at };
}

/** Where a figure stands in an ascending list, the first that it equals; -1 for nowhere. */
function placeOf(values: ArrayLike<number>, value: number): number {
  let [low, high] = [0, values.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) - value < -EPSILON_MM) low = middle + 1;
    else high = middle;
  }
  return Math.abs((values[low] ?? Number.POSITIVE_INFINITY) - value) <= EPSILON_MM ? low : -1;
}
