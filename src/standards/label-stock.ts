import { inchesInMm } from "../units/definitions.js";

/** A sheet of labels by its geometry alone, in mm. */
export interface LabelSheet {
  readonly pageWidthMm: number;
  readonly pageHeightMm: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly leftMm: number;
  readonly topMm: number;
  readonly pitchXMm: number;
  readonly pitchYMm: number;
}

export const LABEL_STOCK_NAMES = ["letter-30", "A4-24", "A4-65"] as const;

export type LabelStockName = (typeof LABEL_STOCK_NAMES)[number];

/**
 * Flat labels by the sheet and how many are on it. All close arithmetically: what columns and rows leave of the page
 * is the same at the left and the right, at the top and the bottom.
 */
export const LABEL_STOCK: Readonly<Record<LabelStockName, LabelSheet>> = {
  // 2 5/8 x 1 in, left 3/16, top 1/2, pitch 2 3/4 x 1 (read in two public data files).
  "letter-30": {
    pageWidthMm: inchesInMm(8.5),
    pageHeightMm: inchesInMm(11),
    labelWidthMm: inchesInMm(2.625),
    labelHeightMm: inchesInMm(1),
    columns: 3,
    rows: 10,
    leftMm: inchesInMm(0.1875),
    topMm: inchesInMm(0.5),
    pitchXMm: inchesInMm(2.75),
    pitchYMm: inchesInMm(1),
  },
  // Size of a label from memory, margins by symmetry.
  "A4-24": {
    pageWidthMm: 210,
    pageHeightMm: 297,
    labelWidthMm: 63.5,
    labelHeightMm: 33.9,
    columns: 3,
    rows: 8,
    leftMm: 7.25,
    topMm: 12.9,
    pitchXMm: 66,
    pitchYMm: 33.9,
  },
  // Size of a label from memory, margins by symmetry.
  "A4-65": {
    pageWidthMm: 210,
    pageHeightMm: 297,
    labelWidthMm: 38.1,
    labelHeightMm: 21.2,
    columns: 5,
    rows: 13,
    leftMm: 4.75,
    topMm: 10.7,
    pitchXMm: 40.6,
    pitchYMm: 21.2,
  },
};
