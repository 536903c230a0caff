import { angleBetweenDeg, subtract, type Vector } from "../../geometry/vector.js";
import { directionFrom } from "../../listen/direction.js";
import { breachesOf, type Window } from "../../listen/window.js";

/** What is wanted of a place: a direction from the reference seat, and the ones that are allowed. */
export interface Wish {
  readonly ear: Vector;
  /** Of length 1, from the ear. */
  readonly preferred: Vector;
  /** Null where the room's layout sets none. */
  readonly window: Window | null;
  /** What lying over a joint of the board counts as. */
  readonly jointDeg: number;
}

export interface Cost {
  /** Angle at the ear from the preferred direction. */
  readonly offDeg: number;
  /** How many of azimuth and elevation lie outside the window. */
  readonly breaches: number;
  /** What lying over joints of the board counts as; 0 where it does not. */
  readonly jointDeg: number;
}

/** A place and whether it lies over a joint. */
export interface Stood {
  readonly position: Vector;
  readonly isOverJoint: boolean;
}

/** What a place is from its wish. */
export function costAt({ ear, preferred, window, jointDeg }: Wish, { position, isOverJoint }: Stood): Cost {
  const direction = directionFrom(ear, position);
  return {
    offDeg: angleBetweenDeg(preferred, subtract(position, ear)),
    breaches: window === null ? 0 : breachesOf(window, direction).length,
    jointDeg: isOverJoint ? jointDeg : 0,
  };
}

/** More than any angle: inside the window always comes before nearer to the preferred direction. */
const BREACH_DEG = 1000;

/**
 * One figure to compare places by: degrees from the preferred direction, what joints count as, and far more for each
 * breach.
 */
export const totalDeg = ({ offDeg, breaches, jointDeg }: Cost): number =>
  breaches * BREACH_DEG + offDeg + jointDeg;

/** Several loudspeakers that are decided together cost what the worst of them does; every breach and joint counts. */
export function worstOf(costs: readonly Cost[]): Cost {
  return {
    offDeg: Math.max(...costs.map(({ offDeg }) => offDeg)),
    breaches: costs.reduce((sum, { breaches }) => sum + breaches, 0),
    jointDeg: costs.reduce((sum, { jointDeg }) => sum + jointDeg, 0),
  };
}
