import type { Effort } from "../../effort.js";
import { distanceMm } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { type Mounted, mount } from "../../listen/mounted.js";
import { type CoveredArea, type Room, type Speaker, type Surface, surfaceNamed } from "../../room/room.js";
import { reachMm } from "../fitting.js";
import type { GroundOf } from "../nearest-clear.js";

/** A ceiling as the loudspeakers of one area find it, beside those that stand there already. */
export interface Site {
  readonly room: Room;
  readonly area: CoveredArea;
  readonly surface: Surface;
  readonly speaker: Speaker;
  readonly standing: readonly Mounted[];
  readonly groundOf: GroundOf;
  /** How long places on it may be looked for. */
  readonly effort: Effort;
}

/** Areas of one model on one ceiling share what they find there where they are given one `groundOf`. */
export function siteOf(
  room: Room,
  area: CoveredArea,
  standing: readonly Mounted[],
  { groundOf, effort }: Pick<Site, "groundOf" | "effort">,
): Site {
  const surface = surfaceNamed(room, area.surface);
  return {
    room,
    area,
    surface,
    speaker: speakerOf(area),
    standing: standing.filter((each) => each.surface.name === surface.name),
    groundOf,
    effort,
  };
}

/** One of the area's own with its centre there. */
export const mountedAt = ({ speaker, surface }: Site, centre: SurfacePoint): Mounted =>
  mount(speaker, surface, centre);

/** Those that one of the area's own may meet within a distance of a point. */
export function meetableNear(
  { room, speaker }: Site,
  among: readonly Mounted[],
  { at, withinMm }: { readonly at: SurfacePoint; readonly withinMm: number },
): readonly Mounted[] {
  const ownMm = withinMm + reachMm(speaker) + room.checks.clearMm;
  return among.filter((other) => distanceMm(other.centre, at) <= ownMm + reachMm(other.speaker));
}

/** One of those that fill the area, before it has a number and a place. */
const speakerOf = ({ name, model, surface, prefix, path }: CoveredArea): Speaker => ({
  id: prefix,
  channel: name,
  area: name,
  model,
  surface,
  position: { kind: "best", hold: [], mirror: null },
  turnDeg: 0,
  opening: model.opening,
  flange: model.flange,
  target: { kind: "none" },
  amplifierChannel: null,
  cable: { gauge: null, conductors: null, lengthMm: null, areaMm2: null, wiring: null, via: [] },
  path,
});
