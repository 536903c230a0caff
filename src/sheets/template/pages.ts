import type { Item, Window } from "../../drawing/drawing.js";
import { type Ground, groundOf, type Placed } from "../../drawing/free-place.js";
import { layer, point, shifted } from "../../drawing/pen.js";
import { textBlock } from "../../drawing/text-block.js";
import { type Grid, pagesTaken, type Tile, type TileRequest, textBoxes, tile } from "../../drawing/tiles.js";
import { InternalError } from "../../findings/internal-error.js";
import { flow, whole } from "../flow.js";
import type { Body } from "../sheet.js";
import { figuresPlacer } from "./free-figures.js";
import { labels } from "./labels.js";
import { bareLiesOn, type Task, type TemplateLie } from "./lie.js";
import { doneNote, notesOf, placeNotes, seekRoom } from "./notes.js";
import { axisMarks } from "./page-edges.js";
import { stopPlate } from "./stop-plate.js";
import { templateDrawing, templateExtents } from "./template-drawing.js";

/** The ways for the paper to lie, with the figures of a task on each. */
type Lies = (task: Task) => readonly TemplateLie[];

interface Laid {
  readonly kind: "laid" | "refused";
  /** Where refused, the figures and why; none where it was the figures that had no room. */
  readonly bodies: readonly Body[];
  /** Notes for which none of the pages has room beside the drawing. */
  readonly left: readonly string[];
}

/** How figures that do not stand on the page already are put where a drawing leaves room; null where it does not. */
type Figures = (ground: Ground) => Placed | null;

interface Laying {
  readonly figures: Figures;
  /** More are not worth wording. */
  readonly mostParts: number;
}

/** The figures stand on the page already. */
const APART: Laying = {
  figures: (ground) => ({ items: [], ground }),
  mostParts: Number.POSITIVE_INFINITY,
};

/**
 * The pages of one template: with its figures over or beside the drawing, or with them where the drawing leaves room,
 * as inside the cut line, if that takes fewer pages.
 */
export function templatePages(task: Task, lies: Lies): Body[] {
  const parts = requestOf(task, templateDrawing(task.opening), lies(task)).pages;
  const within = parts > 1 ? withFiguresWithin(task, parts - 1) : null;
  return [...(within ?? withFiguresApart(task, lies)).bodies];
}

/** Null where so many parts have no room for all of it. */
function withFiguresWithin(task: Task, mostParts: number): Laid | null {
  const figures = figuresPlacer(task);
  return bareLiesOn(task).reduce<Laid | null>((best, lie) => {
    const most = best === null ? mostParts : best.bodies.length - 1;
    const laid = layOut(task, [lie], { figures, mostParts: most });
    const isWhole = laid.kind === "laid" && (laid.left.length === 0 || task.opening.mustNotCut);
    return isWhole ? laid : best;
  }, null);
}

/** What notes the drawing leaves no room for go with the figures, if that costs no page more; else in front. */
function withFiguresApart(task: Task, lies: Lies): Laid {
  const laid = layOut(task, lies(task), APART);
  if (laid.left.length === 0 || task.opening.mustNotCut) return laid;
  const noted = { ...task, notes: laid.left };
  const again = layOut(noted, lies(noted), APART);
  const isAsGood =
    again.kind === "laid" && again.left.length === 0 && again.bodies.length <= laid.bodies.length;
  return isAsGood ? again : { ...laid, bodies: [...notesPages(task, laid.left, lies(task)), ...laid.bodies] };
}

function layOut(task: Task, lies: readonly TemplateLie[], { figures, mostParts }: Laying): Laid {
  const drawing = templateDrawing(task.opening);
  const tiling = tile(requestOf(task, drawing, lies).request);
  if (tiling.kind === "too-large") {
    return { kind: "refused", bodies: refusals(task, lies, tiling.grid), left: [] };
  }
  const { lie, tiles } = tiling;
  const words = tiles.length <= mostParts ? wordsOnAll(task, tiles, drawing, figures) : null;
  if (words === null) return { kind: "refused", bodies: [], left: [] };
  const bodies = words.worded.map(({ part, items }) => ({
    widthMm: lie.widthMm,
    heightMm: lie.heightMm,
    title: titleOf(task, part, tiles.length),
    frame: task.facts,
    items: [
      ...lie.items,
      ...part.items,
      layer("notes", [shifted(items, part.shift)]),
      layer("dimensions", axisMarks(task.order, lie, part.shift, part.window)),
    ],
  }));
  return { kind: "laid", bodies, left: words.left };
}

type Request = TileRequest<TemplateLie>;

/** With the whole flange, unless that takes more pages than the cut line alone. */
function requestOf(
  { order, opening }: Task,
  drawing: readonly Item[],
  lies: readonly TemplateLie[],
): { readonly request: Request; readonly pages: number } {
  const { wanted, least } = templateExtents(opening);
  // How parts are joined is one of the notes, so that it takes no height of every page.
  const words = { ...order.words.template.tiles, join: null };
  const whole: Request = { drawing, extent: wanted, lies, words };
  const bare: Request = { drawing, extent: least, lies, words };
  const [most, fewest] = [pagesTaken(whole), pagesTaken(bare)];
  return fewest < most ? { request: bare, pages: fewest } : { request: whole, pages: most };
}

function titleOf({ order, facts }: Task, { name }: Tile, of: number): string {
  return of === 1 ? facts.title : `${facts.title}, ${order.words.template.tiles.part(name, of)}`;
}

/** A part with its words in the drawing's coordinates, and the notes that it has no room for. */
interface Worded {
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
  task: Task,
  parts: readonly Tile[],
  drawing: readonly Item[],
  figures: Figures,
): { worded: Worded[]; left: readonly string[] } | null {
  const notes = notesToPlace(task, parts.length);
  const worded: Worded[] = [];
  let left: readonly string[] = notes;
  for (const part of parts) {
    const said = notes.filter((note) => !left.includes(note) && note !== doneNote(task));
    const words = wordsOn({ task, part, drawing, figures }, [...left, ...said]);
    if (words === null) return null;
    left = left.filter((note) => words.left.includes(note));
    worded.push(words);
  }
  return soughtRoom(worded, left);
}

/** What is left, wherever on a part there is room for it. */
function soughtRoom(
  worded: readonly Worded[],
  left: readonly string[],
): { worded: Worded[]; left: readonly string[] } {
  let still = left;
  const sought = worded.map((one): Worded => {
    const { placed, left: none } = seekRoom(still, one.ground);
    still = none;
    return { ...one, items: [...one.items, ...placed.items], ground: placed.ground };
  });
  return { worded: sought, left: still };
}

function notesToPlace(task: Task, parts: number): string[] {
  const { order, opening, notes } = task;
  const joining = parts === 1 || opening.mustNotCut ? [] : [order.words.template.tiles.join];
  return [...joining, ...notesOf(task)].filter((note) => !notes.includes(note));
}

interface Wording {
  readonly task: Task;
  readonly part: Tile;
  readonly drawing: readonly Item[];
  readonly figures: Figures;
}

/** Null where the part has no room for the figures. */
function wordsOn({ task, part, drawing, figures }: Wording, notes: readonly string[]): Worded | null {
  const { order, opening } = task;
  const back = point(-part.shift.x, -part.shift.y);
  const moved = (box: Window): Window => ({ ...box, x: box.x + back.x, y: box.y + back.y });
  const ground = groundOf(drawing, moved(part.clear), textBoxes(part.items).map(moved));
  const stop = opening.mustNotCut ? stopPlate(order, opening, ground) : { items: [], ground };
  const figured = figures(stop.ground);
  if (figured === null) return null;
  const named = labels(order, opening)(figured.ground);
  const { placed, left } = placeNotes(notes, named.ground);
  const items = [stop, figured, named, placed].flatMap((each) => each.items);
  return { part, items, left, ground: placed.ground };
}

/** Where no tiling is allowed: the figures, and what to print on instead. */
function refusals(task: Task, lies: readonly TemplateLie[], grid: Grid | null): Body[] {
  const { template } = task.order.words;
  const words = grid === null ? template.noRoom : template.tooLarge(grid.columns, grid.rows);
  return figuresPages(task, { words, notes: notesToPlace(task, 1) }, lies);
}

const notesPages = (task: Task, notes: readonly string[], lies: readonly TemplateLie[]): Body[] =>
  figuresPages(task, { words: task.facts.title, notes }, lies);

/** The figures, and words instead of a drawing, on as many pages as they take. */
function figuresPages(
  task: Task,
  { words, notes }: { words: string; notes: readonly string[] },
  [lie]: readonly TemplateLie[],
): Body[] {
  if (lie === undefined) throw new InternalError("no way for the paper to lie");
  const { area, widthMm, heightMm } = lie;
  const parts = [
    whole((place) => textBlock(words, { ...place, capMm: 5, face: "bold" })),
    ...notes.map((note) => whole((place) => textBlock(note, { ...place, capMm: 2.5 }))),
  ];
  return flow(parts, area, 2).map((items) => {
    const all = [...lie.items, layer("notes", items)];
    return { widthMm, heightMm, title: task.facts.title, frame: task.facts, items: all };
  });
}
