import type { Item } from "../../drawing/drawing.js";
import { type Label, type LabelLine, label } from "../../drawing/label.js";
import { layer, PEN, point, polyline } from "../../drawing/pen.js";
import { spread, spreadFits } from "../../drawing/spread.js";
import { wrapText } from "../../drawing/text.js";
import { textBlock } from "../../drawing/text-block.js";
import type { Code } from "../../findings/finding.js";
import { CHECK_TAPE_WITHIN_MM } from "../../standards/cutting-practice.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import { figuresOf } from "../figures.js";
import { numberText } from "../marking/found.js";
import { tolerated } from "../marking/steps.js";
import type { Order } from "../sheet.js";
import { barOf, barsMm, CENTRE_LINE_MM, type Rise, up } from "./marks.js";
import type { Pole, PoleMember, PoleOpenings, Stretch } from "./pole.js";

/** A stretch of the pole that one part prints: what belongs to it, and where its words may stand. */
export interface PartOf {
  /** From the middle of one overlap to the middle of the next. */
  readonly own: Stretch;
  readonly clear: Stretch;
}

const MAIN_MM = 5;
const STOP_MM = 3.5;
const SMALL_MM = 2.5;
const WIDEST_MM = 70;
/** Words in a member's box are no wider than the usual box. */
const BOX_MM = 36;
const GAP_MM = 2;
const LEADER_MM = 3;
/** Least width that words need on a part. */
export const LEAST_CLEAR_MM = WIDEST_MM + 10;

interface Named {
  readonly mm: number;
  /** Where its leader begins, up from the lower edge; null without one. */
  readonly fromMm: ((rise: Rise) => number) | null;
  readonly label: Label;
}

interface Row {
  readonly named: Named;
  readonly middleMm: number;
  readonly lane: number;
}

/** The words of one part, in rows that do not touch, before it is known how high each row stands. */
export interface Names {
  readonly strip: string;
  readonly part: PartOf;
  readonly members: readonly Row[];
  readonly openings: readonly Row[];
}

export function namesOf(order: Order, pole: Pole, part: PartOf): Names {
  const isOwn = ({ mm }: Named): boolean => mm >= part.own.fromMm && mm < part.own.toMm;
  const members = pole.members.map((member) => memberName(order, pole, member));
  const openings = pole.openings.map((opening) => openingName(order, pole, opening));
  return {
    strip: stripWords(order, pole),
    part,
    members: rows(members.filter(isOwn), part.clear),
    openings: rows([...openings, ...endNames(order, pole)].filter(isOwn), part.clear),
  };
}

/** Side by side, each as near to its mark as the others allow; on more lanes where one does not hold them. */
function rows(all: readonly Named[], clear: Stretch): Row[] {
  const sorted = [...all].sort((a, b) => a.mm - b.mm);
  const range = { from: clear.fromMm, to: clear.toMm, gapMm: GAP_MM };
  const fitting = { lengthMm: clear.toMm - clear.fromMm, gapMm: GAP_MM };
  for (let lanes = 1; ; lanes += 1) {
    const shared = Array.from({ length: lanes }, (_, lane) =>
      sorted.filter((_none, index) => index % lanes === lane),
    );
    const wishes = shared.map((lane) => lane.map(({ mm, label }) => ({ at: mm, sizeMm: label.widthMm })));
    if (lanes <= sorted.length && !wishes.every((lane) => spreadFits(lane, fitting))) continue;
    return shared.flatMap((lane, index) => {
      const middles = spread(wishes[index] ?? [], range);
      return lane.map((named, place) => ({ named, middleMm: middles[place] ?? named.mm, lane: index }));
    });
  }
}

/** Where a member's words would not be told from others they stand on a panel; edges and centre are below them. */
function memberName(order: Order, pole: Pole, { member, centreMm }: PoleMember): Named {
  const { words, job } = order;
  const repeated = member.kind === "joist" || member.kind === "stud";
  const name = repeated
    ? numberText(member)
    : words.findings.member({ surface: pole.at.surface.name, ...member });
  const figure = figuresOf(centreMm, job.room.units).main;
  const said = [`${name} · ${figure}`, ...(member.basis === "assumed" ? [words.marking.assumed] : [])];
  const lines = said.flatMap((each, index) =>
    linesOf(each, BOX_MM, { capMm: SMALL_MM, face: index === 0 ? "bold" : "regular" }),
  );
  return { mm: onPole(centreMm, pole), fromMm: () => CENTRE_LINE_MM, label: label(lines) };
}

const onPole = (mm: number, { far }: Pole): number => Math.min(Math.max(mm, 0), far.mm);

function linesOf(words: string, widthMm: number, style: Omit<LabelLine, "words">): LabelLine[] {
  return wrapText(words, { ...style, widthMm }).map((line) => ({ ...style, words: line }));
}

/** Which openings, and their figure where they may be cut: large, to be read from a ladder. */
function openingName(order: Order, pole: Pole, opening: PoleOpenings): Named {
  const { words, job } = order;
  const { main, others } = figuresOf(opening.centreMm, job.room.units);
  const bold = (said: string, capMm: number) => linesOf(said, WIDEST_MM, { capMm, face: "bold" });
  const small = (said: string) => linesOf(said, WIDEST_MM, { capMm: SMALL_MM, face: "regular" });
  const ids = opening.ids.join("  ");
  const proof =
    opening.stoppedBy === null
      ? [...bold(`${ids}  ${main}`, MAIN_MM), ...small(others)]
      : [...bold(ids, MAIN_MM), ...stopped(order, opening.stoppedBy)];
  const computed = opening.computed ? bold(words.frame.computedNotFrozen, SMALL_MM) : [];
  return {
    mm: onPole(opening.centreMm, pole),
    fromMm: (rise) => barOf(opening, rise),
    label: label([...proof, ...computed]),
  };
}

const stopped = ({ words }: Order, codes: readonly Code[]): LabelLine[] => [
  ...linesOf(words.frame.doNotCut, WIDEST_MM, { capMm: STOP_MM, face: "bold" }),
  ...codes.flatMap((code) =>
    linesOf(words.marking.reason[code], WIDEST_MM, { capMm: SMALL_MM, face: "bold" }),
  ),
];

/** The wall at zero, and the one across with its figure in brackets, as one that only checks. */
function endNames(order: Order, { zero, far }: Pole): Named[] {
  const { words, job } = order;
  const wall = (said: string): LabelLine[] =>
    said.split(BETWEEN_LANGUAGES).map((each) => ({ words: each, capMm: STOP_MM, face: "bold" }));
  const checked = `(${figuresOf(far.mm, job.room.units).main}) ± ${tolerated(CHECK_TAPE_WITHIN_MM, order)}`;
  const figure: LabelLine = { words: checked, capMm: SMALL_MM, face: "regular" };
  const across = far.along === null ? [] : wall(words.frame.wall(far.along));
  return [
    { mm: 0, fromMm: null, label: label(wall(`0 ${words.frame.wall(zero)}`)) },
    { mm: far.mm, fromMm: null, label: label([...across, figure]) },
  ];
}

/** What the pole is of, on every part. */
const stripWords = ({ words }: Order, { at: { surface, stage }, zero }: Pole): string =>
  words.poles.strip({
    surface: surface.name,
    from: zero,
    stage,
    overhead: surface.kind === "ceiling",
  });

const STRIP_CAP_MM = 2.5;
const AIR_MM = 1;

/** How high everything stands when all the parts of a pole are to be alike. */
export interface Heights extends Rise {
  readonly memberLaneMm: number;
  readonly openingsFromMm: number;
  readonly openingLaneMm: number;
}

export function heightsOf(pole: Pole, all: readonly Names[]): Heights {
  const lane = (rows: readonly Row[]) => ({
    heightMm: Math.max(0, ...rows.map(({ named }) => named.label.heightMm)),
    lanes: Math.max(0, ...rows.map(({ lane }) => lane + 1)),
  });
  const members = lane(all.flatMap((names) => names.members));
  const openings = lane(all.flatMap((names) => names.openings));
  const membersMm = CENTRE_LINE_MM + 1 + members.heightMm * members.lanes;
  const barMm = membersMm + 2;
  const openingsFromMm = barMm + barsMm(pole) + LEADER_MM;
  const stripsMm = Math.max(...all.map((names) => stripBlock(names, 0).heightMm));
  return {
    membersMm,
    barMm,
    memberLaneMm: members.heightMm,
    openingsFromMm,
    openingLaneMm: openings.heightMm,
    stripMm: openingsFromMm + openings.heightMm * openings.lanes + AIR_MM + stripsMm + AIR_MM,
  };
}

function stripBlock({ strip, part: { clear } }: Names, topMm: number) {
  const place = { x: clear.fromMm, y: topMm, widthMm: clear.toMm - clear.fromMm };
  return textBlock(strip, { ...place, capMm: STRIP_CAP_MM, face: "bold" });
}

/** The words of a part in the pole's own coordinates. */
export function nameItems(names: Names, heights: Heights): Item[] {
  const { memberLaneMm, openingsFromMm, openingLaneMm, stripMm } = heights;
  const members = { fromMm: CENTRE_LINE_MM + 0.8, laneMm: memberLaneMm };
  const openings = { fromMm: openingsFromMm, laneMm: openingLaneMm };
  const leaders = (rows: readonly Row[], lanes: Lanes) =>
    rows.flatMap((row) => leaderItems(row, lanes, heights));
  const words = (rows: readonly Row[], lanes: Lanes) => rows.flatMap((row) => rowItems(row, lanes));
  return [
    layer("notes", [...leaders(names.members, members), ...leaders(names.openings, openings)]),
    layer("framing", words(names.members, members)),
    layer("dimensions", words(names.openings, openings)),
    layer("notes", stripBlock(names, -stripMm + AIR_MM).items),
  ];
}

interface Lanes {
  /** Foot of the lowest lane. */
  readonly fromMm: number;
  readonly laneMm: number;
}

const footOf = ({ lane }: Row, { fromMm, laneMm }: Lanes): number => fromMm + lane * laneMm;

function rowItems(row: Row, lanes: Lanes): readonly Item[] {
  const { label } = row.named;
  return label.draw(up(row.middleMm, footOf(row, lanes) + label.heightMm / 2));
}

/** From the mark to the foot of its words; nothing where they stand right over it. */
function leaderItems(row: Row, lanes: Lanes, rise: Rise): Item[] {
  const { named, middleMm } = row;
  if (named.fromMm === null) return [];
  const start = up(named.mm, named.fromMm(rise));
  const knee = up(middleMm, lanes.fromMm);
  const foot = up(middleMm, footOf(row, lanes));
  return [
    polyline(
      [start, knee, foot].map(({ x, y }) => point(x, y)),
      PEN.fine,
    ),
  ];
}
