import { type Chord, chordOf } from "../geometry/chord.js";
import type { Region } from "../geometry/clip.js";
import { distanceToSegmentMm, isInside, sidesOf } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { twiceAreaMm2 } from "../geometry/ring.js";
import type { Polygon, Shape } from "../geometry/shape.js";
import { distanceMm, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Room, Surface } from "../room/room.js";
import { isClearOf } from "./clear.js";
import { baysOf, besideBoxMm, clearInBay, reachingInto, type Taking, takingsIn } from "./clear-area.js";
import { type Fitting, fittingOf } from "./fitting.js";
import { mayBeClear } from "./may-be-clear.js";
import { fixedObstacles, obstaclesOn, takenBy } from "./obstacles.js";

/** How far an opening may slide where it is, all others staying where they are. */
export interface Slide {
  /** The one piece of its clear area that its centre lies in, or that is nearest; its outline first, then its holes. */
  readonly piece: Region;
  /** Straight slides across the members and along them, both ways; null where it is not clear as it stands. */
  readonly ways: readonly Way[] | null;
}

export interface Way {
  /** Of length 1. */
  readonly direction: SurfacePoint;
  readonly mm: number;
}

export interface Sliding {
  readonly room: Room;
  readonly mounted: Mounted;
  readonly neighbours: readonly Mounted[];
  /** Worked out anew where it is not given. */
  readonly groundIn?: GroundIn;
}

/** What an opening slides on, whatever other openings there are: the bays of its surface, and what takes of them. */
interface Ground {
  readonly bays: readonly Region[];
  readonly fixed: readonly Taking[];
  /** What is left of one of its bays by all that is fixed, worked out when first asked for. */
  readonly leftOf: (bay: Region) => Region;
}

type GroundIn = (surface: Mounted["surface"], fitting: Fitting) => Ground;

/** Arcs of the piece are chords no further off than this: what true scale allows. Its slides are exact. */
const DRAWN = { arcMm: 0.1 };

const drawnGround: GroundIn = (surface, fitting) => {
  if (isFull(surface, fitting)) return { bays: [], fixed: [], leftOf: (bay) => bay };
  const known = new WeakMap<Region, Region>();
  const leftOf = (bay: Region): Region => {
    // What each of them takes is drawn anew: kept, thousands of outlines for each of many models fill the memory.
    const left = known.get(bay) ?? clearInBay(bay, { surface, fitting, neighbours: [], ...DRAWN });
    known.set(bay, left);
    return left;
  };
  return { bays: piecesOf(baysOf(surface, fitting)), fixed: takingsIn(surface, fitting, DRAWN), leftOf };
};

/** So many things that are fixed are not looked through for each opening: what they leave is worked out for all. */
const MANY_FIXED = 100;

/** Whether many things leave nothing clear: told in a fraction of the time that it takes to work out what they leave. */
function isFull(surface: Surface, fitting: Fitting): boolean {
  const fixed = fixedObstacles(surface, fitting);
  return fixed.length > MANY_FIXED && mayBeClear(surface, fixed.map(takenBy)).length === 0;
}

/** The ground of each surface and fitting worked out once: openings of one model on one ceiling share it. */
export function rememberedGround(): GroundIn {
  const known = new Map<string, Ground>();
  return (surface, fitting) => {
    const key = JSON.stringify([surface.name, fitting]);
    const ground = known.get(key) ?? drawnGround(surface, fitting);
    known.set(key, ground);
    return ground;
  };
}

/** Null where no place on the surface is clear, or its framing is unknown. */
export function slideOf({ room, mounted, neighbours, groundIn = drawnGround }: Sliding): Slide | null {
  const { surface, speaker, centre } = mounted;
  const fitting = fittingOf(speaker, room.checks);
  const ground = groundIn(surface, fitting);
  let found: (Near & Pick<Slide, "ways">) | null = null;
  for (const bay of nearestFirst(ground.bays, centre)) {
    if (found !== null && bay.awayMm >= found.awayMm) break;
    const near = neighbours.filter((neighbour) => reachesInto(bay.piece, neighbour, fitting));
    const nearest = clearPiece(bay, mounted, { fitting, ground, near });
    if (nearest !== undefined && (found === null || nearest.awayMm < found.awayMm)) {
      found = { ...nearest, ways: bay.awayMm > AT_LIMIT_MM ? null : waysOf(mounted, fitting, near) };
    }
  }
  return found === null ? null : { piece: found.piece, ways: found.ways };
}

/**
 * The piece of a bay that the centre lies in or is nearest to. Where it stands clear of what is next to it, only what
 * reaches into that piece can take more of it: of twenty neighbours or studs in a bay the others are behind those. Where
 * that takes the centre too, another piece of the bay may be nearer: then all are taken from the whole bay.
 */
function clearPiece(
  bay: Near,
  { surface, centre }: Mounted,
  { fitting, ground: { fixed, leftOf }, near }: Around,
): Near | undefined {
  const left = (area: Region, fixed: readonly Taking[], neighbours: readonly Mounted[]): Near | undefined =>
    nearestFirst(piecesOf(clearInBay(area, { surface, fitting, fixed, neighbours, ...DRAWN })), centre)[0];
  const ofAll = (): Near | undefined => left(leftOf(bay.piece), [], near);
  const [next, others] = nextAndOthers(near, NEXT, (other) => distanceMm(other.centre, centre));
  const [fixedNext, fixedOthers] = nextAndOthers(reachingInto(bay.piece, fixed), FIXED_NEXT, (taking) =>
    besideBoxMm(centre, taking),
  );
  const first = left(bay.piece, fixedNext, next);
  if (others.length === 0 && fixedOthers.length === 0) return first;
  if (first === undefined || first.awayMm > 0) return ofAll();
  const more = others.filter((neighbour) => reachesInto(first.piece, neighbour, fitting));
  const fixedMore = reachingInto(first.piece, fixedOthers);
  if (more.length + fixedMore.length === 0) return first;
  if (fixedMore.length > MANY_FIXED) return ofAll();
  const rest = left(first.piece, fixedMore, more);
  return rest !== undefined && rest.awayMm === 0 ? rest : ofAll();
}

interface Around {
  readonly fitting: Fitting;
  readonly ground: Ground;
  readonly near: readonly Mounted[];
}

const NEXT = 4;
/** A stud to either side, plates above and below, and what is fixed between them. */
const FIXED_NEXT = 6;

/** So many of the nearest, and the others. */
function nextAndOthers<Each>(
  all: readonly Each[],
  count: number,
  awayMm: (each: Each) => number,
): readonly [readonly Each[], readonly Each[]] {
  if (all.length <= count) return [all, []];
  const ranked = all.map((each) => ({ each, mm: awayMm(each) })).sort((a, b) => a.mm - b.mm);
  const sorted = ranked.map(({ each }) => each);
  return [sorted.slice(0, count), sorted.slice(count)];
}

/** The bays lack at most this of what the rule passes. */
const AT_LIMIT_MM = 2 * EPSILON_MM;

/** Whether another opening may take anything from a bay: of four hundred in a hall few do, and nobody slides past a bay's end. */
function reachesInto(bay: Region, { speaker, centre }: Mounted, fitting: Fitting): boolean {
  const reachMm =
    acrossMm(speaker.opening) +
    acrossMm(speaker.flange) +
    acrossMm(fitting.opening) +
    acrossMm(fitting.flange) +
    speaker.model.clampReachMm +
    fitting.clampReachMm +
    fitting.clearMm;
  const corners = bay.flat();
  return (["u", "v"] as const).every((axis) => {
    const own = corners.map((corner) => corner[axis]);
    return centre[axis] > Math.min(...own) - reachMm && centre[axis] < Math.max(...own) + reachMm;
  });
}

const acrossMm = (shape: Shape): number =>
  shape.kind === "round" ? shape.diameterMm : Math.hypot(shape.widthMm, shape.heightMm);

interface Near {
  readonly piece: Region;
  readonly awayMm: number;
}

const nearestFirst = (pieces: readonly Region[], centre: SurfacePoint): Near[] =>
  pieces.map((piece) => ({ piece, awayMm: awayMm(piece, centre) })).sort((a, b) => a.awayMm - b.awayMm);

/** Each outline of an area with the holes in it: those that no smaller outline holds. */
export function piecesOf(area: Region): readonly Region[] {
  const outlines = area.filter((ring) => twiceAreaMm2(ring) > 0);
  const holes = area.filter((ring) => twiceAreaMm2(ring) < 0);
  const holder = ([corner]: Polygon): Polygon | undefined =>
    outlines
      .filter((ring) => corner !== undefined && isInside(corner, ring))
      .sort((a, b) => twiceAreaMm2(a) - twiceAreaMm2(b))[0];
  return outlines.map((ring) => [ring, ...holes.filter((hole) => holder(hole) === ring)]);
}

const awayMm = (piece: Region, centre: SurfacePoint): number =>
  piece.filter((ring) => isInside(centre, ring)).length % 2 === 1
    ? 0
    : Math.min(...piece.flatMap(sidesOf).map((side) => distanceToSegmentMm(centre, side)));

/** By the exact distances, whatever the piece lacks of them. */
function waysOf(
  { surface, centre }: Mounted,
  fitting: Fitting,
  neighbours: readonly Mounted[],
): readonly Way[] | null {
  const { framing } = surface;
  const taken = obstaclesOn(surface, fitting, neighbours).map(takenBy);
  if (framing.kind === "unknown" || !isClearOf(surface, taken)(centre)) return null;
  const ways = (direction: SurfacePoint): readonly Way[] => {
    const chords = taken.map((body) => chordOf(body, { origin: centre, direction })).filter(isInTheWay);
    const behind = chords.map(([fromMm, toMm]): Chord => [-toMm, -fromMm]);
    return [
      { direction, mm: freeMm(chords) },
      { direction: times(direction, -1), mm: freeMm(behind) },
    ];
  };
  return [...ways(framing.layout.zero.away).toReversed(), ...ways(framing.direction)];
}

const isInTheWay = (chord: Chord | null): chord is Chord => chord !== null;

/** How far a line is free from its origin onwards. */
function freeMm(chords: readonly Chord[]): number {
  const ahead = chords.filter(([, toMm]) => toMm > TOUCHES_MM).map(([fromMm]) => fromMm);
  return Math.max(0, Math.min(...ahead));
}

/** What ends less than this ahead is touched, and left behind. */
const TOUCHES_MM = 1e-6;
