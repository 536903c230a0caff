import type { Job } from "../job.js";
import { type Coverage, driveOver } from "../listen/covered.js";
import type { Spread } from "../listen/level-together.js";
import type { Drive } from "../listen/power.js";
import { bayOf } from "../place/bay.js";
import type { CoverPlace, Filling } from "../place/cover/fill.js";
import { nearestGap } from "../place/gaps.js";
import { TAPE_STEP_MM } from "../place/nearest-clear.js";
import { atTexts } from "../place-json.js";
import type { CoveredArea, Room, Tape } from "../room/room.js";
import { coverageDiameterMm, EVEN_WITHIN_DB } from "../standards/coverage-spacing.js";
import { type Measure, measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import { inColumns } from "./columns.js";
import { decibels, signed, watts } from "./listening-cells.js";
import type { Terminal } from "./terminal.js";

/** How areas that are filled evenly read on a terminal: those filled now, and those that the file has filled. */
export function areasTold(
  terminal: Terminal,
  words: Words,
  { job, fillings }: { readonly job: Job; readonly fillings: readonly Filling[] },
): string {
  const now = fillings.map((filling) => fillingTold(terminal, words, job, filling));
  const before = job.coverage.flatMap((coverage) => coverageTold(terminal, words, coverage, job.room));
  const blocks = [...now, ...(before.length === 0 ? [] : [[...before, words.areas.again]])];
  if (blocks.length === 0) return "";
  return `${[...blocks, [words.areas.model]].map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

/** The areas of a room that loudspeakers of the file fill, each with how even its level is; a line or two each. */
export function coverageTold(
  { colours }: Terminal,
  words: Words,
  { area, mounted, spread, drive }: Coverage,
  { units, listening }: Room,
): readonly string[] {
  if (spread === null) return [];
  const { areas, frame } = words;
  return [
    `${colours.bold(area.name)}  ${areas.count(mounted.length, area.model.name, frame.surface(area.surface))}`,
    `  ${circleTold(words, area, measureIn(units))}`,
    ...spreadTold(words, area, spread),
    ...driveTold(words, area, drive, listening),
  ];
}

function fillingTold(
  { colours }: Terminal,
  words: Words,
  { room }: Job,
  filling: Filling,
): readonly string[] {
  const { areas, frame } = words;
  const { area } = filling;
  const name = colours.bold(area.name);
  if (filling.kind === "unfilled") return [`${name}  ${areas.unfilled[filling.because]}`];
  if (filling.kind === "too-many") return [`${name}  ${areas.tooMany(filling.count, filling.most)}`];
  const measure = measureIn(room.units);
  const { lattice, places, nowhere } = filling;
  return [
    `${name}  ${areas.count(places.length, area.model.name, frame.surface(area.surface))}`,
    `  ${areas.rows[lattice.pattern](lattice.rows, lattice.perRow)}; ${areas.along[lattice.along]}`,
    `  ${circleTold(words, area, measure)}`,
    `  ${areas.got(measure.length(lattice.spacingMm), measure.length(lattice.rowMm))}`,
    ...placesTable(words, places, measure, room.units).map((line) => `  ${line}`),
    ...nowhere.map(({ tapes }) => `  ${areas.nowhere(tapesTold(tapes, room.units).join(", "))}`),
    ...spreadTold(words, area, filling.spread),
    ...driveTold(words, area, driveOver(area, filling.spread, room.listening), room.listening),
  ];
}

function circleTold({ areas }: Words, area: CoveredArea, measure: Measure): string {
  const coverageDeg = area.model.coverageDeg ?? 0;
  const most = measure.length(area.spacingMm);
  const stated = area.overlap === null ? areas.stated(most) : areas.overlap[area.overlap](most);
  if (coverageDeg >= 180) return stated;
  const diameter = measure.length(coverageDiameterMm(area.dropMm, coverageDeg));
  return `${areas.circle(measure.angle(coverageDeg), measure.length(area.dropMm), diameter)} ${stated}`;
}

function placesTable(
  words: Words,
  places: readonly CoverPlace[],
  measure: Measure,
  units: "imperial" | "metric",
): readonly string[] {
  const { columns } = words.areas;
  const rows = places.map(({ mounted, tapes, movedMm }) => {
    const gap = nearestGap(mounted);
    const bay = bayOf(mounted);
    return [
      mounted.speaker.id,
      ...tapesTold(tapes, units),
      movedMm <= TAPE_STEP_MM[units] ? words.areas.inPlace : measure.length(Math.round(movedMm)),
      gap === null ? "" : `${measure.length(gap.mm)}, ${words.findings.member(gap.member)}`,
      bay === null ? "" : words.placing.bay(bay.number, bay.from),
    ];
  });
  return inColumns([columns.speaker, columns.at, "", columns.moved, columns.gap, columns.bay], rows);
}

const tapesTold = (tapes: readonly Tape[], units: "imperial" | "metric"): readonly string[] =>
  atTexts(tapes, units).map(([key, text]) => `${key}: ${text}`);

function spreadTold({ areas }: Words, { model }: CoveredArea, spread: Spread): readonly string[] {
  const { leastDb, mostDb, deviationDb, evenShare, meanDb } = spread;
  const within = `${(100 * evenShare).toFixed(0)} %`;
  return [
    `  ${areas.level(signed(leastDb), signed(mostDb), decibels(deviationDb))}`,
    `  ${areas.even(within, EVEN_WITHIN_DB)}`,
    ...(model.sensitivityDb === null ? [] : [`  ${areas.mean(decibels(meanDb))}`]),
  ];
}

function driveTold(
  { areas }: Words,
  { model }: CoveredArea,
  drive: Drive | null,
  { targetDb, headroomDb }: Room["listening"],
): readonly string[] {
  if (drive === null) return [];
  const needed = areas.power(watts(drive.powerW), decibels(targetDb), decibels(headroomDb));
  if (model.powerW === null || drive.headroomDb === null) return [`  ${needed}`];
  return [`  ${needed} ${areas.leaves(watts(model.powerW), decibels(drive.headroomDb))}`];
}
