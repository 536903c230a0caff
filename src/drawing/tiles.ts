import type { Item, PagePoint, Text, Window } from "./drawing.js";
import { point } from "./pen.js";
import { seenIn, shownWhole, textBoxes } from "./shown.js";
import {
  type Cell,
  crossesOn,
  type Grid,
  letters,
  type Seam,
  sameCell,
  seamMarks,
  type TileWords,
  tileName,
  tileStrip,
  tileStripMm,
} from "./tile-marks.js";
import { touches } from "./touches.js";

export type { Cell, Grid, TileWords };

/** Two neighbours both show this much around the line that they share; the line is in its middle. Our own choice. */
export const OVERLAP_MM = 10;
/** More columns or rows than this are refused unless forced. Our own choice: nobody tapes more paper than that. */
export const MOST_TILES_A_SIDE = 4;
/** Between the window's edge and what stands in it. */
const AIR_MM = 1;

/** One way for the paper to lie, and the box on it that is free for the drawing. */
export interface Lie {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly area: Window;
}

export interface TileRequest<Paper extends Lie> {
  /** The finished drawing in its own coordinates; the same on every tile. */
  readonly drawing: readonly Item[];
  /** What of it must be shown, in its own coordinates. */
  readonly extent: Window;
  /** Ways for the paper to lie; the earlier wins where both need as many pages. */
  readonly lies: readonly Paper[];
  readonly words: TileWords;
  /** True where more than 4 x 4 was asked for by name. */
  readonly forced?: boolean;
}

export interface Tile {
  /** "A1": the row's letter and the column's number; also where the drawing fits on one page. */
  readonly name: string;
  readonly cell: Cell;
  /** Added to the drawing's coordinates to get the page's: millimetres, never a scale. */
  readonly shift: PagePoint;
  /** The part of the page that shows the drawing. */
  readonly window: Window;
  /** The part of the window that no trim line crosses and that stays when the sheet is trimmed. */
  readonly clear: Window;
  /** Everything inside the lie's area: the drawing's part, trim lines, crosses, and the strip with the map. */
  readonly items: readonly Item[];
}

export type Tiling<Paper extends Lie> =
  | { readonly kind: "tiled"; readonly lie: Paper; readonly grid: Grid; readonly tiles: readonly Tile[] }
  /** The grid that it would take; null where the paper has no room for a drawing at all. */
  | { readonly kind: "too-large"; readonly grid: Grid | null };

interface Layout<Paper extends Lie> {
  readonly lie: Paper;
  readonly grid: Grid;
  /** The part of the page that shows the drawing; the same on every tile. */
  readonly window: Window;
  /** Where the drawing's point at the window's corner lies, for the first tile. */
  readonly origin: PagePoint;
  /** Tiles that are printed; none where the paper has no room. */
  readonly cells: readonly Cell[];
}

/** How a drawing lies on its pages, before any of them is drawn. */
export interface Plan<Paper extends Lie> {
  readonly request: TileRequest<Paper>;
  /** The ways that were tried and hold it. */
  readonly layouts: readonly Layout<Paper>[];
  /** The one with the fewest pages; null where all are refused. */
  readonly best: Layout<Paper> | null;
}

/**
 * A drawing on as few pages as the paper allows: one where it fits, else the same drawing shifted under each page
 * with a window over it. Millimetres stay millimetres. Refused over 4 x 4 unless forced.
 */
export const tile = <Paper extends Lie>(request: TileRequest<Paper>): Tiling<Paper> =>
  tiled(planned(request));

/** The pages of a plan, drawn. */
export function tiled<Paper extends Lie>({ request, layouts, best }: Plan<Paper>): Tiling<Paper> {
  if (best === null) return { kind: "too-large", grid: fewest(layouts)?.grid ?? null };
  const shared: Shared = {
    seams: seamsOf(best, textBoxes(request.drawing)),
    whole: shownWhole(
      request.drawing,
      best.cells.map((each) => viewOf(best, each)),
    ),
  };
  const tiles = best.cells.map((cell) => drawTile(request, best, cell, shared));
  return { kind: "tiled", lie: best.lie, grid: best.grid, tiles };
}

/** How many pages a plan takes; infinitely many where it is refused. */
export const pagesTaken = ({ best }: Plan<Lie>): number => best?.cells.length ?? Number.POSITIVE_INFINITY;

/** What two neighbouring tiles would both show, in the drawing's coordinates: words that stand there are cut. */
export function jointsOf<Paper extends Lie>(request: TileRequest<Paper>): Window[] {
  const { best } = planned(request);
  if (best === null) return [];
  const has = (cell: Cell): boolean => best.cells.some((each) => sameCell(each, cell));
  return best.cells.flatMap((cell) => {
    const view = viewOf(best, cell);
    const { row, column } = cell;
    return [
      ...(has({ row, column: column - 1 }) ? [{ ...view, widthMm: OVERLAP_MM }] : []),
      ...(has({ row: row - 1, column }) ? [{ ...view, heightMm: OVERLAP_MM }] : []),
    ];
  });
}

/** Tries every way for the paper to lie, but none after one that takes a single page. */
export function planned<Paper extends Lie>(request: TileRequest<Paper>): Plan<Paper> {
  const isAllowed = ({ grid }: Layout<Paper>): boolean => request.forced === true || isModest(grid);
  const layouts: Layout<Paper>[] = [];
  for (const lie of request.lies) {
    const layout = layOut(request, lie);
    if (layout.cells.length > 0) layouts.push(layout);
    if (layout.cells.length === 1 && isAllowed(layout)) break;
  }
  const best = fewest(layouts.filter(isAllowed));
  return { request, layouts, best: best ?? null };
}

/** What is the same for all tiles of a drawing. */
interface Shared {
  readonly seams: readonly Seam[];
  /** Texts that some tile shows whole. */
  readonly whole: ReadonlySet<Text>;
}

const isModest = ({ columns, rows }: Grid): boolean =>
  columns <= MOST_TILES_A_SIDE && rows <= MOST_TILES_A_SIDE;

function fewest<Paper extends Lie>(layouts: readonly Layout<Paper>[]): Layout<Paper> | undefined {
  return layouts.reduce<Layout<Paper> | undefined>(
    (best, layout) => (best !== undefined && best.cells.length <= layout.cells.length ? best : layout),
    undefined,
  );
}

/** The strip over a tile grows with its map, and the map with the rows: laid out again until the strip is high enough. */
function layOut<Paper extends Lie>(request: TileRequest<Paper>, lie: Paper, stripMm = 0): Layout<Paper> {
  const layout = layOutBelow(request, lie, stripMm);
  if (layout.cells.length <= 1) return layout;
  const neededMm = tileStripMm(layout.grid, ...stripOf(request, layout, { row: 0, column: 0 }));
  return neededMm <= stripMm ? layout : layOut(request, lie, neededMm);
}

function layOutBelow<Paper extends Lie>(
  { drawing, extent }: TileRequest<Paper>,
  lie: Paper,
  stripMm: number,
): Layout<Paper> {
  const window = { ...lie.area, y: lie.area.y + stripMm, heightMm: lie.area.heightMm - stripMm };
  const grid = {
    columns: pagesFor(extent.widthMm, window.widthMm),
    rows: pagesFor(extent.heightMm, window.heightMm),
  };
  const origin = point(
    extent.x - (coveredMm(grid.columns, window.widthMm) - extent.widthMm) / 2,
    extent.y - (coveredMm(grid.rows, window.heightMm) - extent.heightMm) / 2,
  );
  const layout = { lie, grid, window, origin };
  return { ...layout, cells: neededCells(drawing, layout) };
}

/** Pages side by side that cover a length; infinitely many where the page is no wider than the overlap. */
function pagesFor(lengthMm: number, windowMm: number): number {
  if (windowMm <= OVERLAP_MM) return Number.POSITIVE_INFINITY;
  return Math.max(1, Math.ceil((lengthMm - OVERLAP_MM) / (windowMm - OVERLAP_MM) - 1e-9));
}

const coveredMm = (pages: number, windowMm: number): number => pages * (windowMm - OVERLAP_MM) + OVERLAP_MM;

type Placing = Pick<Layout<Lie>, "grid" | "window" | "origin">;

/** The part of the drawing that a tile shows, in the drawing's coordinates. */
function viewOf({ window, origin }: Placing, { row, column }: Cell): Window {
  return {
    x: origin.x + column * (window.widthMm - OVERLAP_MM),
    y: origin.y + row * (window.heightMm - OVERLAP_MM),
    widthMm: window.widthMm,
    heightMm: window.heightMm,
  };
}

function allCells({ columns, rows }: Grid): Cell[] {
  return Array.from({ length: columns * rows }, (_, index) => ({
    row: Math.floor(index / columns),
    column: index % columns,
  }));
}

/**
 * Tiles that show anything. All of them where leaving out the empty ones would part the rest: what holds two parts
 * at their distance is not empty.
 */
function neededCells(drawing: readonly Item[], placing: Placing): Cell[] {
  if (!Number.isFinite(placing.grid.columns * placing.grid.rows)) return [];
  const all = allCells(placing.grid);
  const inked = all.filter((cell) => {
    const view = viewOf(placing, cell);
    // From the end: last comes what the drawing is of, and most cells show some of it.
    return drawing.findLastIndex((item) => touches(item, view)) >= 0;
  });
  return inked.length > 0 && hangTogether(inked) ? inked : all;
}

function hangTogether(cells: readonly Cell[]): boolean {
  const reached = new Set(cells.slice(0, 1));
  for (const cell of reached) {
    for (const other of cells) if (areNeighbours(cell, other)) reached.add(other);
  }
  return reached.size === cells.length;
}

const areNeighbours = (a: Cell, b: Cell): boolean =>
  Math.abs(a.row - b.row) + Math.abs(a.column - b.column) === 1;

/** Every edge that two printed tiles share, each cross with a letter of its own. */
function seamsOf(layout: Layout<Lie>, texts: readonly Window[]): Seam[] {
  const pairs = layout.cells.flatMap((cell) =>
    layout.cells
      .filter((other) => areNeighbours(cell, other) && other.row + other.column > cell.row + cell.column)
      .map((other) => [cell, other] as const),
  );
  return pairs.map(([cell, other], index) => {
    const view = viewOf(layout, other);
    const half = OVERLAP_MM / 2;
    const direction = cell.row === other.row ? "down" : "across";
    const from = point(
      view.x + (direction === "down" ? half : 0),
      view.y + (direction === "down" ? 0 : half),
    );
    const to =
      direction === "down" ? point(from.x, view.y + view.heightMm) : point(view.x + view.widthMm, from.y);
    return {
      direction,
      from,
      to,
      crosses: crossesOn({ from, to }, [letters(2 * index), letters(2 * index + 1)], texts),
      cells: [cell, other],
    };
  });
}

function drawTile<Paper extends Lie>(
  request: TileRequest<Paper>,
  layout: Layout<Paper>,
  cell: Cell,
  { seams, whole }: Shared,
): Tile {
  const view = viewOf(layout, cell);
  const shift = point(layout.window.x - view.x, layout.window.y - view.y);
  const shown = seenIn(request.drawing, view, whole);
  const texts = textBoxes(shown);
  const marks = seams
    .filter(({ cells }) => cells.some((each) => sameCell(each, cell)))
    .map((seam) => seamMarks(seam, sameCell(seam.cells[0], cell) ? "before" : "after", texts));
  const strip =
    layout.cells.length === 1 ? [] : tileStrip(layout.grid, ...stripOf(request, layout, cell)).items;
  return {
    name: tileName(cell),
    cell,
    shift,
    window: layout.window,
    clear: clearOf(layout, cell),
    items: [{ kind: "group", shift, window: layout.window, items: [...shown, ...marks] }, ...strip],
  };
}

/** Without the overlap on each side that has a neighbour, and a little air. */
function clearOf({ window, cells }: Layout<Lie>, { row, column }: Cell): Window {
  const inset = (rowStep: number, columnStep: number): number =>
    AIR_MM +
    (cells.some((each) => sameCell(each, { row: row + rowStep, column: column + columnStep }))
      ? OVERLAP_MM
      : 0);
  const [left, right, top, bottom] = [inset(0, -1), inset(0, 1), inset(-1, 0), inset(1, 0)];
  return {
    x: window.x + left,
    y: window.y + top,
    widthMm: window.widthMm - left - right,
    heightMm: window.heightMm - top - bottom,
  };
}

/** Which tile a strip is of and where it stands. */
function stripOf<Paper extends Lie>({ words }: TileRequest<Paper>, { lie, cells }: Layout<Paper>, own: Cell) {
  const { x, y, widthMm } = lie.area;
  return [
    { all: cells, own },
    { x, y, widthMm, words },
  ] as const;
}
