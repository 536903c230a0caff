import { toWorld } from "../geometry/frame.js";
import type { SurfacePoint, Vector } from "../geometry/vector.js";
import { type Room, type Speaker, type Surface, surfaceNamed } from "../room/room.js";

/** A loudspeaker where it is to stand. */
export interface Mounted {
  readonly speaker: Speaker;
  readonly surface: Surface;
  /** Centre of the opening on the surface. */
  readonly centre: SurfacePoint;
  /** Centre of the opening on the finished face, in the world: where its sound comes from. */
  readonly position: Vector;
}

/** The loudspeaker with its opening's centre at `centre`; the board only shifts it along the normal. */
export function mount(speaker: Speaker, surface: Surface, centre: SurfacePoint): Mounted {
  return { speaker, surface, centre, position: toWorld(surface.frame, centre, surface.boardMm) };
}

/** The room's loudspeakers that have a position in the file, in its order. */
export function mountedIn(room: Room): readonly Mounted[] {
  return room.speakers.flatMap((speaker) => {
    const { position } = speaker;
    if (position.kind !== "given") return [];
    return [mount(speaker, surfaceNamed(room, speaker.surface), position.centre)];
  });
}
