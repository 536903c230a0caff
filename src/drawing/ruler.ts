import type { Item } from "./drawing.js";
import { line, PEN, point, text } from "./pen.js";

/** Length of the check ruler's inch side: 4 in, exactly (1 in = 25.4 mm, NIST SP 811). */
export const FOUR_INCHES_MM = 101.6;
const MILLIMETRES = 100;

interface Place {
  readonly x: number;
  readonly y: number;
  readonly direction: "across" | "down";
}

/** Thickness that a ruler takes beside its line, in mm, its figures included. */
export const RULER_DEPTH_MM = 13;

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
