import type { Job } from "../job.js";
import { type Margins, PAPERS, type Paper, parsePaper } from "../standards/paper.js";
import type { Language } from "../units/language.js";
import { measureIn } from "../words/measure.js";
import { wordsIn } from "../words/words.js";
import type { Order } from "./sheet.js";

/** What a person may say about a print beside what the room file says; what is not said follows the room. */
export interface Wishes {
  readonly paper: Paper | null;
  readonly languages: readonly Language[] | null;
  readonly margins: Margins;
  /** Words about the printer's correction; null without one. */
  readonly correction: string | null;
  /** 1:1 marking sheets asked for by name. */
  readonly fullSize: boolean;
  /** Story poles asked for by name; not, unless said. */
  readonly poles?: boolean;
}

/** The order for a job's sheets: letter where the room is in inches, A4 where it is metric, unless something else is asked for. */
export function orderOf(job: Job, wishes: Wishes): Order {
  const languages = wishes.languages ?? job.room.print.languages;
  const paper = wishes.paper ?? roomPaper(job);
  return {
    job,
    words: wordsIn(languages),
    languages,
    measure: measureIn(job.room.units),
    paper,
    reading: readingPaper(job, paper),
    margins: wishes.margins,
    correction: wishes.correction,
    fullSize: wishes.fullSize || paper.kind === "roll",
    poles: wishes.poles === true || paper.kind === "roll",
  };
}

const usualPaper = (job: Job): Paper => paperNamed(job.room.units === "imperial" ? "letter" : "A4");

function roomPaper(job: Job): Paper {
  const asked = job.room.print.paper;
  if (asked === null) return usualPaper(job);
  const read = parsePaper(asked);
  return read.ok ? read.paper : usualPaper(job);
}

function readingPaper(job: Job, paper: Paper): { widthMm: number; heightMm: number } {
  if (paper.kind === "sheet") return paper;
  const usual = usualPaper(job);
  return usual.kind === "sheet" ? usual : { widthMm: usual.widthMm, heightMm: usual.widthMm };
}

function paperNamed(name: string): Paper {
  const found = PAPERS.find((paper) => paper.name === name);
  if (found === undefined) throw new RangeError(`no paper named ${name}`);
  return found;
}
