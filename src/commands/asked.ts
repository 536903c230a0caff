import type { Wishes } from "../sheets/order.js";
import type { Words } from "../words/words.js";
import { languagesTyped, marginsTyped, paperTyped } from "./options.js";
import { type Correction, correctionFor } from "./printer-correction.js";
import { asksFullSize, asksPoles, type Wanted, wantedTyped } from "./wanted.js";

export interface PrintFlags {
  readonly language?: string;
  readonly json?: boolean;
  readonly out?: string;
  readonly strict?: boolean;
  readonly printer?: string;
  readonly only?: string;
  readonly paper?: string;
  readonly margin?: string;
  readonly svg?: boolean;
  readonly pdf?: boolean;
}

/** What was asked of a print, read once for all rooms: plain data. */
export interface Asked {
  readonly wishes: Wishes;
  readonly correction: Correction | null;
  readonly wanted: Wanted;
  readonly strict: boolean;
  readonly json: boolean;
  readonly svg: boolean;
  readonly pdf: boolean;
}

/** Reads what was asked. Throws `UsageError` for what cannot be. */
export function askedBy(flags: PrintFlags, words: Words): Asked {
  const wanted = wantedTyped(flags.only);
  const correction = correctionFor(flags.printer, words);
  const wishes = {
    paper: flags.paper === undefined ? null : paperTyped(flags.paper, words),
    languages: flags.language === undefined ? null : languagesTyped(flags.language, words),
    margins: marginsTyped(flags.margin, words),
    correction: correction?.words ?? null,
    fullSize: asksFullSize(wanted),
    poles: asksPoles(wanted),
  };
  const both = flags.svg !== true && flags.pdf !== true;
  return {
    wishes,
    correction,
    wanted,
    strict: flags.strict === true,
    json: flags.json === true,
    svg: both || flags.svg === true,
    pdf: both || flags.pdf === true,
  };
}

/** A room file and where its packet goes. */
export interface Place {
  readonly typed: string;
  /** As it is told. */
  readonly shown: string;
}
