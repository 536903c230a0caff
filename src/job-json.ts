import { type AreaJson, areaJson } from "./areas-json.js";
import { type CableJson, type CablingJson, cableJson, cablingJson } from "./cabling-json.js";
import type { Complaint } from "./findings/complaint.js";
import type { Fix, Level, MemberName } from "./findings/finding.js";
import type { Vector } from "./geometry/vector.js";
import type { Job, LocatedFinding, Opening } from "./job.js";
import type { Aim } from "./listen/aim.js";
import type { Direction } from "./listen/direction.js";
import type { Heard } from "./listen/heard.js";
import { softestDb } from "./listen/trim.js";
import { isInWindow, windowOf } from "./listen/window.js";
import { keyOfTape } from "./room/file-keys.js";
import type { Path, Room, Speaker, UnitSystem } from "./room/room.js";
import {
  type CoverageJson,
  coverageJson,
  type EarJson,
  earsJson,
  type ListeningAtJson,
  type ListeningJson,
  listeningAtJson,
  listeningJson,
  type ShapeJson,
  shapeJson,
} from "./sound-json.js";
import type { RangeDeg } from "./standards/loudspeaker-layouts.js";
import { complaintText } from "./words/complaint-text.js";
import { findingText } from "./words/finding-text.js";
import { measureIn } from "./words/measure.js";
import { wordsIn } from "./words/words.js";

/*
 * The answer about a room for machines: millimetres, degrees, full doubles, messages in English. Keys may be added,
 * never renamed. What is not computed is null.
 */

/** Format of this object; it is the room file's own number. */
const FORMAT = 1;

const ENGLISH = wordsIn(["en"]);

export interface RoomJson {
  readonly baymark: typeof FORMAT;
  readonly file: string;
  readonly fingerprint: string | null;
  readonly speakers: readonly SpeakerJson[];
  /** Areas that many loudspeakers fill evenly. */
  readonly areas: readonly AreaJson[];
  /** Holes and spools of all cables; null where no equipment is given. */
  readonly cabling: CablingJson | null;
  readonly findings: readonly FindingJson[];
  /** What the sound is reckoned for; null where the file cannot be used. */
  readonly listening: ListeningAtJson | null;
  readonly seats: readonly EarJson[];
}

export interface SpeakerJson {
  readonly id: string;
  readonly channel: string;
  /** The area that it is one of those that fill. */
  readonly area: string | null;
  readonly model: string;
  readonly surface: string;
  readonly placed: "given" | "best";
  /** Centre of the opening on the finished face; null until there is a position. */
  readonly position: Vector | null;
  readonly on_surface: { readonly u: number; readonly v: number } | null;
  readonly gap: { readonly mm: number; readonly member: string } | null;
  readonly direction: DirectionJson | null;
  /** Null without a layout; `inside` is null until there is a position. */
  readonly window: WindowJson | null;
  readonly aim: AimJson | null;
  readonly seats: readonly SeatJson[];
  /** Null until there is a position. */
  readonly listening: ListeningJson | null;
  /** Null where no equipment is given, until there is a position, and where no way leads there. */
  readonly cable: CableJson | null;
  /** As it lies on its surface, after `turn`. */
  readonly opening: ShapeJson;
  readonly flange: ShapeJson;
  /** Null until there is a position. */
  readonly coverage: CoverageJson | null;
}

/** What the layout allows the channel, tolerance taken in; azimuth from the first anticlockwise to the second. */
export interface WindowJson {
  readonly azimuth: RangeDeg;
  readonly elevation: RangeDeg;
  readonly inside: boolean | null;
}

export interface DirectionJson {
  readonly azimuth: number;
  readonly elevation: number;
  readonly distance: number;
}

export interface AimJson {
  readonly target: string;
  readonly arrow: number | null;
  readonly off_axis: number;
  readonly sight: { readonly wall: string; readonly from: string; readonly mm: number } | null;
}

export interface SeatJson extends DirectionJson {
  readonly name: string;
  /** Null where nobody can say which way the axis points. */
  readonly off_axis: number | null;
  /** Whether the direction lies in the channel's window, as if the layout were built round this seat. */
  readonly inside: boolean | null;
  /** Against the reference seat, dB. */
  readonly level: number;
  /** To align with the furthest loudspeaker at this seat, ms, and the nearest whole samples at 48 kHz. */
  readonly delay: number;
  readonly samples: number;
}

export interface FindingJson {
  readonly code: string;
  readonly level: Level;
  readonly message: string;
  readonly line: number;
  readonly column: number;
  readonly path: Path;
  readonly speaker: string | null;
  readonly fix: FixJson | null;
  readonly accepted: string | null;
  /** Only where one finding tells of many: how many besides those that have findings of their own. */
  readonly others?: { readonly count: number; readonly errors: number };
}

export interface FixJson {
  /** Tapes as the room file writes them: a wall's name, `up` or `down`, and the length in the room's first units. */
  readonly at: Readonly<Record<string, string>>;
  readonly u: number;
  readonly v: number;
}

/** The object that `check`, `report` and `print` put out for a room that can be used. */
export function jobJson(job: Job): RoomJson {
  const { file, fingerprint, room, openings, coverage, cabling, findings } = job;
  const openingOf = new Map(openings.map((opening) => [opening.speaker.id, opening]));
  const softest = softestDb(
    openings.flatMap(({ speaker, listening }) => (speaker.area === null ? listening : [])),
  );
  return {
    baymark: FORMAT,
    file,
    fingerprint,
    speakers: room.speakers.map((speaker) => {
      const opening = openingOf.get(speaker.id);
      return opening === undefined ? unplacedJson(room, speaker) : openingJson(job, opening, softest);
    }),
    areas: coverage.map(areaJson),
    cabling: cabling === null ? null : cablingJson(cabling),
    findings: findings.map((finding) => findingJson(finding, room.units)),
    listening: listeningAtJson(room),
    seats: earsJson(room),
  };
}

const named = ({ id, channel, area, model, surface }: Speaker) => ({
  id,
  channel,
  area,
  model: model.name,
  surface,
});

function unplacedJson(room: Room, speaker: Speaker): SpeakerJson {
  return {
    ...named(speaker),
    placed: speaker.position.kind,
    position: null,
    on_surface: null,
    gap: null,
    direction: null,
    window: windowJson(room, speaker, null),
    aim: null,
    seats: [],
    listening: null,
    cable: null,
    ...hardware(speaker),
    coverage: null,
  };
}

const hardware = ({ opening, flange }: Speaker) => ({
  opening: shapeJson(opening),
  flange: shapeJson(flange),
});

function openingJson({ room, cabling }: Job, opening: Opening, softest: number): SpeakerJson {
  const { speaker, placed, position, centre, gap, direction, aim, listening } = opening;
  return {
    ...named(speaker),
    placed,
    position,
    on_surface: centre,
    gap: gap === null ? null : { mm: gap.mm, member: memberText(gap.member) },
    direction: directionJson(direction),
    window: windowJson(room, speaker, direction),
    aim: aim === null ? null : aimJson(aim),
    seats: listening.heard.map(seatJson),
    listening: listeningJson(opening, softest),
    cable: cableJson(cabling, speaker),
    ...hardware(speaker),
    coverage: coverageJson(opening, room),
  };
}

function windowJson(room: Room, { channel }: Speaker, direction: Direction | null): WindowJson | null {
  const window = windowOf(room, channel);
  if (window === null) return null;
  return {
    azimuth: window.azimuthDeg,
    elevation: window.elevationDeg,
    inside: direction === null ? null : isInWindow(window, direction),
  };
}

/** `ceiling 7`; structure that does not repeat counts apart, so it says what it is: `front top-plate 1`. */
export function memberText({ surface, kind, number }: MemberName): string {
  const repeats = kind === "joist" || kind === "stud";
  return [surface, ...(repeats ? [] : [kind]), number].join(" ");
}

export const directionJson = ({
  azimuthDeg,
  elevationDeg,
  distanceMm,
}: Opening["direction"]): DirectionJson => ({
  azimuth: azimuthDeg,
  elevation: elevationDeg,
  distance: distanceMm,
});

const aimJson = ({ target, arrowDeg, offAxisDeg, sight }: Aim): AimJson => ({
  target,
  arrow: arrowDeg,
  off_axis: offAxisDeg,
  sight,
});

const seatJson = (heard: Heard): SeatJson => ({
  name: heard.seat.name,
  ...directionJson(heard.direction),
  inside: heard.inside,
  off_axis: heard.offAxisDeg,
  level: heard.levelDb,
  delay: heard.delayMs,
  samples: heard.samples,
});

export function findingJson(finding: LocatedFinding, units: UnitSystem): FindingJson {
  const { code, level, line, column, path, speaker, fix, accepted } = finding;
  return {
    code,
    level,
    message: findingText(ENGLISH, measureIn(units), finding),
    line,
    column,
    path,
    speaker,
    fix: fix === null ? null : fixJson(fix, units),
    accepted,
    ...othersJson(finding),
  };
}

function othersJson({ figures }: LocatedFinding): Pick<FindingJson, "others"> {
  return "others" in figures ? { others: { count: figures.others, errors: figures.errors } } : {};
}

function fixJson({ at, u, v }: Fix, units: UnitSystem): FixJson {
  const { tape } = measureIn(units);
  const tapes = Object.entries(at).map(([from, mm]) => [keyOfTape(from), tape(mm)]);
  return { at: Object.fromEntries(tapes), u, v };
}

/** The object for a room file that cannot be used: why, as errors, and no loudspeakers. */
export function complaintsJson(file: string, complaints: readonly Complaint[], message?: string): RoomJson {
  const unreadable = message === undefined ? [] : [unusable("unreadable-file", message, FIRST_PLACE)];
  const findings = complaints.map((complaint) =>
    unusable(complaint.code, complaintText(ENGLISH, complaint), complaint),
  );
  return {
    baymark: FORMAT,
    file,
    fingerprint: null,
    speakers: [],
    areas: [],
    cabling: null,
    findings: [...unreadable, ...findings],
    listening: null,
    seats: [],
  };
}

const FIRST_PLACE = { line: 1, column: 1, path: [] };

function unusable(
  code: string,
  message: string,
  { line, column, path }: Pick<Complaint, "line" | "column" | "path">,
): FindingJson {
  return { code, level: "error", message, line, column, path, speaker: null, fix: null, accepted: null };
}
