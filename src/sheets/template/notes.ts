import { byText } from "../../drawing/by-text.js";
import type { Item } from "../../drawing/drawing.js";
import { stackLater, textLater } from "../../drawing/drawn-later.js";
import { placeBlock, type Spaces, seekBlock, spacesFor, type Writing } from "../../drawing/free-block.js";
import type { Ground, Placed } from "../../drawing/free-place.js";
import { point } from "../../drawing/pen.js";
import { measureText } from "../../drawing/text.js";
import { LINE_PITCH } from "../../drawing/text-block.js";
import type { Level } from "../../findings/finding.js";
import type { LocatedFinding, Opening } from "../../job.js";
import { CHECK_TAPE_WITHIN_MM } from "../../standards/cutting-practice.js";
import { findingText, fixText } from "../../words/finding-text.js";
import { acrossFigures } from "../cut-figures.js";
import { figuresOf } from "../figures.js";
import { findingsAbout } from "../finding-lines.js";
import type { Order } from "../sheet.js";
import { type Stage, tapesOf } from "../tapes.js";
import { gapsInWords, sizeInWords } from "./band.js";

const SMALL_MM = 2.5;
const GAP_MM = 1;

/** What is read before the saw is taken up, in the order of the work; nothing about cutting where nothing is to be cut. */
export function notesOf(task: Noted): string[] {
  const { order, opening, stage, alike } = task;
  const { template } = order.words;
  if (opening.mustNotCut) return [gapsInWords(order, opening)];
  const ofPlace = alike.length === 0 ? [gapsInWords(order, opening)] : [template.alike.use];
  const facts = [sizeInWords(order, opening), ...ofPlace];
  const across = acrossFigures(opening.speaker.opening, order.job.room.units);
  return [
    ...facts,
    template.notes.look,
    template.notes.cut(`${across.main} (${across.others})`),
    ...(opening.surface.rated ? [template.notes.rated] : []),
    ...warningsOf(order, opening),
    ...(alike.length === 0 ? checkNotes(order, opening, stage) : []),
    doneNote(task),
  ];
}

/** What of a task its notes come from. */
interface Noted {
  readonly order: Order;
  readonly opening: Opening;
  readonly alike: readonly Opening[];
  readonly stage: Stage;
}

/** A box to tick and who has cut; of many a box each. */
export function doneNote({ order, alike }: Pick<Noted, "order" | "alike">): string {
  const { done } = order.words.template.notes;
  return alike.length === 0
    ? `□ ${done}`
    : [...alike.map(({ speaker }) => `□\u00a0${speaker.id}`), done].join("  ");
}

/** Nothing where no opposite tape can be held. */
function checkNotes(order: Order, opening: Opening, stage: Stage): string[] {
  const { words, job } = order;
  const figures = (mm: number): string => {
    const { main, others } = figuresOf(mm, job.room.units);
    return `${main} (${others})`;
  };
  const tapes = tapesOf(job.room, opening, stage).checks.flatMap((tape) =>
    tape === null ? [] : [{ from: tape.from, length: figures(tape.mm) }],
  );
  if (tapes.length === 0) return [];
  return [words.template.notes.check(tapes, figures(CHECK_TAPE_WITHIN_MM), job.room.call)];
}

/** All notes together where there is room, else each by itself; those for which this page has none are left over. */
export function placeNotes(
  notes: readonly string[],
  ground: Ground,
): { readonly placed: Placed; readonly left: readonly string[] } {
  const spaces = spacesForEach(notes, ground);
  const together = placeBlock(writing(notes), spaces);
  if (together === null) return eachPlaced(notes, spaces, placeBlock);
  return { placed: { items: together.items, ground: together.spaces.ground }, left: [] };
}

/** Notes for which no page had a corner, wherever else there is room for them. */
export function seekPlaces(
  notes: readonly string[],
  ground: Ground,
): { readonly placed: Placed; readonly left: readonly string[] } {
  return eachPlaced(notes, spacesForEach(notes, ground), seekBlock);
}

const CENTRE = point(0, 0);

/** The shortest note needs the least room at every width. */
function spacesForEach(notes: readonly string[], ground: Ground): Spaces {
  const [first, ...others] = notes;
  if (first === undefined) return spacesFor([], ground, CENTRE);
  const shortest = others.reduce((least, note) => (lengthMm(note) < lengthMm(least) ? note : least), first);
  return spacesFor([writingOf(shortest)], ground, CENTRE);
}

function eachPlaced(notes: readonly string[], from: Spaces, place: typeof placeBlock) {
  const left: string[] = [];
  const items: Item[] = [];
  let spaces = from;
  for (const note of notes) {
    const next = place(writingOf(note), spaces);
    if (next === null) {
      left.push(note);
      continue;
    }
    items.push(...next.items);
    spaces = next.spaces;
  }
  return { placed: { items, ground: spaces.ground }, left };
}

const lengthMm = (note: string): number => measureText(note, { capMm: SMALL_MM, face: "regular" }).widthMm;

/** Every part of a template asks for the same notes. */
const writingOf = byText((note) => writing([note]));

function writing(notes: readonly string[]): Writing {
  const widthsMm = notes.map(lengthMm);
  return {
    write: (widthMm) =>
      stackLater(
        0,
        notes.map((note) => (y: number) => textLater(note, { x: 0, y, widthMm, capMm: SMALL_MM })),
        GAP_MM,
      ),
    leastHeightMm: (widthMm) =>
      widthsMm.reduce((sum, long) => {
        // A break between languages saves the sign between them, so a line less may do.
        const lines = Math.max(1, Math.ceil(long / widthMm) - 1);
        return sum + lines * SMALL_MM * LINE_PITCH + GAP_MM;
      }, 0),
  };
}

const findingsOf = (order: Order, { speaker }: Opening, level: Level): LocatedFinding[] =>
  findingsAbout(order, speaker).filter((finding) => finding.level === level);

/** The errors that stand on an opening or on its surface as a whole, each with where the nearest clear centre is. */
export function reasonsOf(order: Order, opening: Opening): string[][] {
  const { words, measure } = order;
  return findingsOf(order, opening, "error").map((finding) => {
    const fix = fixText(words, measure, finding);
    return [findingText(words, measure, finding), ...(fix === null ? [] : [fix])];
  });
}

function warningsOf(order: Order, opening: Opening): string[] {
  const { words, measure } = order;
  return findingsOf(order, opening, "warning").flatMap((finding) => [
    `⚠ ${findingText(words, measure, finding)}`,
    ...(finding.accepted === null ? [] : [words.cover.findings.accepted(finding.accepted)]),
  ]);
}
