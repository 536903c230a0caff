import type { Words } from "../words/words.js";
import { NOMINAL_MM, printerProfile } from "./printer-profile.js";

export interface Correction {
  readonly x: number;
  readonly y: number;
  /** Said on every page that carries the correction. */
  readonly words: string;
}

/** The correction of a printer whose ruler page was measured; null when no printer is named. Throws `UsageError` for an unknown one. */
export function correctionFor(printer: string | undefined, words: Words): Correction | null {
  if (printer === undefined) return null;
  const { acrossMm, downMm } = printerProfile(printer, words);
  const x = NOMINAL_MM / acrossMm;
  const y = NOMINAL_MM / downMm;
  return { x, y, words: words.commands.ruler.correction(printer, percent(x), percent(y)) };
}

const percent = (factor: number): string => `${(factor * 100).toFixed(2)} %`;
