import { chordOf } from "../geometry/chord.js";
import type { Region } from "../geometry/clip.js";
import { distanceToSegmentMm, isInside, sidesOf } from "../geometry/distance.js";
import { twiceAreaMm2 } from "../geometry/ring.js";
import type { Polygon } from "../geometry/shape.js";
import { times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Room } from "../room/room.js";
import { isClearOf } from "./clear.js";
import { baysOf, clearInBay } from "./clear-area.js";
import { type Fitting, fittingOf } from "./fitting.js";
import { obstaclesOn, takenBy } from "./obstacles.js";

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
  readonly baysIn?: BaysIn;
}

export type BaysIn = (surface: Mounted["surface"], fitting: Fitting) => Region;

/** Arcs of the piece are chords no further off than this: what true scale allows. Its slides are exact. */
const DRAWN = { arcMm: 0.1 };

const drawnBays: BaysIn = (surface, fitting) => baysOf(surface, fitting, DRAWN);

/** The bays of each surface and fitting worked out once: openings of one model on one ceiling share them. */
export function rememberedBays(): BaysIn {
  const known = new Map<string, Region>();
  return (surface, fitting) => {
    const key = JSON.stringify([surface.name, fitting]);
    const bays = known.get(key) ?? drawnBays(surface, fitting);
    known.set(key, bays);
    return bays;
  };
}

/** Null where no place on the surface is clear, or its framing is unknown. */
export function slideOf({ room, mounted, neighbours, baysIn = drawnBays }: Sliding): Slide | null {
  const { surface, speaker, centre } = mounted;
  const fitting = fittingOf(speaker, room.checks);
  let found: Near | null = null;
  for (const bay of nearestFirst(baysIn(surface, fitting), centre)) {
    if (found !== null && bay.awayMm >= found.awayMm) break;
    const clear = clearInBay(bay.piece, { surface, fitting, neighbours, ...DRAWN });
    const [nearest] = nearestFirst(clear, centre);
    if (nearest !== undefined && (found === null || nearest.awayMm < found.awayMm)) found = nearest;
  }
  return found === null ? null : { piece: found.piece, ways: waysOf(mounted, fitting, neighbours) };
}

interface Near {
  readonly piece: Region;
  readonly awayMm: number;
}

const nearestFirst = (area: Region, centre: SurfacePoint): Near[] =>
  piecesOf(area)
    .map((piece) => ({ piece, awayMm: awayMm(piece, centre) }))
    .sort((a, b) => a.awayMm - b.awayMm);

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
  const across = framing.layout.zero.away;
  return [times(across, -1), across, framing.direction, times(framing.direction, -1)].map((direction) => {
    const ahead = taken.flatMap((body) => {
      const chord = chordOf(body, { origin: centre, direction });
      return chord !== null && chord[1] > TOUCHES_MM ? [chord[0]] : [];
    });
    return { direction, mm: Math.max(0, Math.min(...ahead)) };
  });
}

/** What ends less than this ahead is touched, and left behind. */
const TOUCHES_MM = 1e-6;
