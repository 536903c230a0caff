import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import type { Order } from "../sheet.js";
import { unbroken } from "../unbroken.js";

/** A length that belongs to what stands along an edge. */
export interface WallFigure {
  readonly wall: string;
  readonly figure: string;
}

/** "CHECK from: LEFT 1 m; BACK 2 m." Words once, in each language; after them only names and figures. */
export function wallFigures({ words }: Order, label: string, all: readonly WallFigure[]): string {
  const said = all.map(({ wall, figure }) => `${unbroken(words.frame.wall(wall))}\u00a0${figure}`);
  return `${oneLabel(label)}: ${said.join("; ")}.`;
}

/** A label in two languages that runs on into its figures: no line has to break between them. */
export const oneLabel = (label: string): string => label.replaceAll(BETWEEN_LANGUAGES, "\u00a0/ ");
