import fc from "fast-check";
import { expect, test } from "vitest";
import { type Placed, placeAll } from "../../../src/place/place.js";
import type { Room } from "../../../src/room/room.js";
import { howMany } from "../../how-many.js";
import { room } from "../../rooms/build.js";
import { placeableRoom } from "../../rooms/placeable.js";
import {
  extentOf,
  isClear,
  isOverJoint,
  nearness,
  positionOn,
  published,
  type Seen,
  type Standing,
  seen,
  sizeOf,
} from "./by-hand.js";

/*
 * Places against a dense grid over the whole surface, worked out a second way (by-hand.ts): whenever the grid finds a
 * clear position inside the window so does `place`, and never one better by more than a twentieth of a degree.
 * `BAYMARK_TELLS=1 BAYMARK_TIMES=10 npx vitest run tests/place/best/grid.test.ts` looks longer and tells figures.
 */

const ROOMS = howMany(25, 120);
/** Tells what it saw; looking for any point inside takes as long again. */
const TELLS = process.env.BAYMARK_TELLS !== undefined;
const LONGEST_MS = 600_000 * Math.max(1, ROOMS / 100);
const WORSE_BY_DEG = 0.05;
const GRID_MM = 13;

const standing = (placed: readonly Placed[]): readonly Standing[] => placed.map(({ mounted }) => mounted);

/** What lying over a joint of the board counts as where the file says nothing. */
const JOINT_DEG = 2;

/** How a place is seen, and what it costs with the joint that it may lie over. */
interface Look extends Seen {
  readonly costDeg: number;
}

/** Inside the window comes before nearer to the preferred direction and off the joints. */
const isBetter = (a: Look, b: Look, byDeg: number): boolean =>
  a.breaches < b.breaches || (a.breaches === b.breaches && a.costDeg < b.costDeg - byDeg);

interface Point {
  readonly u: number;
  readonly v: number;
}

/** Points of the grid over the surface, and closely round a place. */
function* gridRound(extent: readonly [number, number], place: Point | null): Generator<Point> {
  for (let u = 0; u <= extent[0]; u += GRID_MM) {
    for (let v = 0; v <= extent[1]; v += GRID_MM) yield { u, v };
  }
  if (place === null) return;
  for (let du = -20; du <= 20; du += 1.3) {
    for (let dv = -20; dv <= 20; dv += 1.3) yield { u: place.u + du, v: place.v + dv };
  }
}

interface Compared {
  /** What is wrong with a place; null for nothing. */
  readonly fault: string | null;
  /** How much better the best point of the grid is; 0 where none is. */
  readonly betterByDeg: number;
  /** Whether any point of the grid is clear and inside the window; null where nobody looked. */
  readonly isGridInside: boolean | null;
}

function compare(one: Room, placed: readonly Placed[], id: string): Compared {
  const speaker = one.speakers.find((each) => each.id === id);
  const surface = one.surfaces.find(({ name }) => name === speaker?.surface);
  if (speaker === undefined || surface === undefined || one.layout === null) throw new Error(id);
  const size = sizeOf(one);
  const { ear } = one.reference;
  const wanted = published(one.layout, speaker.channel);
  const positionAt = ({ u, v }: Point) => positionOn(surface.name, size, u, v);
  const lookAt = (point: Point): Look => {
    const there = seen(ear, positionAt(point), wanted, one.checks.toleranceDeg);
    const joint = isOverJoint({ speaker, surface, centre: point }) ? JOINT_DEG : 0;
    return { ...there, costDeg: there.offDeg + joint };
  };
  const own = placed.find(({ mounted }) => mounted.speaker.id === id)?.mounted.centre ?? null;
  const others = standing(placed).filter((other) => other.speaker.id !== id);
  const isClearAt = (centre: Point): boolean => isClear(one, { speaker, surface, centre }, others);
  const found = own === null ? NOWHERE : lookAt(own);
  const isInside = (point: Point): boolean => lookAt(point).breaches === 0 && isClearAt(point);
  const isGridInside = TELLS ? any(gridRound(extentOf(surface.name, size), null), isInside) : null;
  const compared = { fault: null, betterByDeg: 0, isGridInside };
  if (own !== null && !isClearAt(own)) return { ...compared, fault: `${id} is not clear` };
  // Where nothing is outside the window, only what is nearer to the preferred direction can be better.
  const nearnessOf = nearness(ear, wanted);
  let best = found;
  for (const point of gridRound(extentOf(surface.name, size), own)) {
    const leastNear = best.breaches > 0 ? -2 : Math.cos((best.costDeg * Math.PI) / 180);
    if (nearnessOf(positionAt(point)) < leastNear) continue;
    const there = lookAt(point);
    if (!isBetter(there, best, 0) || !isClearAt(point)) continue;
    if (isBetter(there, found, WORSE_BY_DEG)) {
      const better = `${JSON.stringify(point)} ${JSON.stringify(there)}`;
      return {
        ...compared,
        fault: `${id} at ${JSON.stringify(own)} ${JSON.stringify(found)}: better ${better}`,
      };
    }
    best = there;
  }
  return { ...compared, betterByDeg: found.costDeg === best.costDeg ? 0 : found.costDeg - best.costDeg };
}

function any(points: Iterable<Point>, holds: (point: Point) => boolean): boolean {
  for (const point of points) if (holds(point)) return true;
  return false;
}

const NOWHERE: Look = {
  offDeg: Number.POSITIVE_INFINITY,
  costDeg: Number.POSITIVE_INFINITY,
  breaches: 3,
};

test("no point of a dense grid is clear and better", { timeout: LONGEST_MS }, () => {
  const counted = { rooms: 0, placed: 0, inside: 0, outside: 0, nowhere: 0, gridInside: 0, betterByDeg: 0 };
  fc.assert(
    fc.property(placeableRoom, (parts) => {
      const one = room(parts);
      const { placed, unplaced } = placeAll(one);
      for (const { id } of one.speakers) {
        const { fault, betterByDeg, isGridInside } = compare(one, placed, id);
        expect(fault).toBeNull();
        counted.betterByDeg = Math.max(counted.betterByDeg, betterByDeg);
        counted.gridInside += isGridInside === true ? 1 : 0;
      }
      counted.rooms += 1;
      counted.placed += placed.length;
      counted.nowhere += unplaced.length;
      for (const { cost } of placed) counted[cost.breaches === 0 ? "inside" : "outside"] += 1;
    }),
    { numRuns: ROOMS },
  );
  if (TELLS) console.log(JSON.stringify(counted));
  // Rooms in which nothing is hard would prove nothing.
  expect(counted.inside).toBeGreaterThan(ROOMS / 2);
  expect(counted.outside).toBeGreaterThan(ROOMS / 20);
});
