import { type DistanceMm, distanceFrom } from "../../geometry/distance-from.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Mounted } from "../../listen/mounted.js";
import type { Surface } from "../../room/room.js";
import { clearTest } from "../clear.js";
import type { Fitting } from "../fitting.js";
import {
  jointObstacles,
  neighbourObstacles,
  type Obstacle,
  obstaclesOn,
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
  /** The exact rule. */
  readonly isClear: (centre: SurfacePoint) => boolean;
}

const takenOf = (obstacle: Obstacle): Taken => ({
  what: obstacle.what,
  distanceMm: distanceFrom(takenBy(obstacle)),
});

function groundOf(surface: Surface, fitting: Fitting): Ground {
  return {
    surface,
    fitting,
    taken: obstaclesOn(surface, fitting, []).map(takenOf),
    overJoints: jointObstacles(surface, fitting).map(takenOf),
    isClear: clearTest(surface, fitting, []),
  };
}

/** Finds the ground of a surface and a fitting, each once however many loudspeakers ask for it. */
export function groundsFinder(): typeof groundOf {
  const known = new Map<string, Ground>();
  return (surface, fitting) => {
    const key = JSON.stringify([surface.name, fitting]);
    const ground = known.get(key) ?? groundOf(surface, fitting);
    known.set(key, ground);
    return ground;
  };
}

/** What openings whose places are settled take away. */
export const takenByNeighbours = (neighbours: readonly Mounted[], fitting: Fitting): readonly Taken[] =>
  neighbourObstacles(neighbours, fitting).map(takenOf);
