import { KG_PER_POUND, MM_PER_INCH } from "../units/definitions.js";
import { feetInches, inches, millimetres } from "../units/format.js";

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
  const length = (mm: number, places: number): string =>
    inBoth(units, { imperial: inchesOf(mm), metric: millimetresOf(mm, places) });
  const placesOf = (mm: number): number =>
    Math.max(placesToShow(mm), units === "metric" ? placesAsIs(mm) : 0);
  return {
    length: (mm) => length(mm, placesOf(mm)),
    lengths: (firstMm, secondMm) => {
      const places = Math.max(placesOf(firstMm), placesOf(secondMm), placesApart(firstMm, secondMm));
      return [length(firstMm, places), length(secondMm, places)];
    },
    tape: (mm) => (units === "imperial" ? feetInches(mm).plain : millimetres(mm).plain),
    weight: (kg) => inBoth(units, { imperial: `${short(kg / KG_PER_POUND)} lb`, metric: `${short(kg)} kg` }),
    angle: (deg) => degreesOf(deg, 1),
    angles: (firstDeg, secondDeg) => {
      const places = Math.max(1, placesApart(firstDeg, secondDeg));
      return [degreesOf(firstDeg, places), degreesOf(secondDeg, places)];
    },
  };
}

function inBoth(units: Units, { imperial, metric }: Readonly<Record<Units, string>>): string {
  return units === "imperial" ? `${imperial} (${metric})` : `${metric} (${imperial})`;
}

const FINEST_MM = MM_PER_INCH / 16;
/** Shorter than a yard, framers say inches: 16 in on centre. */
const IN_FEET_FROM_MM = 36 * MM_PER_INCH;

/** What is there but less than half of the finest mark is not called nothing. */
function inchesOf(mm: number): string {
  const size = Math.abs(mm);
  if (size > 0 && size < FINEST_MM / 2) return `< ${inches(FINEST_MM).plain}`;
  return (size < IN_FEET_FROM_MM ? inches(mm) : feetInches(mm)).plain;
}

/** Trailing noughts left out: 12.5 mm, 13 mm. */
const millimetresOf = (mm: number, places: number): string =>
  `${Number.parseFloat(millimetres(mm, { decimals: places }).plain)} mm`;

const MOST_PLACES = 2;

/** Places after the point of a length in mm: none, or as many as it takes to show anything. */
function placesToShow(mm: number): number {
  const seen = [0, 1].find((places) => Math.abs(mm) >= 0.5 / 10 ** places);
  return mm === 0 ? 0 : (seen ?? MOST_PLACES);
}

/** A board of 12.5 mm is not one of 13. */
const placesAsIs = (mm: number): number =>
  [0, 1].find((places) => !millimetres(mm, { decimals: places }).rounded) ?? 0;

/** The fewest places that tell the two apart, and no more than the house's tolerance needs. */
const placesApart = (first: number, second: number): number =>
  [0, 1].find((places) => first.toFixed(places) !== second.toFixed(places)) ?? MOST_PLACES;

const degreesOf = (deg: number, places: number): string => `${Number(deg.toFixed(places)) + 0}°`;

const short = (value: number): string => String(Number(value.toFixed(1)));
