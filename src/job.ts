import { type Cabling, cablingOf } from "./cable/cabling.js";
import { check, mustNotCutBy } from "./check/check.js";
import type { Gap } from "./check/gap.js";
import type { Finding } from "./findings/finding.js";
import { InternalError } from "./findings/internal-error.js";
import type { SurfacePoint, Vector } from "./geometry/vector.js";
import { type Aim, aimOf } from "./listen/aim.js";
import { type Coverage, coverageOf } from "./listen/covered.js";
import { type Direction, directionFrom } from "./listen/direction.js";
import { furthestOf, type Listening, listeningOf } from "./listen/heard.js";
import { type Mounted, mountedIn } from "./listen/mounted.js";
import { bayOf } from "./place/bay.js";
import { nearestGap, sideGaps } from "./place/gaps.js";
import { type Placing, placeAll } from "./place/place.js";
import type { Path, Room, Seat, Speaker, Surface, Tape } from "./room/room.js";

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
  /** Ways, lengths, sizes, holes and spools of all cables; null where no equipment is given. */
  readonly cabling: Cabling | null;
  /** How evenly every area is filled. */
  readonly coverage: readonly Coverage[];
  /** The answer to every `at: best`; its places are among the openings. */
  readonly placing: Placing;
}

export type LocatedFinding = Finding & { readonly line: number; readonly column: number };

/** One speaker where it is to be cut, with everything computed about it. */
export interface Opening {
  readonly speaker: Speaker;
  readonly surface: Surface;
  readonly placed: "given" | "best";
  /** Centre of the opening on the surface. */
  readonly centre: SurfacePoint;
  /** The two tapes that fix it, as typed or as chosen for its best place; to the faces that the file's tapes hook on. */
  readonly tapes: readonly [Tape, Tape];
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
export function answerRoom(asked: Asked): Job {
  const { file, room, locate } = asked;
  const placing = placeAll(room);
  const mounted = allMounted(room, placing);
  const cabling = cablingOf(room, mounted);
  const findings = check(room, mounted, { placing, cabling })
    .map((finding): LocatedFinding => ({ ...finding, ...locate(finding.path) }))
    .sort((a, b) => a.line - b.line || a.column - b.column);
  let coverage: readonly Coverage[] | null = null;
  return {
    file,
    get fingerprint() {
      return asked.fingerprint;
    },
    room,
    findings,
    placing,
    cabling,
    // `check` tells none: listened for when first asked for.
    get coverage() {
      coverage ??= coverageOf(room, mounted);
      return coverage;
    },
    openings: openingsOf(room, mounted, { findings, placing }),
  };
}

/** Those that have a position in the file and those that were placed, in its order. */
function allMounted(room: Room, { placed }: Placing): readonly Mounted[] {
  const mounted = [...mountedIn(room), ...placed.map((one) => one.mounted)];
  const byId = new Map(mounted.map((one) => [one.speaker.id, one]));
  return room.speakers.flatMap(({ id }) => byId.get(id) ?? []);
}

interface Answered {
  readonly findings: readonly Finding[];
  readonly placing: Placing;
}

function openingsOf(
  room: Room,
  all: readonly Mounted[],
  { findings, placing }: Answered,
): readonly Opening[] {
  const asked: AllAsked = {
    room,
    placed: new Map(placing.placed.map(({ mounted, tapes }) => [mounted.speaker.id, tapes])),
    furthest: furthestOf(room, all),
    mustNotCut: mustNotCutBy(findings),
  };
  return all.map((mounted) => openingOf(mounted, asked));
}

/** What is asked of every opening, worked out once. */
interface AllAsked {
  readonly room: Room;
  readonly placed: ReadonlyMap<string, readonly [Tape, Tape]>;
  readonly furthest: ReadonlyMap<Seat, number>;
  readonly mustNotCut: (mounted: Mounted) => boolean;
}

function tapesOf({ speaker }: Mounted, { placed }: AllAsked): readonly [Tape, Tape] {
  if (speaker.position.kind === "given") return speaker.position.tapes;
  const found = placed.get(speaker.id);
  if (found === undefined) throw new InternalError(`${speaker.id} has an opening and no place`);
  return found;
}

function openingOf(mounted: Mounted, all: AllAsked): Opening {
  const { room } = all;
  let listening: Listening | null = null;
  return {
    ...mounted,
    placed: mounted.speaker.position.kind,
    tapes: tapesOf(mounted, all),
    gap: nearestGap(mounted),
    sides: sideGaps(mounted),
    bay: bayOf(mounted),
    direction: directionFrom(room.reference.ear, mounted.position),
    aim: aimOf(mounted, room.stage),
    // Of every seat, and `check` tells none of it: reckoned when first asked for.
    get listening() {
      listening ??= listeningOf(room, mounted, all.furthest);
      return listening;
    },
    mustNotCut: all.mustNotCut(mounted),
  };
}
