import type { Anchor, Face, Item } from "./drawing.js";
import { grey } from "./drawing.js";
import type { DrawnLater } from "./drawn-later.js";
import { dashed, filled, line, PEN, point, rectangle } from "./pen.js";
import { textWidthMm, wrapText } from "./text.js";
import { type Block, LINE_PITCH, stack, textBlock } from "./text-block.js";

export interface Column {
  readonly heading: string;
  /** Share of the spare width that the column takes beyond what its longest word needs. */
  readonly weight: number;
  readonly anchor?: Anchor;
  readonly capMm?: number;
  readonly face?: Face;
  /** Never narrower than this, in mm (a box to write in). */
  readonly leastMm?: number;
}

/** Words of one size; one cell may stack several, the figure that matters large. */
export interface CellLine {
  readonly words: string;
  readonly capMm: number;
  readonly face: Face;
}

export type Cell =
  | string
  | { readonly kind: "tick" }
  | { readonly kind: "write" }
  | { readonly kind: "lines"; readonly lines: readonly CellLine[] };

export interface Table {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  readonly capMm: number;
  /** Words across the whole width under a row, never parted from it, in the order of the rows. */
  readonly under?: readonly (readonly CellLine[])[];
}

/** Where a page of a table begins, and its first row on it. */
interface TablePlace extends Spot {
  readonly first: number;
}

export interface TablePage extends DrawnLater {
  readonly rowCount: number;
}

const PAD_MM = 1.4;
const TICK_MM = 5;
const HEADING: Omit<CellLine, "words"> = { capMm: 2.5, face: "bold" };

/** What of a cell is words, in the sizes that they are drawn in. */
function linesOf(table: Table, column: Column, cell: Cell): readonly CellLine[] {
  if (typeof cell === "string") {
    return [{ words: cell, capMm: column.capMm ?? table.capMm, face: column.face ?? "regular" }];
  }
  return cell.kind === "lines" ? cell.lines : [];
}

function longestWordMm(lines: readonly CellLine[]): number {
  let longestMm = 0;
  for (const each of lines) {
    for (const word of each.words.split(" ")) longestMm = Math.max(longestMm, textWidthMm(word, each));
  }
  return longestMm;
}

const leastOfKind = (cell: Cell | undefined): number => {
  if (cell === undefined || typeof cell === "string") return 0;
  return { tick: TICK_MM + 1, write: 18, lines: 0 }[cell.kind];
};

/** Each table's columns are measured once, however many pages it runs over and however often those are laid out. */
const leastWidths = new WeakMap<Table, readonly number[]>();

function leastWidthsMm(table: Table): readonly number[] {
  const known = leastWidths.get(table);
  if (known !== undefined) return known;
  const widths = table.columns.map((column, index) => leastWidthMm(table, column, index));
  leastWidths.set(table, widths);
  return widths;
}

function leastWidthMm(table: Table, column: Column, index: number): number {
  const cells = table.rows.map((row) => {
    const cell = row[index];
    return Math.max(leastOfKind(cell), longestWordMm(linesOf(table, column, cell ?? "")));
  });
  const heading = longestWordMm([{ ...HEADING, words: column.heading }]);
  return Math.max(column.leastMm ?? 0, heading, ...cells) + 2 * PAD_MM;
}

/** Column widths that fill `widthMm`; where the longest words alone need more, all shrink in proportion and words break. */
export function columnWidthsMm(table: Table, widthMm: number): number[] {
  const least = leastWidthsMm(table);
  const needed = least.reduce((sum, width) => sum + width, 0);
  if (needed >= widthMm) return least.map((width) => (width * widthMm) / needed);
  const weights = table.columns.reduce((sum, column) => sum + column.weight, 0);
  return least.map((width, index) => {
    const weight = table.columns[index]?.weight ?? 0;
    return width + (weights === 0 ? 0 : ((widthMm - needed) * weight) / weights);
  });
}

/** Height of lines under each other in a width, padding included. */
function linesHeightMm(lines: readonly CellLine[], widthMm: number): number {
  const heights = lines.map(
    ({ words, capMm, face }) =>
      wrapText(words, { capMm, face, widthMm: widthMm - 2 * PAD_MM }).length * capMm * LINE_PITCH,
  );
  return heights.reduce((sum, height) => sum + height, 0) + 2 * PAD_MM - 0.6;
}

const LEAST_ROW_MM = TICK_MM + 2 * PAD_MM;

function rowHeightMm(table: Table, row: readonly Cell[], widths: readonly number[]): number {
  const heights = table.columns.map((column, index) =>
    linesHeightMm(linesOf(table, column, row[index] ?? ""), widths[index] ?? 0),
  );
  return Math.max(LEAST_ROW_MM, ...heights);
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

function drawLines(lines: readonly CellLine[], spot: Spot, anchor: Anchor): readonly Item[] {
  const [x, widthMm] = [spot.x + PAD_MM, spot.widthMm - 2 * PAD_MM];
  const makers = lines.map(
    ({ words, capMm, face }) =>
      (y: number) =>
        textBlock(words, { x, y, widthMm, capMm, face, anchor }),
  );
  return stack(spot.y + PAD_MM, makers).items;
}

function drawCell(table: Table, column: Column, cell: Cell, spot: Spot): readonly Item[] {
  if (typeof cell === "string" || cell.kind === "lines") {
    return drawLines(linesOf(table, column, cell), spot, column.anchor ?? "start");
  }
  if (cell.kind === "tick") {
    const x = spot.x + (spot.widthMm - TICK_MM) / 2;
    return [rectangle({ x, y: spot.y + PAD_MM, widthMm: TICK_MM, heightMm: TICK_MM })];
  }
  const y = spot.y + Math.min(spot.heightMm, LEAST_ROW_MM) - 2;
  return [
    line(point(spot.x + PAD_MM, y), point(spot.x + spot.widthMm - PAD_MM, y), dashed(PEN.fine, 0.8, 0.8)),
  ];
}

function lefts(x: number, widths: readonly number[]): number[] {
  let at = x;
  return widths.map((width) => {
    const left = at;
    at += width;
    return left;
  });
}

interface Grid {
  readonly table: Table;
  readonly x: number;
  readonly widthMm: number;
  readonly widths: readonly number[];
  readonly lefts: readonly number[];
}

const rule = ({ x, widthMm }: Grid, y: number): Item => line(point(x, y), point(x + widthMm, y), PEN.fine);

/** Lines between the columns over a stretch of the page. */
const posts = (grid: Grid, y: number, heightMm: number): Item[] =>
  [...grid.lefts, grid.x + grid.widthMm].map((x) => line(point(x, y), point(x, y + heightMm), PEN.fine));

function headingBand(grid: Grid, y: number): DrawnLater {
  const headings = grid.table.columns.map(({ heading }) => [{ ...HEADING, words: heading }]);
  const heightMm = Math.max(...headings.map((lines, index) => linesHeightMm(lines, grid.widths[index] ?? 0)));
  const draw = (): Item[] => [
    filled({ x: grid.x, y, widthMm: grid.widthMm, heightMm }, grey(0.9)),
    ...headings.flatMap((lines, index) => {
      const spot = { x: grid.lefts[index] ?? 0, y, widthMm: grid.widths[index] ?? 0, heightMm };
      return drawLines(lines, spot, grid.table.columns[index]?.anchor ?? "start");
    }),
    rule(grid, y),
    rule(grid, y + heightMm),
    ...posts(grid, y, heightMm),
  ];
  return { heightMm, draw };
}

function rowBand(grid: Grid, index: number, y: number): DrawnLater {
  const { table, widths } = grid;
  const row = table.rows[index] ?? [];
  const cellsMm = rowHeightMm(table, row, widths);
  const under = underBand(grid, index, y + cellsMm);
  const heightMm = cellsMm + under.heightMm;
  const draw = (): Item[] => [
    ...table.columns.flatMap((column, at) => {
      const spot = { x: grid.lefts[at] ?? 0, y, widthMm: widths[at] ?? 0, heightMm: cellsMm };
      return drawCell(table, column, row[at] ?? "", spot);
    }),
    ...posts(grid, y, cellsMm),
    ...under.draw(),
    rule(grid, y + heightMm),
  ];
  return { heightMm, draw };
}

function underBand(grid: Grid, index: number, y: number): DrawnLater {
  const lines = grid.table.under?.[index] ?? [];
  if (lines.length === 0) return { heightMm: 0, draw: () => [] };
  const heightMm = linesHeightMm(lines, grid.widthMm);
  const box = { x: grid.x, y, widthMm: grid.widthMm, heightMm };
  return { heightMm, draw: () => [...drawLines(lines, box, "start"), ...outer(grid, y, heightMm)] };
}

const outer = (grid: Grid, y: number, heightMm: number): Item[] =>
  [grid.x, grid.x + grid.widthMm].map((x) => line(point(x, y), point(x, y + heightMm), PEN.fine));

/**
 * As much of a table as fits into a height, from row `first` on, its heading repeated: the caller asks again for the
 * rest. At least one row is taken, so that a loop over pages ends. Its height is known before its items are made.
 */
export function tableLater(table: Table, place: TablePlace): TablePage {
  const widths = columnWidthsMm(table, place.widthMm);
  const grid: Grid = { table, x: place.x, widthMm: place.widthMm, widths, lefts: lefts(place.x, widths) };
  const heading = headingBand(grid, place.y);
  const bands: DrawnLater[] = [heading];
  let y = place.y + heading.heightMm;
  let index = place.first;
  for (; index < table.rows.length; index += 1) {
    const band = rowBand(grid, index, y);
    if (index > place.first && y + band.heightMm > place.y + place.heightMm) break;
    bands.push(band);
    y += band.heightMm;
  }
  return {
    heightMm: y - place.y,
    rowCount: index - place.first,
    draw: () => bands.flatMap(({ draw }) => draw()),
  };
}

/** The same, drawn. */
export function tablePage(table: Table, place: TablePlace): Block & { readonly rowCount: number } {
  const { heightMm, rowCount, draw } = tableLater(table, place);
  return { heightMm, rowCount, items: draw() };
}
