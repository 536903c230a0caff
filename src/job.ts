import { check, mustNotCut } from "./check/check.js";
import type { Gap } from "./check/gap.js";
import type { Finding } from "./findings/finding.js";
import type { SurfacePoint, Vector } from "./geometry/vector.js";
import { type Aim, aimOf } from "./listen/aim.js";
import { type Direction, directionFrom } from "./listen/direction.js";
import { type Listening, listeningOf } from "./listen/heard.js";
import { type Mounted, mountedIn } from "./listen/mounted.js";
import { bayOf } from "./place/bay.js";
import { nearestGap, sideGaps } from "./place/gaps.js";
import type { Path, Room, Speaker, Surface } from "./room/room.js";

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
  /** How every seat hears it, and the power that this takes. */
  readonly listening: Listening;
  /** True where an error stands on it or on its surface: never printed as one to cut. */
  readonly mustNotCut: boolean;
}

export interface Asked {
  /** The room file's name without its folder. */
  readonly file: string;
  /** SHA-256 of the room file, hex. */
  readonly fingerprint: string;
  readonly room: Room;
  /** Line and column of a place in the room file, both from 1. */
  locate(path: Path): { readonly line: number; readonly column: number };
}

/** The whole answer about a room: every opening that has a position, measured and checked; findings by their line. */
export function answerRoom({ file, fingerprint, room, locate }: Asked): Job {
  const mounted = mountedIn(room);
  const findings = check(room, mounted)
    .map((finding): LocatedFinding => ({ ...finding, ...locate(finding.path) }))
    .sort((a, b) => a.line - b.line || a.column - b.column);
  return {
    file,
    fingerprint,
    room,
    findings,
    openings: mounted.map((one) => openingOf(room, one, { mounted, findings })),
  };
}

interface Answered {
  readonly mounted: readonly Mounted[];
  readonly findings: readonly Finding[];
}

function openingOf(room: Room, mounted: Mounted, all: Answered): Opening {
  return {
    ...mounted,
    placed: mounted.speaker.position.kind,
    gap: nearestGap(mounted),
    sides: sideGaps(mounted),
    bay: bayOf(mounted),
    direction: directionFrom(room.reference.ear, mounted.position),
    aim: aimOf(mounted, room.stage),
    listening: listeningOf(room, mounted, all.mounted),
    mustNotCut: mustNotCut(mounted, all.findings),
  };
}
