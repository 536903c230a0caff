import { type DistanceMm, distanceFrom } from "../../geometry/distance-from.js";
import { surfacePoint } from "../../geometry/surface-point.js";
import { mount } from "../../listen/mounted.js";
import { neighbourObstacles, takenBy } from "../obstacles.js";
import { tapeMm } from "../tapes.js";
import type { Asking } from "./asking.js";
import { type Axis, type Box, isHeld, type Marks, nearestMark, pointOf, readingMm } from "./marks.js";
import type { Match } from "./match.js";
import { type Sight, sightOn } from "./sight.js";

/** Where one loudspeaker may stand: on the marks of its own two tapes. */
export interface Spot {
  readonly asking: Asking;
  readonly marks: Marks;
  readonly sight: Sight;
  /** How its tapes read for what those of the field's first loudspeaker read; null for the first itself. */
  readonly follows: Follows | null;
}

/** Readings `zeroMm + perFirst * first + perSecond * second` of each tape. */
export type Follows = readonly [Reading, Reading];

export interface Reading {
  readonly zeroMm: number;
  readonly perFirst: number;
  readonly perSecond: number;
}

/** Where one loudspeaker, or a pair that is decided together, may stand. */
export interface Field {
  readonly spots: readonly [Spot, ...Spot[]];
  readonly apart: readonly Apart[];
}

/** Two of a field's loudspeakers on one surface, and how clear of each other they are. */
export interface Apart {
  readonly first: number;
  readonly second: number;
  /** By where the second's centre lies from the first's; less than 0 where they are too close. */
  readonly distancesMm: readonly DistanceMm[];
}

export const spotOf = (asking: Asking, marks: Marks, follows: Follows | null = null): Spot => ({
  asking,
  marks,
  follows,
  sight: sightOn(asking.ground.surface, asking.wish),
});

/** How far apart two openings on one surface are, by where the second lies from the first. */
export function apartnessOf(first: Asking, second: Asking): readonly DistanceMm[] {
  const atZero = mount(first.speaker, first.ground.surface, surfacePoint(0, 0));
  return neighbourObstacles([atZero], second.ground.fitting).map((obstacle) =>
    distanceFrom(takenBy(obstacle)),
  );
}

export function fieldOf(spots: readonly [Spot, ...Spot[]]): Field {
  return { spots, apart: apartIn(spots.map(({ asking }) => asking)) };
}

/** Every two of the loudspeakers that are on one surface. */
export function apartIn(askings: readonly Asking[]): readonly Apart[] {
  return askings.flatMap((a, first) =>
    askings.slice(first + 1).flatMap((b, index) => {
      if (a.ground.surface.name !== b.ground.surface.name) return [];
      return [{ first, second: first + 1 + index, distancesMm: apartnessOf(a, b) }];
    }),
  );
}

/** Far enough apart that rounding does not show in what a millimetre makes. */
const FAR_MM = 1000;

/** How the tapes of `marks` read for what those of the leader do. */
export function followsBy(match: Match, leader: Marks, marks: Marks): Follows {
  const readings = (first: number, second: number): readonly [number, number] => {
    const point = match(pointOf(leader, first, second));
    return [tapeMm(marks.axes[0].line, point), tapeMm(marks.axes[1].line, point)];
  };
  const [zero, first, second] = [readings(0, 0), readings(FAR_MM, 0), readings(0, FAR_MM)];
  const reading = (axis: 0 | 1): Reading => ({
    zeroMm: zero[axis],
    perFirst: (first[axis] - zero[axis]) / FAR_MM,
    perSecond: (second[axis] - zero[axis]) / FAR_MM,
  });
  return [reading(0), reading(1)];
}

type Span = readonly [number, number];

/** The marks of one loudspeaker that go with a box of the field's: every one that any of them is rounded to. */
export function boxFor({ marks, follows }: Spot, box: Box, leader: Marks): Box {
  if (follows === null) return box;
  const spans = [
    spanMm(leader.axes[0], box.least[0], box.most[0]),
    spanMm(leader.axes[1], box.least[1], box.most[1]),
  ] as const;
  const first = marksFor(marks.axes[0], follows[0], spans);
  const second = marksFor(marks.axes[1], follows[1], spans);
  return { least: [first[0], second[0]], most: [first[1], second[1]] };
}

const spanMm = (axis: Axis, least: number, most: number): Span => [
  readingMm(axis, least),
  readingMm(axis, most),
];

function marksFor(
  axis: Axis,
  { zeroMm, perFirst, perSecond }: Reading,
  [first, second]: readonly [Span, Span],
): Span {
  if (isHeld(axis)) return [axis.least, axis.most];
  const [a, b] = [perFirst * first[0], perFirst * first[1]];
  const [c, d] = [perSecond * second[0], perSecond * second[1]];
  const low = zeroMm + Math.min(a, b) + Math.min(c, d);
  const high = zeroMm + Math.max(a, b) + Math.max(c, d);
  return [nearestMark(axis, low), nearestMark(axis, high)];
}
