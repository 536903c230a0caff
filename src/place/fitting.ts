import type { Shape } from "../geometry/shape.js";
import type { Mounted } from "../listen/mounted.js";
import type { Room, Speaker } from "../room/room.js";

/** What is to be let into a surface, and the room that it asks for. */
export interface Fitting {
  readonly opening: Shape;
  readonly flange: Shape;
  readonly depthMm: number;
  readonly clampReachMm: number;
  /** Gap asked for beyond the clamps. */
  readonly clearMm: number;
}

export function fittingOf({ opening, flange, model }: Speaker, { clearMm }: Room["checks"]): Fitting {
  return { opening, flange, depthMm: model.depthMm, clampReachMm: model.clampReachMm, clearMm };
}

/** The other loudspeakers on the same surface. */
export function neighboursOf(mounted: Mounted, all: readonly Mounted[]): readonly Mounted[] {
  return all.filter(
    ({ speaker, surface }) => surface.name === mounted.surface.name && speaker.id !== mounted.speaker.id,
  );
}

/** Those of the openings that may lie nearer to it than is asked for; all others are too far off for that. */
export function neighboursNear(
  { speaker, centre }: Mounted,
  among: readonly Mounted[],
  clearMm: number,
): readonly Mounted[] {
  const ownMm = reachMm(speaker) + clearMm;
  return among.filter((other) => {
    const mm = ownMm + reachMm(other.speaker);
    return Math.abs(other.centre.u - centre.u) <= mm && Math.abs(other.centre.v - centre.v) <= mm;
  });
}

/** Half of the longest way across its opening and its flange, and its clamps. */
export const reachMm = ({ opening, flange, model }: Pick<Speaker, "opening" | "flange" | "model">): number =>
  Math.max(longestMm(opening), longestMm(flange)) / 2 + model.clampReachMm;

/** The longest way across a shape. */
export const longestMm = (shape: Shape): number =>
  shape.kind === "round" ? shape.diameterMm : Math.hypot(shape.widthMm, shape.heightMm);
