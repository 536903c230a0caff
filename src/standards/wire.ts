/*
 * Copper conductors.
 */

/** How thick one conductor is: by American wire gauge, or by its nominal cross-section. */
export type ConductorSize =
  | { readonly kind: "gauge"; readonly gauge: number }
  | { readonly kind: "area"; readonly areaMm2: number };

/** ASTM B258: diameter of a solid conductor in mm, 0.127 x 92^((36 - n) / 39). */
export const awgDiameterMm = (gauge: number): number => 0.127 * 92 ** ((36 - gauge) / 39);

/** Cross-section of the same in mm². */
export const awgAreaMm2 = (gauge: number): number => (Math.PI / 4) * awgDiameterMm(gauge) ** 2;

/** IEC 60028: annealed copper at 20 °C, 1/58 ohm mm²/m, and its temperature coefficient there, 0.00393 per kelvin. */
const COPPER_OHM_MM2_PER_M = 1 / 58;
const COPPER_PER_KELVIN = 0.00393;
const COPPER_AT_C = 20;

/** How many times its resistance at 20 °C copper has. */
export const copperFactor = (temperatureC: number): number =>
  1 + COPPER_PER_KELVIN * (temperatureC - COPPER_AT_C);

/**
 * Resistance of one conductor by its gauge at 20 °C, ohm per km: solid annealed copper of the nominal diameter.
 * Stranded conductors of the same gauge run 2 to 4 % above it.
 */
export const awgOhmPerKm = (gauge: number): number => (1000 * COPPER_OHM_MM2_PER_M) / awgAreaMm2(gauge);

/**
 * IEC 60228: largest resistance of a plain copper conductor of class 5 (flexible) at 20 °C in ohm per km, by its
 * nominal cross-section in mm² (read in two secondary tables that agree).
 */
const CLASS_5_OHM_PER_KM: ReadonlyMap<number, number> = new Map([
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
]);

/** Nominal cross-sections of the table, thinnest first. */
export const CROSS_SECTIONS_MM2: readonly number[] = [...CLASS_5_OHM_PER_KM.keys()];

/** Largest resistance of one conductor of that nominal cross-section; throws `RangeError` where the table has none. */
export function crossSectionOhmPerKm(areaMm2: number): number {
  const ohm = CLASS_5_OHM_PER_KM.get(areaMm2);
  if (ohm === undefined) throw new RangeError(`no conductor of ${areaMm2} mm2`);
  return ohm;
}
