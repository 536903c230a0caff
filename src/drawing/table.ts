import type { Anchor, Item } from "./drawing.js";
import { grey } from "./drawing.js";
import { dashed, filled, line, PEN, point, rectangle } from "./pen.js";
import { measureText, wrapText } from "./text.js";
import { LINE_PITCH, textBlock } from "./text-block.js";

export interface Column {
  readonly heading: string;
  /** Share of the spare width that the column takes beyond what its longest word needs. */
  readonly weight: number;
  readonly anchor?: Anchor;
  readonly capMm?: number;
  readonly face?: "regular" | "bold";
  /** Never narrower than this, in mm (a box to write in). */
  readonly leastMm?: number;
}

export type Cell = string | { readonly kind: "tick" } | { readonly kind: "write" };

export interface Table {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  readonly capMm: number;
}

export interface TablePage {
  readonly items: readonly Item[];
  readonly heightMm: number;
  readonly rowCount: number;
}

const PAD_MM = 1.4;

const capOf = (table: Table, column: Column): number => column.capMm ?? table.capMm;

function longestWordMm(words: string, capMm: number, face: "regular" | "bold"): number {
  return Math.max(0, ...words.split(/\s+/).map((word) => measureText(word, { capMm, face }).widthMm));
}

function leastWidthMm(table: Table, column: Column, index: number): number {
  const cells = table.rows.map((row) => {
    const cell = row[index];
    if (typeof cell !== "string") return cell?.kind === "tick" ? 6 : 18;
    return longestWordMm(cell, capOf(table, column), column.face ?? "regular");
  });
  const heading = longestWordMm(column.heading, 2.5, "bold");
  return Math.max(column.leastMm ?? 0, heading, ...cells) + 2 * PAD_MM;
}

/** Column widths that fill `widthMm`; where the longest words alone need more, all shrink in proportion and words break. */
export function columnWidthsMm(table: Table, widthMm: number): number[] {
  const least = table.columns.map((column, index) => leastWidthMm(table, column, index));
  const needed = least.reduce((sum, width) => sum + width, 0);
  if (needed >= widthMm) return least.map((width) => (width * widthMm) / needed);
  const weights = table.columns.reduce((sum, column) => sum + column.weight, 0);
  return least.map((width, index) => {
    const weight = table.columns[index]?.weight ?? 0;
    return width + (weights === 0 ? 0 : ((widthMm - needed) * weight) / weights);
  });
}

function cellLines(cell: Cell, capMm: number, face: "regular" | "bold", widthMm: number): number {
  return typeof cell === "string" ? wrapText(cell, { capMm, face, widthMm: widthMm - 2 * PAD_MM }).length : 1;
}

function rowHeightMm(table: Table, row: readonly Cell[], widths: readonly number[]): number {
  const heights = table.columns.map((column, index) => {
    const capMm = capOf(table, column);
    const lines = cellLines(row[index] ?? "", capMm, column.face ?? "regular", widths[index] ?? 0);
    return lines * capMm * LINE_PITCH;
  });
  return Math.max(6, ...heights) + 2 * PAD_MM - 0.6;
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

function drawCell(cell: Cell, spot: Spot, column: Column, capMm: number): readonly Item[] {
  if (typeof cell === "string") {
    const place = { x: spot.x + PAD_MM, y: spot.y + PAD_MM, widthMm: spot.widthMm - 2 * PAD_MM };
    return textBlock(cell, {
      ...place,
      capMm,
      face: column.face ?? "regular",
      anchor: column.anchor ?? "start",
    }).items;
  }
  if (cell.kind === "tick") {
    return [rectangle({ x: spot.x + (spot.widthMm - 5) / 2, y: spot.y + PAD_MM, widthMm: 5, heightMm: 5 })];
  }
  const y = spot.y + spot.heightMm - 2;
  return [
    line(point(spot.x + PAD_MM, y), point(spot.x + spot.widthMm - PAD_MM, y), dashed(PEN.fine, 0.8, 0.8)),
  ];
}

function headingHeightMm(table: Table, widths: readonly number[]): number {
  const lines = table.columns.map((column, index) =>
    cellLines(column.heading, 2.5, "bold", widths[index] ?? 0),
  );
  return Math.max(...lines) * 2.5 * LINE_PITCH + 2 * PAD_MM - 0.6;
}

function lefts(x: number, widths: readonly number[]): number[] {
  let at = x;
  return widths.map((width) => {
    const left = at;
    at += width;
    return left;
  });
}

/**
 * As much of a table as fits into a height, from row `first` on, its heading repeated: the caller asks again for the
 * rest. At least one row is taken, so that a loop over pages ends.
 */
export function tablePage(
  table: Table,
  place: { x: number; y: number; widthMm: number; heightMm: number; first: number },
): TablePage {
  const widths = columnWidthsMm(table, place.widthMm);
  const x = lefts(place.x, widths);
  const heading = headingHeightMm(table, widths);
  const items: Item[] = [
    filled({ x: place.x, y: place.y, widthMm: place.widthMm, heightMm: heading }, grey(0.9)),
  ];
  table.columns.forEach((column, index) => {
    const spot = { x: x[index] ?? 0, y: place.y, widthMm: widths[index] ?? 0, heightMm: heading };
    items.push(...drawCell(column.heading, spot, { ...column, face: "bold" }, 2.5));
  });
  const rule = (y: number): Item => line(point(place.x, y), point(place.x + place.widthMm, y), PEN.fine);
  let y = place.y + heading;
  items.push(rule(place.y), rule(y));
  let taken = 0;
  for (const row of table.rows.slice(place.first)) {
    const heightMm = rowHeightMm(table, row, widths);
    if (taken > 0 && y + heightMm > place.y + place.heightMm) break;
    table.columns.forEach((column, index) => {
      const spot = { x: x[index] ?? 0, y, widthMm: widths[index] ?? 0, heightMm };
      items.push(...drawCell(row[index] ?? "", spot, column, capOf(table, column)));
    });
    y += heightMm;
    items.push(rule(y));
    taken += 1;
  }
  for (const left of [...x, place.x + place.widthMm])
    items.push(line(point(left, place.y), point(left, y), PEN.fine));
  return { items, heightMm: y - place.y, rowCount: taken };
}
