import type { Finding } from "./findings/finding.js";
import type { SurfacePoint, Vector } from "./geometry/vector.js";
import type { Room, Speaker, Surface } from "./room/room.js";

/** The whole answer about one room, as plain data: what the sheets draw and `report` prints. */
export interface Job {
  /** The room file's name without its folder. */
  readonly file: string;
  /** SHA-256 of the room file, hex. */
  readonly fingerprint: string;
  readonly room: Room;
  /** One for each speaker of the room that has a position, in the file's order. */
  readonly openings: readonly Opening[];
  readonly findings: readonly LocatedFinding[];
}

export type LocatedFinding = Finding & { readonly line: number; readonly column: number };

/** One speaker where it is to be cut, with everything computed about it. */
export interface Opening {
  readonly speaker: Speaker;
  readonly surface: Surface;
  readonly placed: "given" | "best";
  /** Centre of the opening on the surface. */
  readonly centre: SurfacePoint;
  /** Centre of the opening on the finished face, in the world. */
  readonly position: Vector;
  /** Gap to the nearest member of all; null where framing is unknown. */
  readonly gap: Gap | null;
  /** Gap to the nearest member on each side across the members' run; null where there is none on that side. */
  readonly sides: { readonly before: Gap | null; readonly after: Gap | null };
  /** Bay counted from the wall that the framing is measured from, 1 first (before member 1); null where unknown. */
  readonly bay: { readonly number: number; readonly from: string } | null;
  readonly direction: Direction;
  readonly aim: Aim | null;
  /** True where an error stands on it or on its surface: never printed as one to cut. */
  readonly mustNotCut: boolean;
}

export interface Gap {
  /** Edge to edge in the framing plane; negative where the opening cuts the member. */
  readonly mm: number;
  readonly member: import("./findings/finding.js").MemberName;
}

/** From a seat's ear, as ITU-R BS.2051 counts: azimuth positive to the left in (-180, 180], elevation positive up. */
export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly distanceMm: number;
}

export interface Aim {
  readonly target: string;
  /** Degrees anticlockwise from v as seen facing the surface, 0 to 360; null when straight or undefined. */
  readonly arrowDeg: number | null;
  /** Angle between the acoustic axis and the line to the target. */
  readonly offAxisDeg: number;
  /** Where the arrow's line meets the next wall, as a tape from that wall's nearest corner. */
  readonly sight: { readonly wall: string; readonly from: string; readonly mm: number } | null;
  /** The arrow in words: from which end of the member, how many degrees, toward which wall; null without an arrow. */
  readonly fromRun: { readonly end: string; readonly degrees: number; readonly toward: string } | null;
}
