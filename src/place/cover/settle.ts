import type { Fix } from "../../findings/finding.js";
import { InternalError } from "../../findings/internal-error.js";
import { distanceMm, surfacePoint } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { allEdgesOn } from "../../listen/edges.js";
import type { Mounted } from "../../listen/mounted.js";
import type { Tape } from "../../room/room.js";
import { reachTest, tapesNear } from "../best/tape-choice.js";
import { nearestClearCentre, TAPE_STEP_MM } from "../nearest-clear.js";
import { type TapeLine, tapeMm } from "../tapes.js";
import { meetableNear, mountedAt, type Site } from "./site.js";

/** A point of the pattern and the clear mark nearest to it. */
export interface Settled {
  readonly wanted: SurfacePoint;
  readonly mounted: Mounted;
  readonly movedMm: number;
  readonly tapes: Tapes;
}

/** A point of the pattern near which nothing is clear, as tapes read there to a mark. */
export interface Nowhere {
  readonly at: SurfacePoint;
  readonly tapes: Tapes;
}

/** A pattern on a site: its points where they can be cut, and those near which nothing is clear. */
export interface Settling {
  readonly settled: readonly Settled[];
  readonly nowhere: readonly Nowhere[];
}

type Tapes = readonly [Tape, Tape];
type Lines = readonly [TapeLine, TapeLine];

/**
 * Every point moved as little as possible to whole marks of two tapes that are clear of everything and of those before
 * it; no further than `reachMm`, past which it would be another's place.
 */
export function settle(site: Site, points: readonly SurfacePoint[], reachMm: number): Settling {
  const linesFor = linesFinder(site, points);
  const settled: Settled[] = [];
  const nowhere: Nowhere[] = [];
  const looks = LOOKS_FOR_A_HOOK * (1 + allEdgesOn(site.surface, "finish").length);
  for (const wanted of points) {
    site.effort.spend(looks);
    const lines = linesFor(wanted);
    const others = [...site.standing, ...settled.map(({ mounted }) => mounted)];
    const fix = nearestClear(site, wanted, { lines, reachMm, others });
    if (fix === null) nowhere.push(nowhereAt(site, wanted, lines));
    else settled.push(settledAt(site, wanted, fix));
  }
  return { settled, nowhere };
}

/** Which tapes reach a point takes a look past every edge, sometimes from every wall. */
const LOOKS_FOR_A_HOOK = 2;

/** One pair of walls for all points that its tapes reach, so that a row reads alike; else the nearest to the point. */
function linesFinder({ room, surface }: Site, points: readonly SurfacePoint[]) {
  const reaches = reachTest(surface);
  const near = (point: SurfacePoint): Lines => {
    const chosen = tapesNear(room, surface, { near: point, hold: [] });
    if (chosen === null) throw new InternalError(`no two tapes fix a point of ${surface.name}`);
    return [chosen[0].line, chosen[1].line];
  };
  const [first] = points;
  const common = first === undefined ? null : near(first);
  return (point: SurfacePoint): Lines =>
    common?.every((line) => reaches(line, point)) ? common : near(point);
}

interface Asked {
  readonly lines: Lines;
  readonly reachMm: number;
  readonly others: readonly Mounted[];
}

function nearestClear(site: Site, wanted: SurfacePoint, { lines, reachMm, others }: Asked): Fix | null {
  const [first, second] = lines;
  return nearestClearCentre({
    room: site.room,
    mounted: mountedAt(site, wanted),
    neighbours: meetableNear(site, others, { at: wanted, withinMm: reachMm }),
    groundOf: site.groundOf,
    from: [first.from, second.from],
    withinMm: reachMm,
  });
}

function settledAt(site: Site, wanted: SurfacePoint, { u, v, at }: Fix): Settled {
  const centre = surfacePoint(u, v);
  const [first, second] = Object.entries(at).map(([from, mm]): Tape => ({ from, mm }));
  if (first === undefined || second === undefined) throw new InternalError("a fix without two tapes");
  return {
    wanted,
    mounted: mountedAt(site, centre),
    movedMm: distanceMm(centre, wanted),
    tapes: [first, second],
  };
}

function nowhereAt({ room }: Site, at: SurfacePoint, [first, second]: Lines): Nowhere {
  const stepMm = TAPE_STEP_MM[room.units];
  const tape = (line: TapeLine): Tape => ({
    from: line.from,
    mm: Math.round(tapeMm(line, at) / stepMm) * stepMm,
  });
  return { at, tapes: [tape(first), tape(second)] };
}
