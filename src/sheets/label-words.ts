import { sizeGiven } from "../cable/run.js";
import type { Item, PagePoint } from "../drawing/drawing.js";
import { type Box, line, PEN, point, text } from "../drawing/pen.js";
import { measureText, wrapText } from "../drawing/text.js";
import type { Speaker } from "../room/room.js";
import { LEAST_LETTERING_MM } from "../standards/lettering.js";
import { cutFigure, runFor } from "./cable-of.js";
import { figuresOf } from "./figures.js";
import type { Order } from "./sheet.js";
import { unbroken } from "./unbroken.js";

/** Which end of a run a label goes on. */
export type End = "rack" | "speaker";

/** How much stands on a label; the test page says what is left off. */
export type Amount = "all" | "no-route" | "least" | "id";

/** A way to fill a label: how much of what there is to say, and the smallest that the id may become. */
export interface Filling {
  readonly amount: Amount;
  readonly leastIdMm: number;
}

/** As wanted, best first: the id stays large before from and to are said, but not before the cable is. */
export const FILLINGS: readonly Filling[] = [
  { amount: "all", leastIdMm: 5 },
  { amount: "no-route", leastIdMm: 5 },
  { amount: "all", leastIdMm: LEAST_LETTERING_MM },
  { amount: "no-route", leastIdMm: LEAST_LETTERING_MM },
  { amount: "least", leastIdMm: LEAST_LETTERING_MM },
  { amount: "id", leastIdMm: LEAST_LETTERING_MM },
];

/** Words, then a line of `blankMm` to write on for what is not given. */
interface Piece {
  readonly words: string;
  readonly blankMm: number;
}

/** What is said in one go, on one line. */
type Phrase = readonly Piece[];

const SMALL_MM = LEAST_LETTERING_MM;
/** Labels are mostly capitals and figures: lines stand closer than in running text, and accents still clear. */
const LINE_MM = SMALL_MM * 1.6;
const BLANK_MM = 13;
const GAP_MM = 3;
/** Cap heights that an id is tried in, largest first. */
const ID_CAPS_MM = [9, 8, 7, 6, 5, 4.5, 4, 3.5, 3, LEAST_LETTERING_MM];

function phrasesOf(order: Order, speaker: Speaker, amount: Amount): Phrase[] {
  if (amount === "id") return [];
  const { labels, frame } = order.words;
  const least = [given(speaker.channel), field(labels.amplifier, speaker.amplifierChannel)];
  if (amount === "least") return least;
  const cable = [gaugeOf(order, speaker), field(labels.length, lengthOf(order, speaker))];
  if (amount === "no-route") return [...least, ...cable];
  return [...least, ...cable, given(`${labels.rack} → ${frame.surface(speaker.surface)}`)];
}

const given = (words: string): Phrase => [{ words, blankMm: 0 }];

const field = (name: string, value: string | null): Phrase => [
  value === null ? { words: name, blankMm: BLANK_MM } : { words: `${name} ${value}`, blankMm: 0 },
];

/** The user's own figure, else the computed one, which says so. */
function lengthOf(order: Order, speaker: Speaker): string | null {
  const { lengthMm } = speaker.cable;
  if (lengthMm !== null) return figuresOf(lengthMm, order.job.room.units).main;
  const run = runFor(order, speaker);
  return run === null ? null : order.words.labels.computed(unbroken(cutFigure(order, run.lengthMm)));
}

/**
 * Gauge and conductors as the trade writes them, "AWG 14-2" or "2 x 2.5 mm²", with a line for what is not known; what
 * was computed or assumed says so.
 */
function gaugeOf(order: Order, speaker: Speaker): Phrase {
  const written = sizeWritten(order, speaker);
  const run = runFor(order, speaker);
  const isOurs = run !== null && (run.from.size === "computed" || run.from.conductors === "assumed");
  if (!isOurs || run.size === null) return written;
  return written.map((piece) => ({ ...piece, words: order.words.labels.computed(unbroken(piece.words)) }));
}

function sizeWritten(order: Order, speaker: Speaker): Phrase {
  const { gauge } = order.words.labels;
  const run = runFor(order, speaker);
  const size = run?.size ?? sizeGiven(speaker);
  const conductors = speaker.cable.conductors ?? run?.conductors ?? null;
  if (size?.kind === "area") {
    return [{ words: `${conductors ?? ""} × ${size.areaMm2} mm²`.trim(), blankMm: 0 }];
  }
  const behind = { words: `-${conductors ?? ""}`, blankMm: conductors === null ? 6 : 0 };
  if (size === null) return [{ words: gauge, blankMm: 8 }, behind];
  return [{ words: `${gauge} ${size.gauge}${behind.words}`, blankMm: behind.blankMm }];
}

/** Words of one end's label inside a box, the id as large as it goes; null where they do not fit. */
export function labelItems(
  order: Order,
  speaker: Speaker,
  { end, filling, box }: { end: End; filling: Filling; box: Box },
): Item[] | null {
  const { amount, leastIdMm } = filling;
  const rows = rowsIn(phrasesOf(order, speaker, amount), box.widthMm);
  if (rows === null) return null;
  for (const capMm of ID_CAPS_MM.filter((each) => each >= leastIdMm)) {
    const head = headOf(speaker.id, amount === "id" ? null : endOf(order, end), { capMm, box });
    if (head !== null && head.heightMm + rows.length * LINE_MM <= box.heightMm) {
      return [...head.items, ...rowItems(rows, { ...box, y: box.y + head.heightMm })];
    }
  }
  return null;
}

const endOf = ({ words }: Order, end: End): string =>
  ({ rack: words.labels.rackEnd, speaker: words.labels.speakerEnd })[end];

interface Head {
  readonly items: Item[];
  readonly heightMm: number;
}

/** The id, and beside it or under it which end this is. */
function headOf(id: string, end: string | null, { capMm, box }: { capMm: number; box: Box }): Head | null {
  const idMm = measureText(id, { capMm, face: "bold" }).widthMm;
  if (idMm > box.widthMm) return null;
  const idItem = text(point(box.x, box.y + capMm), id, { capMm, face: "bold" });
  if (end === null) return { items: [idItem], heightMm: capMm };
  const beside = endLines(end, box.widthMm - idMm - GAP_MM);
  if (beside !== null && beside.length * LINE_MM <= Math.max(capMm + 1.5, 2 * LINE_MM)) {
    const items = beside.map((words, index) =>
      endItem(words, point(box.x + box.widthMm, box.y + SMALL_MM + index * LINE_MM), "end"),
    );
    return {
      items: [idItem, ...items],
      heightMm: Math.max(capMm * 1.3, (beside.length - 1) * LINE_MM + SMALL_MM * 1.3) + 0.5,
    };
  }
  const under = endLines(end, box.widthMm);
  if (under === null) return null;
  const y = box.y + capMm * 1.4 + SMALL_MM;
  const items = under.map((words, index) => endItem(words, point(box.x, y + index * LINE_MM), "start"));
  return { items: [idItem, ...items], heightMm: capMm * 1.4 + under.length * LINE_MM };
}

const endItem = (words: string, at: PagePoint, anchor: "start" | "end"): Item =>
  text(at, words, { capMm: SMALL_MM, face: "bold", anchor });

/** Lines of words that are broken between words only; null where a word is too wide. */
function endLines(words: string, widthMm: number): readonly string[] | null {
  const widest = Math.max(
    ...words.split(" ").map((word) => measureText(word, { capMm: SMALL_MM, face: "bold" }).widthMm),
  );
  return widest > widthMm ? null : wrapText(words, { capMm: SMALL_MM, face: "bold", widthMm });
}

type Row = readonly Phrase[];

/** Between words and the line to write on behind them, and between pieces of a phrase. */
const PIECE_GAP_MM = 1;

const wordsMm = (words: string): number => measureText(words, { capMm: SMALL_MM, face: "regular" }).widthMm;

const pieceMm = ({ words, blankMm }: Piece): number =>
  wordsMm(words) + (blankMm === 0 ? 0 : blankMm + PIECE_GAP_MM);

const phraseMm = (phrase: Phrase): number =>
  phrase.reduce((sum, piece) => sum + pieceMm(piece), (phrase.length - 1) * PIECE_GAP_MM);

/** Phrases in lines, as many on each as fit; one that is too wide by itself is wrapped. Null where a line to write on is. */
function rowsIn(phrases: readonly Phrase[], widthMm: number): Row[] | null {
  const rows: Phrase[][] = [];
  let freeMm = 0;
  for (const phrase of phrases.flatMap((each) => wrapped(each, widthMm))) {
    const wideMm = phraseMm(phrase);
    if (wideMm > widthMm) return null;
    const row = rows.at(-1);
    const starts = row === undefined || wideMm > freeMm;
    if (starts) rows.push([phrase]);
    else row.push(phrase);
    freeMm = (starts ? widthMm : freeMm) - wideMm - GAP_MM;
  }
  return rows;
}

function wrapped(phrase: Phrase, widthMm: number): Phrase[] {
  const [only, ...more] = phrase;
  if (phraseMm(phrase) <= widthMm || only === undefined || more.length > 0 || only.blankMm > 0)
    return [phrase];
  return wrapText(only.words, { capMm: SMALL_MM, face: "regular", widthMm }).map(given);
}

function rowItems(rows: readonly Row[], box: Box): Item[] {
  return rows.flatMap((row, index) => {
    const y = box.y + SMALL_MM + index * LINE_MM;
    let x = box.x;
    return row.flatMap((phrase) => {
      const items = phraseItems(phrase, { x, y });
      x += phraseMm(phrase) + GAP_MM;
      return items;
    });
  });
}

function phraseItems(phrase: Phrase, at: PagePoint): Item[] {
  let x = at.x;
  return phrase.flatMap((piece) => {
    const items = pieceItems(piece, point(x, at.y));
    x += pieceMm(piece) + PIECE_GAP_MM;
    return items;
  });
}

function pieceItems({ words, blankMm }: Piece, at: PagePoint): Item[] {
  const item = text(at, words, { capMm: SMALL_MM });
  if (blankMm === 0) return [item];
  const x = at.x + wordsMm(words) + PIECE_GAP_MM;
  return [item, line(point(x, at.y + 0.5), point(x + blankMm, at.y + 0.5), PEN.fine)];
}
