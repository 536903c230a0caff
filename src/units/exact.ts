import { feetInches, millimetres } from "./format.js";

const DENOMINATORS = [16, 32, 64] as const;
const DECIMALS = [0, 1, 2, 3] as const;
const MOST_DECIMALS = 4;

/**
 * A length as it is written into a room file: in the units asked for if these can say it exactly (to 1/64 in), else in
 * millimetres to 0.0001 mm. `parseLength` reads the same length.
 */
export function exactLength(mm: number, units: "imperial" | "metric"): string {
  const imperial =
    units === "imperial" ? DENOMINATORS.map((denominator) => feetInches(mm, { denominator })) : [];
  const metric = DECIMALS.map((decimals) => millimetres(mm, { decimals }));
  const exact = [...imperial, ...metric].find(({ rounded }) => !rounded);
  return (exact ?? millimetres(mm, { decimals: MOST_DECIMALS })).plain;
}
