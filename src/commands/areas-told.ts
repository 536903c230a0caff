import type { Job } from "../job.js";
import { type Coverage, driveOver } from "../listen/covered.js";
import { bayOf } from "../place/bay.js";
import type { CoverPlace, Filling } from "../place/cover/fill.js";
import { pointsIn } from "../place/cover/pattern.js";
import { nearestGap } from "../place/gaps.js";
import { TAPE_STEP_MM } from "../place/nearest-clear.js";
import { atTexts } from "../place-json.js";
import type { Room, Tape } from "../room/room.js";
import { levelLines, spacingLine } from "../sheets/area-lines.js";
import { type Measure, measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import { inColumns } from "./columns.js";
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
  room: Room,
): readonly string[] {
  if (spread === null) return [];
  const { areas } = words;
  return [
    `${colours.bold(area.name)}  ${areas.count(mounted.length, area.model.name, area.surface)}`,
    ...[spacingLine(words, area, room.units), ...levelLines(words, { area, spread, drive }, room)].map(
      (line) => `  ${line}`,
    ),
  ];
}

function fillingTold(
  { colours }: Terminal,
  words: Words,
  { room }: Job,
  filling: Filling,
): readonly string[] {
  const { areas } = words;
  const { area } = filling;
  const name = colours.bold(area.name);
  if (filling.kind === "unfilled") return [`${name}  ${areas.unfilled[filling.because]}`];
  if (filling.kind === "too-many") return [`${name}  ${areas.tooMany(filling.count, filling.most)}`];
  const measure = measureIn(room.units);
  const { lattice, places, nowhere, spread } = filling;
  const rowsAre = pointsIn(lattice) === places.length + nowhere.length ? "whole" : "cut";
  return [
    `${name}  ${areas.count(places.length, area.model.name, area.surface)}`,
    `  ${areas.rows[lattice.pattern](lattice.rows, lattice.perRow, rowsAre)}; ${areas.along[lattice.along]}`,
    `  ${spacingLine(words, area, room.units)}`,
    `  ${areas.got(measure.length(lattice.spacingMm), measure.length(lattice.rowMm))}`,
    ...placesTable(words, places, measure, room.units).map((line) => `  ${line}`),
    ...nowhere.map(({ tapes }) => `  ${areas.nowhere(tapesTold(tapes, room.units).join(", "))}`),
    ...levelLines(words, { area, spread, drive: driveOver(area, spread, room.listening) }, room).map(
      (line) => `  ${line}`,
    ),
  ];
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
