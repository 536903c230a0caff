import { inchesInMm } from "../units/definitions.js";

/** Actual size of a piece of framing lumber: across its narrow face and across its wide one. */
export interface Lumber {
  readonly widthMm: number;
  readonly depthMm: number;
}

/** Nominal names as the trade says them. */
export type LumberName = "2x3" | "2x4" | "2x6" | "2x8" | "2x10" | "2x12";

/*
 * American Softwood Lumber Standard, Voluntary Product Standard PS 20: least dressed sizes of dry dimension lumber,
 * in inches. Read in a secondary public table, which gives the same sizes in whole millimetres.
 */
const THICKNESS_IN = 1.5;
const WIDTHS_IN: Readonly<Record<LumberName, number>> = {
  "2x3": 2.5,
  "2x4": 3.5,
  "2x6": 5.5,
  "2x8": 7.25,
  "2x10": 9.25,
  "2x12": 11.25,
};

/** Actual sizes by nominal name. */
export const LUMBER: Readonly<Record<LumberName, Lumber>> = {
  "2x3": actual("2x3"),
  "2x4": actual("2x4"),
  "2x6": actual("2x6"),
  "2x8": actual("2x8"),
  "2x10": actual("2x10"),
  "2x12": actual("2x12"),
};

/** Every nominal name, from the smallest. */
export const LUMBER_NAMES: readonly LumberName[] = ["2x3", "2x4", "2x6", "2x8", "2x10", "2x12"];

export function isLumberName(text: string): text is LumberName {
  return Object.hasOwn(LUMBER, text);
}

function actual(name: LumberName): Lumber {
  return { widthMm: inchesInMm(THICKNESS_IN), depthMm: inchesInMm(WIDTHS_IN[name]) };
}
