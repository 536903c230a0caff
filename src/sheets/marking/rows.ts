import type { SurfacePoint } from "../../geometry/vector.js";
import { repeats } from "../../place/run.js";
import type { Framing, Layout, Member, Surface } from "../../room/room.js";

export type Known = Extract<Framing, { kind: "known" }>;

/** What repeats on a surface in one layout: joists or studs, or the straps or channels that hang from them. */
export interface Row {
  readonly of: "joist" | "stud" | "strap" | "channel";
  readonly layout: Layout;
  /** Of length 1, to the right or up. */
  readonly direction: SurfacePoint;
  readonly members: readonly Member[];
}

/** Joists or studs first; none where the framing is unknown. */
export function rowsOf({ framing, kind }: Surface): readonly Row[] {
  if (framing.kind === "unknown") return [];
  const { layout, direction, members, straps } = framing;
  const own: Row = {
    of: kind === "ceiling" ? "joist" : "stud",
    layout,
    direction,
    members: members.filter(repeats),
  };
  if (straps === null) return [own];
  return [own, { of: straps.kind, ...straps, members: members.filter((each) => each.kind === straps.kind) }];
}

export const isAlongAxis = ({ direction }: Pick<Row, "direction">): boolean =>
  Math.max(Math.abs(direction.u), Math.abs(direction.v)) > 1 - 1e-9;

/** The axis that a row runs along, or the nearer one. */
export const axisOf = ({ direction }: Pick<Row, "direction">): "u" | "v" =>
  Math.abs(direction.u) > Math.abs(direction.v) ? "u" : "v";

export const isStrap = ({ kind }: Pick<Member, "kind">): boolean => kind === "strap" || kind === "channel";
