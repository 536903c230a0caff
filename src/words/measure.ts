import { KG_PER_POUND, MM_PER_INCH } from "../units/definitions.js";
import { type Figure, feetInches, inches, millimetres } from "../units/format.js";

/** Figures in sentences, in the units that a room shows first, the other in brackets; the same in every language. */
export interface Measure {
  /** `1/2" (12 mm)` or `12 mm (1/2")`, to 1/16 in and 1 mm, finer in mm where that would be nothing. */
  length(mm: number): string;
  /** Two lengths that differ, with as many places as it takes to see that they do. */
  lengths(firstMm: number, secondMm: number): readonly [string, string];
  /** As a tape of the first units reads, bare: `5' 3 1/4"` or `1607 mm`. `parseLength` reads it. */
  tape(mm: number): string;
  /** `7 lb (3.2 kg)` or `3.2 kg (7 lb)`. */
  weight(kg: number): string;
  /** `32.4°`. */
  angle(deg: number): string;
  /** Two angles that differ, with as many places as it takes. */
  angles(firstDeg: number, secondDeg: number): readonly [string, string];
}

export type Units = "imperial" | "metric";

/** How lengths, weights and angles read in a room whose first units are these. */
export function measureIn(units: Units): Measure {
  const length = (mm: number, decimals: number): string =>
    inBoth(units, { imperial: inchesOf(mm), metric: millimetres(mm, { decimals }).plain });
  return {
    length: (mm) => length(mm, placesToShow(mm)),
    lengths: (firstMm, secondMm) => apart(firstMm, secondMm, length),
    tape: (mm) => tapeOf(units, mm).plain,
    weight: (kg) => inBoth(units, { imperial: `${short(kg / KG_PER_POUND)} lb`, metric: `${short(kg)} kg` }),
    angle: (deg) => degreesOf(deg, 1),
    angles: (firstDeg, secondDeg) => apart(firstDeg, secondDeg, degreesOf),
  };
}

function inBoth(units: Units, { imperial, metric }: Readonly<Record<Units, string>>): string {
  return units === "imperial" ? `${imperial} (${metric})` : `${metric} (${imperial})`;
}

function tapeOf(units: Units, mm: number): Figure {
  return units === "imperial" ? feetInches(mm) : millimetres(mm);
}

const FINEST_MM = MM_PER_INCH / 16;

/** What is there but less than half of the finest mark is not called nothing. */
function inchesOf(mm: number): string {
  const isLess = mm !== 0 && Math.abs(mm) < FINEST_MM / 2;
  return isLess ? `< ${inches(FINEST_MM).plain}` : feetInches(mm).plain;
}

const MOST_PLACES = 2;

/** Places after the point of a length in mm: none, or as many as it takes to show anything. */
function placesToShow(mm: number): number {
  const seen = [0, 1].find((places) => Math.abs(mm) >= 0.5 / 10 ** places);
  return mm === 0 ? 0 : (seen ?? MOST_PLACES);
}

/** Both written with the fewest places that tell them apart, and no more than the house's tolerance needs. */
function apart(
  first: number,
  second: number,
  write: (value: number, places: number) => string,
): readonly [string, string] {
  const places = [0, 1].find((count) => first.toFixed(count) !== second.toFixed(count)) ?? MOST_PLACES;
  return [write(first, places), write(second, places)];
}

const degreesOf = (deg: number, places: number): string => `${Number(deg.toFixed(places)) + 0}°`;

const short = (value: number): string => String(Number(value.toFixed(1)));
