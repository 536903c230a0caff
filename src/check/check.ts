import type { Cabling } from "../cable/cabling.js";
import type { Finding } from "../findings/finding.js";
import type { Mounted } from "../listen/mounted.js";
import { rememberedGrounds } from "../place/nearest-clear.js";
import { effortBeside, type Placing } from "../place/place.js";
import { type Room, surfaceNamed } from "../room/room.js";
import { MOST_LOOKS_FOR_FIXES } from "../standards/house-limits.js";
import { withAcceptances } from "./acceptance.js";
import { aimPastTilt, aimUndefined } from "./aiming.js";
import { boardRange } from "./board-range.js";
import { cablingFindings } from "./cabling.js";
import { crowdingIn } from "./crowding.js";
import { framingGap } from "./framing-gap.js";
import { framingUnknown } from "./framing-unknown.js";
import { jointThrough } from "./joints.js";
import { channelsOfLayout, outsideWindow } from "./layout.js";
import { tooClose } from "./neighbours.js";
import { meetsObstruction } from "./obstruction.js";
import { outsideSurface } from "./outside-surface.js";
import { areasNotPlaced, placingFindings } from "./placing.js";
import { secondSupport } from "./second-support.js";
import { fixedNear, type Rule, type Setting, type Subject, subjectOf } from "./subject.js";
import {
  edgeGivenAsCentre,
  framingAssumed,
  ratedAssembly,
  type SurfaceRule,
  strapsUnknown,
} from "./surfaces.js";
import { tooDeep } from "./too-deep.js";

/** What is looked at for each opening; a new rule is a new line. */
const RULES: readonly Rule[] = [
  outsideSurface,
  framingUnknown,
  framingGap,
  meetsObstruction,
  tooClose,
  tooDeep,
  boardRange,
  jointThrough,
  secondSupport,
  aimUndefined,
  aimPastTilt,
  outsideWindow,
];

const SURFACE_RULES: readonly SurfaceRule[] = [
  ratedAssembly,
  framingAssumed,
  strapsUnknown,
  edgeGivenAsCentre,
];

/**
 * Everything that stands on the room and its openings: the layout first, then surfaces, the openings in the file's
 * order, and what could not be placed or stands in no file yet.
 */
export function check(
  room: Room,
  mounted: readonly Mounted[],
  { placing, cabling }: { readonly placing: Placing; readonly cabling: Cabling | null },
): Finding[] {
  const ofSurfaces = surfacesAskedFor(room).flatMap((surface) =>
    SURFACE_RULES.flatMap((rule) => rule(room, surface)),
  );
  const openingsOn = new Map(
    room.surfaces.map(({ name }) => [name, mounted.filter(({ surface }) => surface.name === name)]),
  );
  const effort = effortBeside(placing, MOST_LOOKS_FOR_FIXES);
  const setting: Setting = {
    room,
    openingsOn,
    groundOf: rememberedGrounds(effort),
    effort,
    crowdingOf: crowdingIn(room),
    fixedNear: fixedNear(),
  };
  const subjects = mounted.map((one) => subjectOf(one, setting));
  const ofOpenings = subjects.flatMap((subject) => RULES.flatMap((rule) => rule(subject)));
  const findings = [
    ...channelsOfLayout(room),
    ...ofSurfaces,
    ...ofOpenings,
    ...centresNotLookedFor(subjects),
    ...placingFindings(placing),
    ...areasNotPlaced(room),
    ...(cabling === null ? [] : cablingFindings({ room, all: mounted, cabling })),
  ];
  return withAcceptances(findings, room.accept);
}

/** Said once the rules have asked for them all. */
function centresNotLookedFor(subjects: readonly Subject[]): Finding[] {
  const openings = subjects.filter((subject) => subject.isFixGivenUp()).length;
  if (openings === 0) return [];
  const nowhere = { speaker: null, surface: null, fix: null, accepted: null };
  const code = "centres-not-looked-for";
  return [{ ...nowhere, code, level: "note", figures: { openings }, path: ["speakers"] }];
}

function surfacesAskedFor(room: Room) {
  const names = new Set(room.speakers.map(({ surface }) => surface));
  return [...names].map((name) => surfaceNamed(room, name));
}

/** Tells whether an error stands on an opening or on its surface: it is never printed as one to cut. */
export function mustNotCutBy(findings: readonly Finding[]): (mounted: Mounted) => boolean {
  const errors = findings.filter(({ level }) => level === "error");
  const speakers = new Set(errors.map(({ speaker }) => speaker));
  const surfaces = new Set(errors.filter(({ speaker }) => speaker === null).map(({ surface }) => surface));
  return ({ speaker, surface }) => speakers.has(speaker.id) || surfaces.has(surface.name);
}
