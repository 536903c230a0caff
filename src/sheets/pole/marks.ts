import { grey, type Item, type PagePoint, type Stroke } from "../../drawing/drawing.js";
import { hatch } from "../../drawing/hatch.js";
import { dashed, layer, line, outline, PEN, point } from "../../drawing/pen.js";
import { LINES } from "../marking/lines.js";
import { isStrap } from "../marking/rows.js";
import type { Pole, PoleMember, PoleOpenings, Stretch } from "./pole.js";

/** Heights of what stands on a pole, up from the line that its marks meet, in mm. */
export interface Rise {
  /** Top of the members' boxes. */
  readonly membersMm: number;
  /** The lowest bar from edge to edge of an opening; overlapping ones stand over each other. */
  readonly barMm: number;
  /** The whole strip. */
  readonly stripMm: number;
}

/** A member's centre line stays below its words. */
export const CENTRE_LINE_MM = 5;
const LEVEL_MM = 2.5;
const HATCH_MM = 3;
const UNKNOWN_MM = 4;

/** A place on the pole as the page has it: mm from zero to the right, heights up. */
export const up = (mm: number, heightMm: number): PagePoint => point(mm, -heightMm);

/** Every mark of a pole, without words: what is off its ends is cut off. */
export function poleMarks(pole: Pole, rise: Rise): Item[] {
  const ends = [0, pole.far.mm];
  return [
    layer("framing", [
      ...pole.unknown.flatMap((stretch) => unknownItems(within(stretch, pole))),
      ...pole.members.flatMap((member) => memberItems(member, pole, rise)),
    ]),
    layer(
      "cut",
      pole.openings.flatMap((opening) => openingItems(opening, pole, rise)),
    ),
    layer("dimensions", [
      line(up(0, 0), up(pole.far.mm, 0), PEN.outline),
      ...ends.map((mm) => line(up(mm, 0), up(mm, rise.stripMm), PEN.cut)),
    ]),
  ];
}

const isOn = (mm: number, { far }: Pole): boolean => mm >= 0 && mm <= far.mm;

const within = ({ fromMm, toMm }: Stretch, { far }: Pole): Stretch => ({
  fromMm: Math.max(0, fromMm),
  toMm: Math.min(far.mm, toMm),
});

const boxOf = ({ fromMm, toMm }: Stretch, highMm: number): PagePoint[] => [
  up(fromMm, 0),
  up(fromMm, highMm),
  up(toMm, highMm),
  up(toMm, 0),
];

function unknownItems(stretch: Stretch): Item[] {
  return stretch.toMm > stretch.fromMm ? hatch(boxOf(stretch, UNKNOWN_MM), HATCH_MM) : [];
}

/** Measured ones in full lines, assumed ones in broken lines: edges as a box, the centre as a line from the lower edge up. */
function memberItems(on: PoleMember, pole: Pole, { membersMm }: Rise): Item[] {
  const seen = within(on, pole);
  if (seen.toMm <= seen.fromMm) return [];
  const strap = isStrap(on.member);
  const measured = on.member.basis === "measured" && !strap;
  const stroke: Stroke = strap ? LINES.strap : measured ? PEN.thin : LINES.assumed;
  const box = outline(boxOf(seen, membersMm), measured ? { stroke, fill: grey(0.92) } : { stroke });
  const centre = line(up(on.centreMm, 0), up(on.centreMm, CENTRE_LINE_MM), stroke);
  return isOn(on.centreMm, pole) ? [box, centre] : [box];
}

/** Under an error every line is broken. */
function openingItems(on: PoleOpenings, pole: Pole, rise: Rise): Item[] {
  const broken = (stroke: Stroke): Stroke => (on.stoppedBy === null ? stroke : dashed(stroke, 3, 2));
  const topMm = barOf(on, rise);
  const seen = within(on, pole);
  const upright = (mm: number, stroke: Stroke): Item[] =>
    isOn(mm, pole) ? [line(up(mm, 0), up(mm, topMm), broken(stroke))] : [];
  return [
    ...upright(on.fromMm, PEN.outline),
    ...upright(on.toMm, PEN.outline),
    ...(seen.toMm > seen.fromMm
      ? [line(up(seen.fromMm, topMm), up(seen.toMm, topMm), broken(PEN.outline))]
      : []),
    ...upright(on.centreMm, PEN.cut),
  ];
}

/** Height of an opening's bar: overlapping ones stand over each other. */
export const barOf = ({ level }: PoleOpenings, { barMm }: Rise): number => barMm + level * LEVEL_MM;

/** Room that the bars take over the lowest. */
export const barsMm = ({ openings }: Pole): number =>
  Math.max(0, ...openings.map(({ level }) => level)) * LEVEL_MM;
