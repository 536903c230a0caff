import { degrees, type SurfacePoint } from "../geometry/vector.js";
import type { Room, Target } from "../room/room.js";
import { leanOf, offAxisDeg, offNormalDeg } from "./axis.js";
import { type FromRun, fromRunOf } from "./from-run.js";
import type { Mounted } from "./mounted.js";
import { type Sight, sightOf } from "./sight.js";

export type { FromRun, Sight };

export interface Aim {
  readonly target: string;
  /** Degrees anticlockwise from v as seen facing the surface, 0 to 360; null when straight or undefined. */
  readonly arrowDeg: number | null;
  /** Angle between the acoustic axis and the line to the target. */
  readonly offAxisDeg: number;
  /** Where the arrow's line meets the next wall at the ceiling line, as a tape from that wall's nearest corner. */
  readonly sight: Sight | null;
  /** The arrow against the members: fits one arrow only. Null without an arrow or without known framing. */
  readonly fromRun: FromRun | null;
}

/** Name of a target that is a bare point. */
export const POINT_TARGET = "point";

/** How the loudspeaker is to be turned and what that leaves; null where the file asks for no aim. */
export function aimOf(mounted: Mounted, stage: Room["stage"]): Aim | null {
  const { target } = mounted.speaker;
  if (target.kind === "none") return null;
  const lean = leanOf(mounted, target.at);
  return {
    target: nameOf(target),
    arrowDeg: lean === null ? null : arrowDegOf(lean),
    offAxisDeg: offAxisDeg(mounted, lean, target.at) ?? leftOnNormalDeg(mounted, target),
    sight: lean === null ? null : sightOf(mounted, lean, stage),
    fromRun: lean === null ? null : fromRunOf(mounted, lean),
  };
}

type Aimed = Exclude<Target, { kind: "none" }>;

const nameOf = (target: Aimed): string => (target.kind === "seat" ? target.name : POINT_TARGET);

/** With the target on the normal no lean is better than another: |t - angle(n, w)| is what the best of them leaves. */
function leftOnNormalDeg(mounted: Mounted, target: Aimed): number {
  return Math.abs(mounted.speaker.model.baffleTiltDeg - offNormalDeg(mounted, target.at));
}

/** Degrees anticlockwise from v, in [0, 360). */
export function arrowDegOf({ u, v }: SurfacePoint): number {
  const deg = degrees(Math.atan2(-u, v));
  return deg < 0 ? (deg + 360) % 360 : deg + 0;
}
