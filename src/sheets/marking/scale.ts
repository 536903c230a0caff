import type { UnitSystem } from "../../room/room.js";

/** Round ratios that a scale rule of the trade carries, the largest drawing first (common practice, no source). */
const RATIOS: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [10, 20, 25, 50, 100],
  imperial: [12, 24, 48],
};

/** For a hall on small paper, where none of the round ones fits: still whole figures. Our own choice. */
const BEYOND: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [200, 500, 1000, 2000],
  imperial: [96, 192, 480, 960, 1920],
};

export const roundRatios = (units: UnitSystem): readonly number[] => RATIOS[units];

export const ratiosBeyond = (units: UnitSystem): readonly number[] => BEYOND[units];

export const ratioText = (ratio: number): string => `1:${ratio}`;
