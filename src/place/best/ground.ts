import { type Effort, within } from "../../effort.js";
import { areaMm2, partBetween, type Region } from "../../geometry/clip.js";
import { type DistanceMm, distanceFrom } from "../../geometry/distance-from.js";
import { extentOf } from "../../geometry/region.js";
import { surfacePoint } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Mounted } from "../../listen/mounted.js";
import type { Surface } from "../../room/room.js";
import { clearTest, takingOf } from "../clear.js";
import type { Fitting } from "../fitting.js";
import { mayBeClear } from "../may-be-clear.js";
import {
  jointObstacles,
  neighbourObstacles,
  type Obstacle,
  obstaclesOn,
  piecesOn,
  takenBy,
  type What,
} from "../obstacles.js";

/** A convex part of a surface in which a centre is not clear, and why. */
export interface Taken {
  readonly what: What | { readonly kind: "ruled-out" };
  /** To its border; a centre at less than 0 is not clear. */
  readonly distanceMm: DistanceMm;
}

/** A surface as a fitting finds it while nothing else is let in. */
export interface Ground {
  readonly surface: Surface;
  readonly fitting: Fitting;
  readonly taken: readonly Taken[];
  /** Where the opening lies over a joint of the board. */
  readonly overJoints: readonly Taken[];
  /** Whether it lies over one with its centre there. */
  readonly isOverJoint: (centre: SurfacePoint) => boolean;
  /** How long places on it may be looked for: one effort for all grounds of a room. */
  readonly effort: Effort;
  /** The exact rule. */
  readonly isClear: (centre: SurfacePoint) => boolean;
}

/** What it takes to make one body of what is taken, and to cut it out of the surface, next to a look at one. */
const LOOKS_FOR_A_BODY = 60;
const LOOKS_FOR_A_PIECE = 2500;

const takenOf = (obstacle: Obstacle): Taken => ({
  what: obstacle.what,
  distanceMm: distanceFrom(takenBy(obstacle)),
});

/** One for making grounds and one for looking on them, so that with many models there is still something to look with. */
export interface Efforts {
  readonly making: Effort;
  readonly looking: Effort;
}

function groundOf(surface: Surface, fitting: Fitting, { looking, making }: Efforts): Ground {
  making.spend(LOOKS_FOR_A_BODY * piecesOn(surface));
  const joints = jointObstacles(surface, fitting);
  const takings = joints.map(takenBy).map(takingOf);
  return {
    effort: looking,
    surface,
    fitting,
    taken: obstaclesOn(surface, fitting, []).map(takenOf),
    overJoints: joints.map(takenOf),
    isOverJoint: (centre) => takings.some((takes) => takes(centre)),
    isClear: clearTest(surface, fitting, []),
  };
}

/** An upright box round a piece of a ground where something may be clear. */
export interface Piece {
  readonly least: SurfacePoint;
  readonly most: SurfacePoint;
}

const piecesFound = new WeakMap<Ground, readonly Piece[]>();

/** The pieces of a ground outside which nothing is clear; none where nothing is. Worked out once for all that ask. */
export function piecesOf(ground: Ground): readonly Piece[] {
  const found = piecesFound.get(ground);
  if (found !== undefined) return found;
  const { surface, fitting, effort } = ground;
  effort.spend(LOOKS_FOR_A_PIECE * ground.taken.length);
  const region = mayBeClear(surface, obstaclesOn(surface, fitting, []).map(takenBy));
  const pieces = boxesOver(region, MOST_HALVINGS);
  piecesFound.set(ground, pieces);
  return pieces;
}

const MOST_HALVINGS = 9;

/** Boxes that hold all of a region and little else: one that it fills less than half of is halved. */
function boxesOver(region: Region, halvings: number): readonly Piece[] {
  if (region.length === 0) return [];
  const { least, most } = extentOf(region);
  const [across, up] = [most.u - least.u, most.v - least.v];
  if (halvings === 0 || areaMm2(region) > (across * up) / 2) return [{ least, most }];
  const middle = surfacePoint(least.u + across / 2, least.v + up / 2);
  const isWide = across > up;
  const halves = [
    partBetween(region, least, isWide ? surfacePoint(middle.u, most.v) : surfacePoint(most.u, middle.v)),
    partBetween(region, isWide ? surfacePoint(middle.u, least.v) : surfacePoint(least.u, middle.v), most),
  ];
  return halves.flatMap((half) => boxesOver(half, halvings - 1));
}

/** Finds the ground of a surface and a fitting; null where making it would take more than there is. */
export type GroundFor = (surface: Surface, fitting: Fitting) => Ground | null;

/** Makes each once, however many loudspeakers ask for it. */
export function groundsFinder(efforts: Efforts): GroundFor {
  const known = new Map<string, Ground>();
  return (surface, fitting) => {
    const key = JSON.stringify([surface.name, fitting]);
    const ground = known.get(key) ?? within(efforts.making, () => groundOf(surface, fitting, efforts));
    if (ground !== null) known.set(key, ground);
    return ground;
  };
}

/** What openings whose places are settled take away. */
export const takenByNeighbours = (neighbours: readonly Mounted[], fitting: Fitting): readonly Taken[] =>
  neighbourObstacles(neighbours, fitting).map(takenOf);
