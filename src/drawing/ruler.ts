import type { Item } from "./drawing.js";
import { line, PEN, point, text } from "./pen.js";
import { measureText } from "./text.js";

/** Length of the check ruler's inch side: 4 in, exactly (1 in = 25.4 mm, NIST SP 811). */
export const FOUR_INCHES_MM = 101.6;
const MILLIMETRES = 100;

interface Place {
  readonly x: number;
  readonly y: number;
  readonly direction: "across" | "down";
}

type Along = (along: number, aside: number) => { x: number; y: number };

const axis =
  (place: Place): Along =>
  (along, aside) =>
    place.direction === "across"
      ? point(place.x + along, place.y + aside)
      : point(place.x + aside, place.y + along);

function ticks(at: Along, count: number, stepMm: number, longEvery: number, side: 1 | -1): Item[] {
  return Array.from({ length: count + 1 }, (_, index) => {
    const deep = index % longEvery === 0 ? 2.6 : 1.4;
    return line(at(index * stepMm, 0), at(index * stepMm, side * deep), PEN.fine);
  });
}

/**
 * A ruler to hold a tape against: 100 mm on one side of a line, 4 in on the other, from one zero. Its line begins at
 * (x, y); the millimetres stand after the line (below, or to the right), the inches before it.
 */
export function checkRuler(place: Place): Item[] {
  const at = axis(place);
  const turn = place.direction === "across" ? {} : { turnDeg: 90 };
  const figure = (along: number, aside: number, words: string): Item =>
    text(at(along, aside), words, { capMm: 2.5, anchor: "middle", ...turn });
  const millimetreAside = place.direction === "across" ? 5.8 : 3.3;
  const inchAside = place.direction === "across" ? -3.3 : -5.8;
  return [
    line(at(0, 0), at(FOUR_INCHES_MM, 0), PEN.thin),
    ...ticks(at, 20, MILLIMETRES / 20, 10, 1),
    ...ticks(at, 16, FOUR_INCHES_MM / 16, 4, -1),
    ...[0, 50, 100].map((mm) =>
      figure(mm === 0 ? 1.5 : mm, millimetreAside, mm === 100 ? "100 mm" : String(mm)),
    ),
    ...[0, 2, 4].map((inch) =>
      figure(inch === 0 ? 1.5 : (inch * FOUR_INCHES_MM) / 4, inchAside, inch === 4 ? "4 in" : String(inch)),
    ),
  ];
}

/** What a last figure of four digits and its unit reach past the end of a long ruler. */
const PAST_END_MM = 11;

/** The longest long ruler that a stretch holds, in whole centimetres. */
export const longRulerMm = (stretchMm: number): number =>
  Math.max(10, Math.floor((stretchMm - PAST_END_MM) / 10) * 10);

/** Long ticks at the largest step that a place falls on. */
const DEPTHS = { fine: 1, middle: 1.8, long: 2.6 };

/**
 * A ruler of any whole number of centimetres, the inches of the same stretch on its other side, both from one zero.
 * Sides and turn of the figures are those of the check ruler.
 */
export function longRuler({ lengthMm, ...place }: Place & { readonly lengthMm: number }): Item[] {
  const at = axis(place);
  const inchMm = FOUR_INCHES_MM / 4;
  const wholeInches = Math.floor(lengthMm / inchMm + 1e-9);
  return [
    line(at(0, 0), at(lengthMm, 0), PEN.thin),
    ...scaleTicks(at, { stepMm: 1, count: lengthMm, middle: 5, long: 10, side: 1 }),
    ...scaleTicks(at, { stepMm: inchMm / 8, count: wholeInches * 8, middle: 4, long: 8, side: -1 }),
    ...scaleFigures(place, { stepMm: 10, count: lengthMm / 10, each: 10, unit: "mm", side: 1 }),
    ...scaleFigures(place, { stepMm: inchMm, count: wholeInches, each: 1, unit: "in", side: -1 }),
  ];
}

interface Ticks {
  readonly stepMm: number;
  readonly count: number;
  /** Every so many steps a longer tick, and a longest. */
  readonly middle: number;
  readonly long: number;
  readonly side: 1 | -1;
}

function scaleTicks(at: Along, { stepMm, count, middle, long, side }: Ticks): Item[] {
  return Array.from({ length: count + 1 }, (_, index) => {
    const deep = index % long === 0 ? DEPTHS.long : index % middle === 0 ? DEPTHS.middle : DEPTHS.fine;
    return line(at(index * stepMm, 0), at(index * stepMm, side * deep), PEN.fine);
  });
}

interface Scale {
  readonly stepMm: number;
  readonly count: number;
  /** What one step counts as. */
  readonly each: number;
  readonly unit: string;
  readonly side: 1 | -1;
}

/** A figure at every step, and the unit behind the last. */
function scaleFigures(place: Place, { stepMm, count, each, unit, side }: Scale): Item[] {
  const at = axis(place);
  const [before, after] = place.direction === "across" ? [-3.3, 5.8] : [-5.8, 3.3];
  const aside = side === 1 ? after : before;
  const words = (along: number, said: string, anchor: "start" | "middle"): Item =>
    text(at(along, aside ?? 0), said, {
      capMm: 2.5,
      anchor,
      ...(place.direction === "across" ? {} : { turnDeg: 90 }),
    });
  const figures = Array.from({ length: count + 1 }, (_, index) =>
    words(index === 0 ? 1.2 : index * stepMm, String(index * each), "middle"),
  );
  const lastMm = measureText(String(count * each), { capMm: 2.5, face: "regular" }).widthMm;
  return [...figures, words(count * stepMm + lastMm / 2 + 0.8, unit, "start")];
}
