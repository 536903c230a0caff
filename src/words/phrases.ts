import type { Code, FiguresByCode } from "../findings/finding.js";
import type { Measure } from "./measure.js";

/** The sentence of each code, from its figures; the loudspeaker's id comes before it. */
export type Phrases = {
  readonly [C in Code]: (figures: Readonly<FiguresByCode[C]>, measure: Measure) => string;
};

/** What `explain` says of a code. */
export interface ExplainPage {
  readonly meaning: string;
  readonly matters: string;
  /** Where the limit comes from: a standard, the maker's sheet, the room file, or our own choice. */
  readonly limit: string;
  readonly fix: string;
}

export type ExplainPages = Readonly<Record<Code, ExplainPage>>;

/** A tape of a fix, its length already written. */
export interface WrittenTape {
  readonly length: string;
  /** A wall's name, "floor" or "ceiling". */
  readonly from: string;
}
