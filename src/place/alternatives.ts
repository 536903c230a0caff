import { Effort, within } from "../effort.js";
import { distanceFrom } from "../geometry/distance-from.js";
import { inner, plus, quarterTurn, surfacePoint, times } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import { preferredHeading } from "../listen/preferred.js";
import type { Room, Tape } from "../room/room.js";
import { type Against, againstStandard, askedIn } from "./best/asked.js";
import { alsoKept } from "./best/asking.js";
import { askingsOf, type Decision } from "./best/decision.js";
import { type GroundFor, groundsFinder, type Taken } from "./best/ground.js";
import { mountedOf } from "./best/meeting.js";
import { pairUp } from "./best/pairing.js";
import { type Solved, solve } from "./best/solve.js";
import { framingAt } from "./gaps.js";
import { repeats } from "./run.js";

/** A place in another bay, with all other openings where they are. */
export interface Alternative {
  readonly places: readonly Place[];
}

/** One loudspeaker at a place; of a pair both. */
export interface Place extends Against {
  readonly mounted: Mounted;
  readonly tapes: readonly [Tape, Tape];
}

export interface WhatIf {
  readonly room: Room;
  /** Every opening where it is. */
  readonly mounted: readonly Mounted[];
  /** How many other bays to look for, for each. */
  readonly count: number;
  /** Ids of those that stay as they are. */
  readonly locked: readonly string[];
  /** How much may be looked at for all of them; without end unless said. */
  readonly effort?: Effort;
}

/** Of one loudspeaker the best first, each in a bay by itself; null where there was too much to look at. */
export type OtherBays = readonly Alternative[] | null;

/**
 * For each loudspeaker by its id the best places in other bays than its own. A pair moves together, told of both; nothing
 * is told of those that are locked, or that no direction places.
 */
export function alternativesOf(whatIf: WhatIf): ReadonlyMap<string, OtherBays> {
  const { effort = new Effort() } = whatIf;
  const groundFor = groundsFinder({ making: effort, looking: effort });
  const told = new Map<string, OtherBays>();
  for (const { speaker, surface } of whatIf.mounted) {
    if (told.has(speaker.id) || whatIf.locked.includes(speaker.id)) continue;
    if (preferredHeading(whatIf.room, speaker.channel) === null || surface.framing.kind === "unknown")
      continue;
    const found = effort.isSpent ? null : within(effort, () => bothOtherBays(whatIf, speaker.id, groundFor));
    for (const id of found?.ids ?? [speaker.id]) told.set(id, found?.bays ?? null);
  }
  return told;
}

interface Found {
  /** Its own id, and its partner's where both move. */
  readonly ids: readonly string[];
  readonly bays: readonly Alternative[];
}

function bothOtherBays(whatIf: WhatIf, id: string, groundFor: GroundFor): Found | null {
  const decision = decisionFor(whatIf, id, groundFor);
  if (decision === null) return null;
  const ids = askingsOf(decision).map(({ speaker }) => speaker.id);
  return { ids, bays: otherBays(whatIf, decision) };
}

/** The loudspeaker, with its partner where both are matched and neither is locked, beside all others. */
function decisionFor({ room, mounted, locked }: WhatIf, id: string, groundFor: GroundFor): Decision | null {
  const partner = partnerIn(room, id);
  const moving = [id, ...(partner === null || locked.includes(partner) ? [] : [partner])];
  const others = mounted.filter(({ speaker }) => !moving.includes(speaker.id));
  const asked = room.speakers.filter((one) => moving.includes(one.id)).map(askedIn(room, others, groundFor));
  const paired = pairUp(
    room,
    asked.flatMap(({ asking }) => asking ?? []),
    others,
  );
  const [own] = paired.filter(({ decision }) => askingsOf(decision).some(({ speaker }) => speaker.id === id));
  return own?.decision ?? null;
}

function partnerIn({ speakers }: Room, id: string): string | null {
  const own = speakers.find((speaker) => speaker.id === id)?.position;
  const named = own?.kind === "best" ? own.mirror : null;
  const naming = speakers.find(({ position }) => position.kind === "best" && position.mirror === id);
  return named ?? naming?.id ?? null;
}

function otherBays(whatIf: WhatIf, decision: Decision): readonly Alternative[] {
  const own = whatIf.mounted.find(({ speaker }) => speaker.id === decision.leader.speaker.id);
  const found: Alternative[] = [];
  let ruledOut: readonly Taken[] = own === undefined ? [] : bayOfIt(own);
  while (found.length < whatIf.count) {
    const solved = solve(whatIf.room, without(decision, ruledOut));
    const [leader] = solved === null ? [] : mountedOf(solved);
    if (solved === null || leader === undefined) break;
    found.push({ places: placesOf(whatIf.room, solved) });
    ruledOut = [...ruledOut, ...bayOfIt(leader)];
  }
  return found;
}

const without = (decision: Decision, bays: readonly Taken[]): Decision => ({
  ...decision,
  leader: alsoKept(decision.leader, bays),
});

function placesOf(room: Room, solved: Solved): readonly Place[] {
  return mountedOf(solved).flatMap((mounted, index) => {
    const against = againstStandard(room, mounted);
    const tapes = solved.found.tapes[index];
    return against === null || tapes === undefined ? [] : [{ mounted, tapes, ...against }];
  });
}

/** Further than any surface reaches. */
const FAR_MM = 1e7;

/** The whole bay that an opening's centre lies in, from one repeating member's middle to the next. */
function bayOfIt(mounted: Mounted): readonly Taken[] {
  const framing = framingAt(mounted);
  if (framing === null) return [];
  const across = quarterTurn(framing.direction);
  const at = inner(mounted.centre, across);
  const lines = framing.members.filter(repeats).map(({ from }) => inner(from, across));
  const before = Math.max(at - FAR_MM, ...lines.filter((line) => line <= at));
  const after = Math.min(at + FAR_MM, ...lines.filter((line) => line > at));
  const core = stripBetween(framing.direction, before, after);
  return [{ what: { kind: "ruled-out" }, distanceMm: distanceFrom({ core, radiusMm: 0 }) }];
}

function stripBetween(along: SurfacePoint, before: number, after: number): readonly SurfacePoint[] {
  const across = quarterTurn(along);
  const corner = (alongMm: number, acrossMm: number): SurfacePoint =>
    plus(plus(surfacePoint(0, 0), times(along, alongMm)), times(across, acrossMm));
  return [corner(-FAR_MM, before), corner(FAR_MM, before), corner(FAR_MM, after), corner(-FAR_MM, after)];
}
