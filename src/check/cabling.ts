import { type Hole, partedOver } from "../cable/boring.js";
import { type Cabling, routesToEach, type Ways, waysIn } from "../cable/cabling.js";
import { isWithin, thinnestOf } from "../cable/gauge.js";
import type { Boring } from "../cable/network.js";
import { type CableRun, sizesAtHand, wantedOf } from "../cable/run.js";
import { within } from "../effort.js";
import type { Finding, MemberName, OtherWay } from "../findings/finding.js";
import type { Mounted } from "../listen/mounted.js";
import type { Room, Speaker } from "../room/room.js";
import { JOIST_HOLE_EDGE_MM } from "../standards/boring-limits.js";

/** What is looked at: the room, where its loudspeakers are, and the cabling that this makes. */
interface Wired {
  readonly room: Room;
  readonly all: readonly Mounted[];
  readonly cabling: Cabling;
}

/** Everything about cable: thin runs and lost ways in the file's order, then what is bored. */
export function cablingFindings(wired: Wired): Finding[] {
  const { cabling, room } = wired;
  return [
    ...cabling.runs.flatMap((run) => tooThin(room, run)),
    ...(cabling.isTooMuch ? [notLookedFor(cabling.unreached.length)] : cabling.unreached.map(withoutWay)),
    ...worstOf(cabling.holes).flatMap((group) => boring(wired, group)),
  ];
}

const notLookedFor = (cables: number): Finding => ({
  ...UNPLACED,
  code: "cables-not-looked-for",
  level: "warning",
  figures: { cables },
  path: EQUIPMENT,
});

const withoutWay = ({ id, path }: Speaker): Finding => ({
  ...UNPLACED,
  code: "cable-without-way",
  level: "warning",
  figures: {},
  speaker: id,
  path,
});

const UNPLACED = { speaker: null, surface: null, fix: null, accepted: null } as const;

function tooThin(room: Room, run: CableRun): Finding[] {
  const { size, loss, limitDb, lengthMm, speaker } = run;
  if (size === null || loss === null || isWithin(loss.lossDb, limitDb)) return [];
  const wanted = wantedOf(room, speaker, lengthMm);
  const enough = wanted === null ? null : thinnestOf(sizesAtHand(room), wanted);
  return [
    {
      ...UNPLACED,
      code: "cable-too-thin",
      level: "warning",
      figures: { size, lossDb: loss.lossDb, limitDb, lengthMm, enough },
      speaker: speaker.id,
      path: speaker.path,
    },
  ];
}

/** Holes of one kind of member of one surface with one kind of verdict, the largest first. */
interface HoleGroup {
  readonly worst: Hole;
  readonly holes: readonly Hole[];
}

function worstOf(holes: readonly Hole[]): readonly HoleGroup[] {
  const groups = new Map<string, Hole[]>();
  for (const hole of holes.filter(({ verdict }) => verdict.kind !== "allowed")) {
    const key = [hole.surface, hole.member.kind, hole.verdict.kind].join(" ");
    groups.set(key, [...(groups.get(key) ?? []), hole]);
  }
  return [...groups.values()].flatMap((group) => {
    const [worst] = [...group].sort((a, b) => b.speakers.length - a.speakers.length);
    return worst === undefined ? [] : [{ worst, holes: group }];
  });
}

const EQUIPMENT = ["equipment"] as const;

function boring(wired: Wired, { worst, holes }: HoleGroup): Finding[] {
  const members = new Set(holes.map(({ member }) => member)).size;
  const member = nameOf(worst);
  const common = { ...UNPLACED, level: "warning", path: EQUIPMENT } as const;
  if (worst.verdict.kind === "by-maker") {
    return [{ ...common, code: "engineered-member-bored", figures: { member, members } }];
  }
  const { mostMm } = worst.verdict;
  const another = partedWay(worst, wired.cabling, mostMm) ?? wayRound(wired, holes);
  const figures = {
    member,
    members,
    cables: worst.speakers.length,
    holeMm: worst.diameterMm,
    mostMm,
    another,
  };
  return [{ ...common, code: "bored-hole-too-large", figures }];
}

const nameOf = ({ surface, member }: Hole): MemberName => ({
  surface,
  kind: member.kind,
  number: member.number,
});

function partedWay({ speakers }: Hole, { runs, cableMm }: Cabling, mostMm: number): OtherWay | null {
  const isFour = runs.some((run) => speakers.includes(run.speaker.id) && run.conductors > 2);
  const parted = partedOver(speakers.length, isFour ? cableMm.four : cableMm.two, mostMm);
  return parted === null ? null : { kind: "parted", ...parted, apartMm: JOIST_HOLE_EDGE_MM };
}

/** A way for each of the cables that bores none of these members; null where one of them has none. */
function wayRound(wired: Wired, holes: readonly Hole[]): OtherWay | null {
  const { room, all } = wired;
  if (room.equipment === null) return null;
  const ways = waysIn(room, all, room.equipment.at);
  const ids = new Set(holes.flatMap(({ speakers }) => speakers));
  const kinds = new Set(holes.map(({ member }) => member.kind));
  const surfaces = new Set(holes.map(({ surface }) => surface));
  const boring: Boring = {
    isForbidden: (field, { kind }) => surfaces.has(field.surface.name) && kinds.has(kind),
    unwanted: () => 1,
    everyBay: true,
  };
  const led = all.filter(({ speaker }) => ids.has(speaker.id));
  return within(ways.effort, () => longerBy(wired, { ways, led, boring }));
}

interface Round {
  readonly ways: Ways;
  readonly led: readonly Mounted[];
  readonly boring: Boring;
}

function longerBy({ cabling }: Wired, { ways, led, boring }: Round): OtherWay | null {
  let longerMm = Number.NEGATIVE_INFINITY;
  let index = 0;
  for (const route of routesToEach(ways, led, boring)) {
    const run = cabling.runs.find(({ speaker }) => speaker.id === led[index]?.speaker.id);
    if (route === null || run === undefined) return null;
    longerMm = Math.max(longerMm, route.lengthMm - run.routeMm);
    index += 1;
  }
  return { kind: "route", longerMm };
}
