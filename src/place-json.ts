import { type FilledAreaJson, filledAreaJson } from "./areas-json.js";
import { InternalError } from "./findings/internal-error.js";
import type { Vector } from "./geometry/vector.js";
import type { Job, Opening } from "./job.js";
import {
  type DirectionJson,
  directionJson,
  jobJson,
  memberText,
  type RoomJson,
  type SpeakerJson,
} from "./job-json.js";
import { directionFrom } from "./listen/direction.js";
import type { Alternative, OtherBays, Place } from "./place/alternatives.js";
import { bayOf } from "./place/bay.js";
import { type Against, againstStandard } from "./place/best/asked.js";
import type { Filling } from "./place/cover/fill.js";
import type { Gap } from "./place/gaps.js";
import { keyOfTape } from "./room/file-keys.js";
import type { Room, Tape } from "./room/room.js";
import { exactLength } from "./units/exact.js";
import { wordsIn } from "./words/words.js";

/*
 * What `place` answers for machines: the answer about the room, and for each loudspeaker how it was placed and where
 * else it could be. Keys may be added, never renamed.
 */

const { hindrance } = wordsIn(["en"]).placing;

export interface PlacingJson extends RoomJson {
  readonly speakers: readonly (SpeakerJson & { readonly place: PlaceJson | null })[];
  readonly areas: readonly FilledAreaJson[];
}

export interface PlaceJson extends SpotJson {
  readonly preferred: { readonly azimuth: number; readonly elevation: number } | null;
  /** Gaps to the nearest member on each side across the run; null where there is none. */
  readonly between: { readonly before: GapJson | null; readonly after: GapJson | null };
  readonly in_the_way: readonly { readonly kind: string; readonly message: string }[];
  /** Ids of those that share its line from front to back. */
  readonly line: readonly string[];
  /** None unless asked for; null where there was too much to look at to look for this one's. */
  readonly alternatives: readonly AlternativeJson[] | null;
}

interface SpotJson {
  /** As the room file would write it. */
  readonly at: Readonly<Record<string, string>>;
  /** The same in millimetres. */
  readonly tapes: Readonly<Record<string, number>>;
  readonly bay: { readonly number: number; readonly from: string } | null;
  /** Angle from the preferred direction; null where the standard has none. */
  readonly off: number | null;
}

interface GapJson {
  readonly mm: number;
  readonly member: string;
}

export interface AlternativeJson extends SpotJson {
  /** The place itself is the first. */
  readonly rank: number;
  readonly position: Vector;
  readonly on_surface: { readonly u: number; readonly v: number };
  readonly direction: DirectionJson;
  readonly inside: boolean;
  /** How much further from the preferred direction than the place itself; negative where it is nearer. */
  readonly more: number | null;
  /** Where its partner goes with it. */
  readonly partner: { readonly id: string; readonly at: Readonly<Record<string, string>> } | null;
}

/** The object that `place` puts out; alternatives by the loudspeaker's id. */
export function placingJson(
  job: Job,
  alternatives: ReadonlyMap<string, OtherBays>,
  fillings: readonly Filling[],
): PlacingJson {
  const plain = jobJson(job);
  const speakers = plain.speakers.map((speaker) => {
    const opening = job.openings.find((one) => one.speaker.id === speaker.id);
    const found = alternatives.get(speaker.id) ?? (alternatives.has(speaker.id) ? null : []);
    return { ...speaker, place: opening === undefined ? null : placeJson(job, opening, found) };
  });
  const areas = job.coverage.map((coverage) => filledAreaJson(coverage, fillings, job.room.units));
  return { ...plain, speakers, areas };
}

function placeJson(job: Job, opening: Opening, alternatives: OtherBays): PlaceJson {
  const { room, placing } = job;
  const { id } = opening.speaker;
  const placed = placing.placed.find(({ mounted }) => mounted.speaker.id === id);
  const against = againstStandard(room, opening);
  const { before, after } = opening.sides;
  return {
    ...spotJson(room, opening, against),
    preferred: against && {
      azimuth: against.preferred.azimuthDeg,
      elevation: against.preferred.elevationDeg,
    },
    between: { before: before && gapJson(before), after: after && gapJson(after) },
    in_the_way: (placed?.inTheWay ?? []).map((one) => ({ kind: one.kind, message: hindrance(one) })),
    line: placed?.line ?? [],
    alternatives:
      alternatives === null
        ? null
        : alternatives.map((one, index) => alternativeJson(room, one, { rank: index + 2, id, against })),
  };
}

const gapJson = ({ mm, member }: Gap): GapJson => ({ mm, member: memberText(member) });

type Standing = Pick<Opening, "tapes" | "bay">;

function spotJson({ units }: Room, { tapes, bay }: Standing, against: Against | null): SpotJson {
  return {
    at: Object.fromEntries(atTexts(tapes, units)),
    tapes: Object.fromEntries(tapes.map(({ from, mm }) => [keyOfTape(from), mm])),
    bay,
    off: against === null ? null : against.cost.offDeg,
  };
}

/** Two tapes as a room file has them under `at`. */
export const atTexts = (
  tapes: readonly Tape[],
  units: Room["units"],
): readonly (readonly [string, string])[] =>
  tapes.map(({ from, mm }) => [keyOfTape(from), exactLength(mm, units)]);

interface Ranked {
  readonly rank: number;
  readonly id: string;
  readonly against: Against | null;
}

function alternativeJson(
  room: Room,
  { places }: Alternative,
  { rank, id, against }: Ranked,
): AlternativeJson {
  const own = places.find(({ mounted }) => mounted.speaker.id === id);
  const partner = places.find(({ mounted }) => mounted.speaker.id !== id);
  if (own === undefined) throw new InternalError(`an alternative of another loudspeaker than ${id}`);
  const { mounted, tapes, cost } = own;
  return {
    rank,
    ...spotJson(room, { tapes, bay: bayOf(mounted) }, own),
    position: mounted.position,
    on_surface: mounted.centre,
    direction: directionJson(directionFrom(room.reference.ear, mounted.position)),
    inside: cost.breaches === 0,
    more: against === null ? null : cost.offDeg - against.cost.offDeg,
    partner: partner === undefined ? null : partnerJson(room, partner),
  };
}

const partnerJson = ({ units }: Room, { mounted, tapes }: Place) => ({
  id: mounted.speaker.id,
  at: Object.fromEntries(atTexts(tapes, units)),
});
