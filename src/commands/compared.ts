import type { FindingsCompared } from "../compare/findings.js";
import type { MemberChange, Section } from "../compare/members.js";
import { type OpeningChange, turnedDeg } from "../compare/openings.js";
import type { SeatChange } from "../compare/seats.js";
import type { Size, SurfaceChange } from "../compare/surfaces.js";
import type { Comparison } from "../compare.js";
import type { Shape } from "../geometry/shape.js";
import type { Job } from "../job.js";
import { findingText } from "../words/finding-text.js";
import { measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import { cableSaid, holeLines } from "./compared-cables.js";
import { isNext, type Line, type Saying, tapeRead } from "./saying.js";
import type { Terminal } from "./terminal.js";

/** How a comparison reads on a terminal: under each heading a line for each thing, its name and what is otherwise. */

export function comparisonLines(
  terminal: Terminal,
  words: Words,
  { room }: Job,
  comparison: Comparison,
): readonly string[] {
  const say: Saying = { words, measure: measureIn(room.units) };
  const { headings } = words.compare;
  const section = (heading: string, lines: readonly Line[]): readonly string[] =>
    lines.length === 0 ? [] : ["", terminal.colours.bold(heading), ...inTwoColumns(lines)];
  return [
    ...section(
      headings.openings,
      comparison.openings.map((change) => [change.id, openingSaid(say, change)]),
    ),
    ...section(
      headings.surfaces,
      comparison.surfaces.map((change) => [
        words.compare.surface.name(change.surface),
        surfaceSaid(say, change),
      ]),
    ),
    ...section(headings.members, memberLines(say, comparison.members)),
    ...section(
      headings.obstructions,
      comparison.obstructions.map(({ surface, name, what }) => [
        words.compare.obstruction.name(surface, name),
        words.compare.obstruction[what],
      ]),
    ),
    ...section(
      headings.seats,
      comparison.seats.flatMap((change) => seatSaid(say, change).map((said): Line => [change.seat, said])),
    ),
    ...section(
      headings.cables,
      comparison.cables.map((change) => [change.id, cableSaid(say, change)]),
    ),
    ...section(headings.holes, holeLines(say, comparison.holes)),
    ...section(headings.findings, findingLines(say, comparison.findings)),
  ];
}

export function inTwoColumns(lines: readonly Line[]): readonly string[] {
  const width = Math.max(...lines.map(([name]) => name.length));
  return lines.map(([name, said]) => `  ${name.padEnd(width)}  ${said}`);
}

function openingSaid(say: Saying, change: OpeningChange): string {
  const { opening } = say.words.compare;
  const { tape } = say.measure;
  switch (change.what) {
    case "added":
      return opening.added(
        change.surface,
        change.tapes.map(({ from, mm }) => ({ from, length: tape(mm) })),
      );
    case "gone":
      return opening.gone(change.surface);
    case "tape":
      return change.beforeMm === null
        ? opening.newTape(change.from, tape(change.afterMm))
        : opening.tape(tapeRead(say, change.from, change.beforeMm, change.afterMm));
    case "surface":
    case "channel":
    case "model":
      return opening[change.what](change.before, change.after);
    case "size":
      return opening.size(shapeSaid(say, change.before), shapeSaid(say, change.after));
    case "figures":
      return opening.figures(change.model);
    case "arrow":
      return arrowSaid(say, change.beforeDeg, change.afterDeg);
    case "cut":
      return change.allowed ? opening.allowed : opening.stopped;
  }
}

function arrowSaid({ words, measure }: Saying, before: number | null, after: number | null): string {
  const { opening } = words.compare;
  if (before === null) return opening.arrowNew;
  if (after === null) return opening.arrowGone;
  return opening.arrow(measure.angle(turnedDeg(before, after)));
}

const shapeSaid = ({ measure }: Saying, shape: Shape): string =>
  shape.kind === "round"
    ? `⌀ ${measure.length(shape.diameterMm)}`
    : `${measure.length(shape.widthMm)} × ${measure.length(shape.heightMm)}`;

function surfaceSaid(say: Saying, change: SurfaceChange): string {
  const { surface, added, gone } = say.words.compare;
  const { measure } = say;
  const size = ({ widthMm, heightMm }: Size): string =>
    `${measure.tape(widthMm)} × ${measure.tape(heightMm)}`;
  const depth = (mm: number): string | null => (Number.isFinite(mm) ? measure.length(mm) : null);
  switch (change.what) {
    case "added":
      return added;
    case "gone":
      return gone;
    case "size":
      return surface.size(size(change.before), size(change.after));
    case "outline":
    case "joints":
      return surface[change.what];
    case "board": {
      const [before, after] = measure.lengths(change.beforeMm, change.afterMm);
      return surface.board({ before, after });
    }
    case "cavity":
      return surface.cavity(depth(change.beforeMm), depth(change.afterMm));
    case "framing":
      return change.known ? surface.framingKnown : surface.framingUnknown;
    case "insulation":
      return surface.insulation(change.before, change.after);
    default:
      return surface[change.what](change.after);
  }
}

/** Neighbours of which the same is said, on one line. */
function memberLines(say: Saying, changes: readonly MemberChange[]): readonly Line[] {
  const runs: { first: MemberChange; last: MemberChange; said: string }[] = [];
  for (const change of changes) {
    const said = alikeSaid(say, change);
    const run = runs.findLast((each) => each.said === said);
    if (run !== undefined && isNext(run.last, change)) run.last = change;
    else runs.push({ first: change, last: change, said });
  }
  return runs.map(({ first, last, said }) => [
    say.words.compare.member.name(first.member, first.member.number, last.member.number),
    first === last ? memberSaid(say, first) : said,
  ]);
}

/** What may be said of several at once. */
function alikeSaid(say: Saying, change: MemberChange): string {
  if (change.what !== "moved" || change.from === null) return memberSaid(say, change);
  const by = change.afterMm - change.beforeMm;
  return say.words.compare.member.movedAlike(say.measure.length(Math.abs(by)), by > 0, change.from);
}

function memberSaid(say: Saying, change: MemberChange): string {
  const { member } = say.words.compare;
  const size = ({ widthMm, depthMm }: Section): string =>
    `${say.measure.length(widthMm)} × ${say.measure.length(depthMm)}`;
  switch (change.what) {
    case "added":
    case "gone": {
      const { from, atMm, found } = change;
      const at = from === null || atMm === null ? null : member.at(say.measure.tape(atMm), from);
      const by = found === null ? [] : [member.found(found.by, found.on)];
      return [member[change.what](at), ...by].join(", ");
    }
    case "moved":
      return member.moved(tapeRead(say, change.from, change.beforeMm, change.afterMm));
    case "size":
      return member.size(size(change.before), size(change.after));
    case "basis":
      if (change.found !== null) return member.found(change.found.by, change.found.on);
      return change.after === "measured" ? member.measured : member.assumed;
  }
}

function seatSaid(say: Saying, change: SeatChange): readonly string[] {
  const { seat } = say.words.compare;
  if (change.what !== "moved") return [seat[change.what]];
  const { before, after } = change;
  const tape = (from: "left" | "front", was: number, is: number): readonly string[] => {
    const read = tapeRead(say, from, was, is);
    return read.before === read.after ? [] : [seat[from === "left" ? "fromLeft" : "fromFront"](read)];
  };
  const ear = { before: say.measure.tape(before.earMm), after: say.measure.tape(after.earMm) };
  return [
    ...tape("left", before.fromLeftMm, after.fromLeftMm),
    ...tape("front", before.fromFrontMm, after.fromFrontMm),
    ...(ear.before === ear.after ? [] : [seat.ear(ear)]),
  ];
}

function findingLines({ words, measure }: Saying, findings: FindingsCompared): readonly Line[] {
  const { finding } = words.compare;
  const said = (one: FindingsCompared["added"][number]): string =>
    `${words.commands.level[one.level]}: ${findingText(words, measure, one)}  [${one.code}]`;
  return [
    ...findings.added.map((one): Line => [finding.added, said(one)]),
    ...findings.changed.map(({ after }): Line => [finding.changed, said(after)]),
    ...findings.gone.map((one): Line => [finding.gone, said(one)]),
  ];
}
