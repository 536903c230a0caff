import type { Item } from "../drawing/drawing.js";
import type { Job } from "../job.js";
import type { Margins, Paper } from "../standards/paper.js";
import type { Language } from "../units/language.js";
import type { Measure } from "../words/measure.js";
import type { Words } from "../words/words.js";

export type { Margins, Paper };

export type Trade = "drywall" | "installer" | "labels";

/** What is asked of every sheet: the answer about the room, in which words, on which paper. */
export interface Order {
  readonly job: Job;
  readonly words: Words;
  readonly languages: readonly Language[];
  readonly measure: Measure;
  /** Paper for the marking sheets and templates. */
  readonly paper: Paper;
  /** Paper for everything that is read rather than held to the board: `paper` itself unless that is a roll. */
  readonly reading: { readonly widthMm: number; readonly heightMm: number };
  readonly margins: Margins;
  /** Words about the printer's correction, printed on every page that carries it; null where there is none. */
  readonly correction: string | null;
  /** True for the 1:1 marking sheets, which are printed on small paper only when asked for by name. */
  readonly fullSize: boolean;
  /** True for the story poles, likewise. */
  readonly poles: boolean;
}

/** What the frame of a page says beside the job. */
export interface FrameFacts {
  readonly title: string;
  /** "LOOKING UP", "FACING the back wall" ...; null for sheets that are not a view. */
  readonly view: string | null;
  /** How the sheet is held, in large type; null where it lies on a table. */
  readonly hold: string | null;
  /** Where FRONT is on the page, in degrees clockwise from its top; "away" or "behind" as one faces a wall; null without a view. */
  readonly front: number | "away" | "behind" | null;
  /** "TRUE SCALE 1:1", "1:20", or that it is not to scale. */
  readonly scale: string;
  /** Which faces the dimensions are from; null on sheets without dimensions. */
  readonly faces: string | null;
  /** True where the page marks the drawing's axes at the edges of the printable area: the frame keeps off them. */
  readonly axes?: boolean;
}

/** A page before it is numbered and framed; a page of label stock has no frame. */
export interface Body {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: string;
  readonly frame: FrameFacts | null;
  readonly items: readonly Item[];
}

export interface Sheet {
  /** Its name for `--only` and for files: "cover", "floor", "ceiling", "wall-front", "opening-TFL", "aim-TFL" ... */
  readonly name: string;
  /** Other names that ask for it: of what it holds, where that has sheets of its own on other paper. */
  readonly alsoNamed?: readonly string[];
  readonly trades: readonly Trade[];
  readonly title: string;
  /** Drawn when they are first asked for, where `pageCount` is known without them. */
  readonly pages: readonly Body[];
  /** How many pages there are, where that is known before they are drawn: others' numbers need no more. */
  readonly pageCount?: number;
  /** Draws it whole, untiled, for the SVG folder, where that is asked for; null where the sheet has no such drawing. */
  readonly whole: (() => Body) | null;
}
