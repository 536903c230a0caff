import type { Item, Window } from "../../drawing/drawing.js";
import { type Ground, groundOf, type Placed } from "../../drawing/free-place.js";
import { layer, point, shifted } from "../../drawing/pen.js";
import { textBoxes } from "../../drawing/shown.js";
import { textBlock } from "../../drawing/text-block.js";
import { type Grid, type Plan, pagesTaken, planned, type Tile, tiled } from "../../drawing/tiles.js";
import { InternalError } from "../../findings/internal-error.js";
import { flowed, whole } from "../flow.js";
import type { Body } from "../sheet.js";
import { figuresPlacer } from "./free-figures.js";
import { labels } from "./labels.js";
import { bareLiesOn, type Drafted, drafted, type Task, type TemplateLie } from "./lie.js";
import { doneNote, notesOf, placeNotes, seekPlaces } from "./notes.js";
import { axisMarks } from "./page-edges.js";
import { stopPlate } from "./stop-plate.js";
import { templateDrawing, templateExtents } from "./template-drawing.js";

/** The ways for the paper to lie, with the figures of a task on each. */
type Lies = (task: Drafted) => readonly TemplateLie[];

/** Pages whose words have their places: they are counted, and drawn where they are wanted. */
interface Worded {
  readonly pageCount: number;
  readonly draw: () => readonly Body[];
}

/** Where refused, the figures and why; no page where it was the figures that had no room. */
interface Laid extends Worded {
  readonly kind: "laid" | "refused";
  /** Notes for which none of the pages has room beside the drawing. */
  readonly left: readonly string[];
}

/** How figures that do not stand on the page already are put where a drawing leaves room; null where it does not. */
type Figures = (ground: Ground) => Placed | null;

/** The figures stand on the page already. */
const APART: Figures = (ground) => ({ items: [], ground });

/** What is the same however the paper lies. */
interface Work {
  readonly task: Drafted;
  readonly drawing: readonly Item[];
  readonly stop: (ground: Ground) => Placed;
  readonly named: (ground: Ground) => Placed;
  /** To be placed beside the drawing, the last of them the box to tick. */
  readonly notes: readonly string[];
}

function workOf(task: Task): Work {
  const { order, opening } = task;
  return {
    task: drafted(task),
    drawing: templateDrawing(opening),
    stop: opening.mustNotCut ? stopPlate(order, opening) : (ground) => ({ items: [], ground }),
    named: labels(order, opening),
    notes: notesOf(task),
  };
}

/**
 * The pages of one template: with its figures over or beside the drawing, or with them where the drawing leaves room,
 * as inside the cut line, if that takes fewer pages.
 */
export function templatePages(task: Task, lies: Lies): Worded {
  const work = workOf(task);
  const plan = planOf(work, lies(work.task));
  const parts = pagesTaken(plan);
  const within = parts > 1 ? withFiguresWithin(work, parts - 1) : null;
  return within ?? withFiguresApart(work, plan, lies);
}

/** Null where so many parts have no room for all of it. */
function withFiguresWithin(work: Work, mostParts: number): Laid | null {
  const { task } = work;
  const figures = figuresPlacer(task.data);
  return bareLiesOn(task).reduce<Laid | null>((best, lie) => {
    const plan = planOf(work, [lie]);
    const most = best === null ? mostParts : best.pageCount - 1;
    if (pagesTaken(plan) > most) return best;
    const laid = layOut(work, plan, figures);
    const isWhole = laid.kind === "laid" && (laid.left.length === 0 || task.opening.mustNotCut);
    return isWhole ? laid : best;
  }, null);
}

/** What notes the drawing leaves no room for go with the figures, if that costs no page more; else in front. */
function withFiguresApart(work: Work, plan: TemplatePlan, lies: Lies): Laid {
  const { task } = work;
  const laid = layOut(work, plan, APART);
  if (laid.left.length === 0 || task.opening.mustNotCut) return laid;
  const noted = { ...work, task: { ...task, notes: laid.left } };
  const again = layOut(noted, planOf(noted, lies(noted.task)), APART);
  const isAsGood = again.kind === "laid" && again.left.length === 0 && again.pageCount <= laid.pageCount;
  if (isAsGood) return again;
  const notes = notesPages(task, laid.left, plan.request.lies);
  return {
    ...laid,
    pageCount: notes.pageCount + laid.pageCount,
    draw: () => [...notes.draw(), ...laid.draw()],
  };
}

function layOut(work: Work, plan: TemplatePlan, figures: Figures): Laid {
  const { task } = work;
  const tiling = tiled(plan);
  if (tiling.kind === "too-large") {
    return { kind: "refused", ...refusals(work, plan.request.lies, tiling.grid), left: [] };
  }
  const { lie, tiles } = tiling;
  const words = wordsOnAll(work, tiles, figures);
  if (words === null) return { kind: "refused", pageCount: 0, draw: () => [], left: [] };
  return {
    kind: "laid",
    pageCount: tiles.length,
    draw: () => bodiesOf(task, lie, words.parts),
    left: words.left,
  };
}

function bodiesOf(task: Task, lie: TemplateLie, parts: readonly WordedPart[]): Body[] {
  const onEach = lie.draw();
  return parts.map(({ part, items }) => ({
    widthMm: lie.widthMm,
    heightMm: lie.heightMm,
    title: titleOf(task, part, parts.length),
    frame: task.facts,
    items: [
      ...onEach,
      ...part.items,
      layer("notes", [shifted(items, part.shift)]),
      layer("dimensions", axisMarks(task.order, lie, part.shift, part.window)),
    ],
  }));
}

type TemplatePlan = Plan<TemplateLie>;

/** With the whole flange, unless that takes more pages than the cut line alone. */
function planOf({ task, drawing }: Work, lies: readonly TemplateLie[]): TemplatePlan {
  const { order, opening } = task;
  const { wanted, least } = templateExtents(opening);
  // How parts are joined is one of the notes, so that it takes no height of every page.
  const words = { ...order.words.template.tiles, join: null };
  const whole = planned({ drawing, extent: wanted, lies, words });
  if (pagesTaken(whole) === 1) return whole;
  const bare = planned({ drawing, extent: least, lies, words });
  return pagesTaken(bare) < pagesTaken(whole) ? bare : whole;
}

function titleOf({ order, facts }: Task, { name }: Tile, of: number): string {
  return of === 1 ? facts.title : `${facts.title}, ${order.words.template.tiles.part(name, of)}`;
}

/** A part with its words in the drawing's coordinates, and the notes that it has no room for. */
interface WordedPart {
  readonly part: Tile;
  readonly items: readonly Item[];
  readonly left: readonly string[];
  /** Where there is still room on it. */
  readonly ground: Ground;
}

/**
 * Words for every part: what no part has said yet comes first on the next, then what bears saying again. One opening
 * has one box to tick.
 */
function wordsOnAll(
  work: Work,
  parts: readonly Tile[],
  figures: Figures,
): { parts: WordedPart[]; left: readonly string[] } | null {
  const notes = notesToPlace(work, parts.length);
  const once = doneNote(work.task);
  const worded: WordedPart[] = [];
  let left: readonly string[] = notes;
  for (const part of parts) {
    const said = notes.filter((note) => !left.includes(note) && note !== once);
    const words = wordsOn(work, { part, figures }, [...left, ...said]);
    if (words === null) return null;
    left = left.filter((note) => words.left.includes(note));
    worded.push(words);
  }
  return soughtPlaces(worded, left);
}

/** What is left, wherever on a part there is room for it. */
function soughtPlaces(
  worded: readonly WordedPart[],
  left: readonly string[],
): { parts: WordedPart[]; left: readonly string[] } {
  let still = left;
  const parts = worded.map((one): WordedPart => {
    const { placed, left: none } = seekPlaces(still, one.ground);
    still = none;
    return { ...one, items: [...one.items, ...placed.items], ground: placed.ground };
  });
  return { parts, left: still };
}

function notesToPlace({ task, notes }: Work, parts: number): string[] {
  const { order, opening } = task;
  const joining = parts === 1 || opening.mustNotCut ? [] : [order.words.template.tiles.join];
  return [...joining, ...notes].filter((note) => !task.notes.includes(note));
}

/** Null where the part has no room for the figures. */
function wordsOn(
  { drawing, stop, named }: Work,
  { part, figures }: { readonly part: Tile; readonly figures: Figures },
  notes: readonly string[],
): WordedPart | null {
  const back = point(-part.shift.x, -part.shift.y);
  const moved = (box: Window): Window => ({ ...box, x: box.x + back.x, y: box.y + back.y });
  const ground = groundOf(drawing, moved(part.clear), textBoxes(part.items).map(moved));
  const stopped = stop(ground);
  const figured = figures(stopped.ground);
  if (figured === null) return null;
  const labelled = named(figured.ground);
  const { placed, left } = placeNotes(notes, labelled.ground);
  const items = [stopped, figured, labelled, placed].flatMap((each) => each.items);
  return { part, items, left, ground: placed.ground };
}

/** Where no tiling is allowed: the figures, and what to print on instead. */
function refusals(work: Work, lies: readonly TemplateLie[], grid: Grid | null): Worded {
  const { template } = work.task.order.words;
  const words = grid === null ? template.noRoom : template.tooLarge(grid.columns, grid.rows);
  return figuresPages(work.task, { words, notes: notesToPlace(work, 1) }, lies);
}

const notesPages = (task: Task, notes: readonly string[], lies: readonly TemplateLie[]): Worded =>
  figuresPages(task, { words: task.facts.title, notes }, lies);

/** The figures, and words instead of a drawing, on as many pages as they take. */
function figuresPages(
  task: Task,
  { words, notes }: { words: string; notes: readonly string[] },
  [lie]: readonly TemplateLie[],
): Worded {
  if (lie === undefined) throw new InternalError("no way for the paper to lie");
  const { area, widthMm, heightMm } = lie;
  const parts = [
    whole((place) => textBlock(words, { ...place, capMm: 5, face: "bold" })),
    ...notes.map((note) => whole((place) => textBlock(note, { ...place, capMm: 2.5 }))),
  ];
  const { pageCount, draw } = flowed(parts, area, 2);
  const bodyWith = (items: readonly Item[]): Body => {
    const all = [...lie.draw(), layer("notes", items)];
    return { widthMm, heightMm, title: task.facts.title, frame: task.facts, items: all };
  };
  return { pageCount, draw: () => draw().map(bodyWith) };
}
