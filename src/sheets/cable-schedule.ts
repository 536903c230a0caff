import type { Hole } from "../cable/boring.js";
import type { Cabling } from "../cable/cabling.js";
import { sizeGiven } from "../cable/run.js";
import type { Spool } from "../cable/spools.js";
import type { Cell, CellLine, Table } from "../drawing/table.js";
import { textBlock } from "../drawing/text-block.js";
import type { Speaker } from "../room/room.js";
import { cutFigure, diametersText, runFor, writtenAssumptions, writtenLeg } from "./cable-of.js";
import { cautionLines } from "./cautions.js";
import { figuresOf } from "./figures.js";
import { headed, type Part, rowsOf, whole } from "./flow.js";
import { MIDDLE_MM, main, middle, readingSheet, SMALL_MM, saying, small } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";
import { unbroken } from "./unbroken.js";

const lines = (...each: readonly CellLine[]): Cell => ({ kind: "lines", lines: each });

/** Every run with its length, size and way; what comes off which spool; and every hole to be bored. */
export function cableSchedule(order: Order): Sheet[] {
  const { speakers } = order.job.room;
  if (speakers.length === 0) return [];
  const { schedule } = order.words.cabling;
  const { cabling } = order.job;
  return [
    readingSheet(order, { name: "cables", title: schedule.title, use: schedule.use }, [
      saying(cabling === null ? schedule.noEquipment : lengthsSaid(order), "bold"),
      ...assumedSaid(order),
      whole((place) => cautionLines(order, ["look", "structure", "engineered", "power"], place)),
      rowsOf(runsTable(order)),
      ...(cabling === null ? [] : [...planParts(order, cabling), ...holeParts(order, cabling)]),
    ]),
  ];
}

/** What a length is made of, so that it can be checked by hand. */
function lengthsSaid(order: Order): string {
  const { loopMm, rackMm, sparePercent } = order.job.cabling?.ends ?? {
    loopMm: 0,
    rackMm: 0,
    sparePercent: 0,
  };
  return order.words.cabling.schedule.lengths(
    cutFigure(order, loopMm),
    cutFigure(order, rackMm),
    `${sparePercent} %`,
  );
}

function assumedSaid(order: Order): Part[] {
  const assumed = writtenAssumptions(order);
  return assumed.length === 0 ? [] : [saying(order.words.cabling.assumed(assumed))];
}

function runsTable(order: Order): Table {
  const { columns } = order.words.cabling.schedule;
  const { speakers } = order.job.room;
  return {
    capMm: SMALL_MM,
    columns: [
      { heading: columns.pulled, weight: 0, anchor: "middle" },
      { heading: columns.speaker, weight: 2 },
      { heading: columns.amplifier, weight: 1, leastMm: 16 },
      { heading: columns.cable, weight: 1, leastMm: 20 },
      { heading: columns.cut, weight: 1, leastMm: 24 },
      { heading: columns.loss, weight: 0 },
      { heading: columns.bored, weight: 0, anchor: "middle" },
    ],
    rows: speakers.map((speaker) => rowOf(order, speaker)),
    under: speakers.map((speaker) => wayLines(order, speaker)),
  };
}

function rowOf(order: Order, speaker: Speaker): Cell[] {
  const { words } = order;
  const run = runFor(order, speaker);
  const size = run?.size ?? sizeGiven(speaker);
  const conductors = speaker.cable.conductors ?? run?.conductors ?? null;
  const length = run?.lengthMm ?? speaker.cable.lengthMm;
  const { report } = words.cabling;
  return [
    { kind: "tick" },
    lines(middle(speaker.id), small(speaker.channel), small(words.frame.surface(speaker.surface))),
    speaker.amplifierChannel === null ? { kind: "write" } : lines(middle(speaker.amplifierChannel)),
    size === null || conductors === null
      ? { kind: "write" }
      : lines(
          middle(unbroken(words.cabling.cable(size, conductors))),
          ...(sizeGiven(speaker) === null ? [] : [small(report.given)]),
        ),
    length === null
      ? { kind: "write" }
      : lines(
          main(unbroken(cutFigure(order, length))),
          ...(speaker.cable.lengthMm === null ? [] : [small(report.given)]),
        ),
    run?.loss === undefined || run.loss === null
      ? ""
      : lines(
          small(unbroken(`${run.loss.lossDb.toFixed(2)} dB`)),
          small(unbroken(`${(100 * run.loss.shareOfLoad).toFixed(1)} %`)),
        ),
    run === null ? "" : run.bored === null ? report.unknown : String(run.bored),
  ];
}

function wayLines(order: Order, speaker: Speaker): CellLine[] {
  const run = runFor(order, speaker);
  if (run === null || run.legs.length === 0) return [];
  const { units } = order.job.room;
  const written = (mm: number): string => unbroken(figuresOf(mm, units).main);
  return [small(order.words.cabling.way(run.legs.map((leg) => writtenLeg(leg, written))))];
}

/** Spools in the order in which they are pulled from, the longest run of each first. */
function planParts(order: Order, { plan }: Cabling): Part[] {
  const { pull } = order.words.cabling.schedule;
  const table: Table = {
    capMm: SMALL_MM,
    columns: [
      { heading: pull.spool, weight: 0 },
      { heading: pull.of, weight: 1 },
      { heading: pull.runs, weight: 4 },
      { heading: pull.left, weight: 0 },
    ],
    rows: plan.spools.map((spool, index) => spoolRow(order, spool, index)),
  };
  const tooLong = plan.tooLong.map(({ speaker, lengthMm }) =>
    saying(order.words.cabling.report.tooLong(speaker, cutFigure(order, lengthMm)), "bold"),
  );
  return [
    headed((place) => textBlock(pull.title, { ...place, capMm: MIDDLE_MM, face: "bold" }), rowsOf(table)),
    ...tooLong,
  ];
}

function spoolRow(order: Order, spool: Spool, index: number): Cell[] {
  const { cable, report } = order.words.cabling;
  const runs = spool.runs.map(({ speaker, lengthMm }) =>
    unbroken(`${speaker} ${cutFigure(order, lengthMm)}`),
  );
  return [
    `${index + 1}`,
    lines(
      middle(unbroken(spool.size === null ? report.unknown : cable(spool.size, spool.conductors))),
      small(unbroken(cutFigure(order, spool.spoolMm))),
    ),
    runs.join(" · "),
    unbroken(cutFigure(order, spool.leftMm)),
  ];
}

/** Holes by surface and bundle: alike in a row of members, so one line tells them all. */
interface HoleGroup {
  readonly first: Hole;
  readonly holes: readonly Hole[];
}

function groupsOf(holes: readonly Hole[]): readonly HoleGroup[] {
  const groups = new Map<string, Hole[]>();
  for (const hole of holes) {
    const { surface, member, speakers, diameterMm, verdict } = hole;
    const key = JSON.stringify([surface, member.kind, [...speakers].sort(), diameterMm, verdict]);
    groups.set(key, [...(groups.get(key) ?? []), hole]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first === undefined ? [] : [{ first, holes: group }];
  });
}

const isAssumed = (cabling: Cabling | null): boolean => cabling?.cableMm.basis === "usual";

function holeParts(order: Order, cabling: Cabling): Part[] {
  const { holes } = cabling;
  if (holes.length === 0) return [];
  const { boring } = order.words.cabling.schedule;
  const table: Table = {
    capMm: SMALL_MM,
    columns: [
      { heading: boring.done, weight: 0, anchor: "middle" },
      { heading: boring.members, weight: 3 },
      { heading: boring.bit, weight: 0, leastMm: 16 },
      { heading: boring.cables, weight: 3 },
      { heading: boring.limit, weight: 3 },
    ],
    rows: groupsOf(holes).map((group) => holeRow(order, group)),
  };
  return [
    headed((place) => textBlock(boring.title, { ...place, capMm: MIDDLE_MM, face: "bold" }), rowsOf(table)),
    ...(isAssumed(cabling) ? [saying(boring.assumed(diametersText(cabling)), "bold")] : []),
    saying(boring.source),
  ];
}

function holeRow(order: Order, { first, holes }: HoleGroup): Cell[] {
  const { boring } = order.words.cabling.schedule;
  const { verdict, member, surface, speakers, diameterMm } = first;
  const numbers = [...new Set(holes.map((hole) => hole.member.number))].sort((a, b) => a - b);
  const written = (mm: number): string => unbroken(figuresOf(mm, order.job.room.units).main);
  const said = {
    allowed: () => (verdict.kind === "allowed" ? boring.allowed(written(verdict.mostMm)) : ""),
    "too-large": () => (verdict.kind === "too-large" ? boring.tooLarge(written(verdict.mostMm)) : ""),
    "by-maker": () => boring.byMaker,
  }[verdict.kind]();
  const steel = verdict.kind === "allowed" && verdict.nailPlate ? [small(boring.nailPlate)] : [];
  const tie = verdict.kind === "allowed" && verdict.tie ? [small(boring.tie)] : [];
  return [
    verdict.kind === "allowed" ? { kind: "tick" } : "",
    boring.ofMembers(surface, member.kind, numbers),
    lines(middle(unbroken(`${written(diameterMm)}${isAssumed(order.job.cabling) ? " *" : ""}`))),
    speakers.join(", "),
    lines(verdict.kind === "allowed" ? small(said) : { ...small(said), face: "bold" }, ...steel, ...tie),
  ];
}
