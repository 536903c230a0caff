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
