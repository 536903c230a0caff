import { grey, type Item, type PagePoint, type Text, type Window } from "./drawing.js";
import { dashed, filled, layer, line, PEN, point, rectangle, text } from "./pen.js";
import { fitText, measureText, textBox } from "./text.js";
import { type Block, LINE_PITCH, textBlock } from "./text-block.js";
import { boxesMeet } from "./touches.js";

/** Where a tile stands in the grid, from the top left. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** What is said on a page that is one of several. */
export interface TileWords {
  /** "Part A1 of 4". */
  readonly part: (name: string, of: number) => string;
  /** How two parts are joined; null where the page says it elsewhere. */
  readonly join: string | null;
}

/** A line that two neighbouring tiles share, the trim line of either, in the drawing's coordinates. */
export interface Seam {
  readonly direction: "across" | "down";
  readonly from: PagePoint;
  readonly to: PagePoint;
  /** One about a quarter along it, one about three quarters. */
  readonly crosses: readonly Cross[];
  /** Tiles before it (left, above) and after it. */
  readonly cells: readonly [Cell, Cell];
}

/** A cross that both tiles print, and the letter beside it. */
export interface Cross {
  readonly at: PagePoint;
  readonly letter: string;
}

/** Shares of a seam's length at which its crosses may stand, best first; the second counts from the other end. */
const PLACES: readonly number[] = [
  0.25, 0.22, 0.28, 0.19, 0.31, 0.16, 0.34, 0.13, 0.37, 0.1, 0.4, 0.07, 0.43, 0.05, 0.46,
];

/** The crosses of a seam, where no words of the drawing stand if there is such a place. */
export function crossesOn(
  { from, to }: Pick<Seam, "from" | "to">,
  letters: readonly [string, string],
  words: readonly Window[],
): Cross[] {
  return letters.map((letter, index) => {
    const places = PLACES.map((part) => along(from, to, index === 0 ? part : 1 - part));
    const isFree = (at: PagePoint): boolean => !words.some((box) => boxesMeet(box, reachOf(letter, at)));
    return { letter, at: places.find(isFree) ?? along(from, to, index === 0 ? 0.25 : 0.75) };
  });
}

const along = (from: PagePoint, to: PagePoint, part: number): PagePoint =>
  point(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part);

/** What a cross and its letter on either side of the seam may cover. */
function reachOf(letter: string, { x, y }: PagePoint): Window {
  const style = { capMm: LETTER_MM, face: "bold" } as const;
  const across = Math.max(ARM_MM, ASIDE_MM + measureText(letter, style).widthMm);
  const down = Math.max(ARM_MM, ASIDE_MM + LETTER_MM * LINE_PITCH);
  return { x: x - across, y: y - down, widthMm: 2 * across, heightMm: 2 * down };
}

/** A, B ... Z, AA, AB ...; 0 is A. */
export function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}

/** A1, A2, B1 ...: the row's letter, the column's number. */
export const tileName = ({ row, column }: Cell): string => `${letters(row)}${column + 1}`;

export const sameCell = (a: Cell, b: Cell): boolean => a.row === b.row && a.column === b.column;

const ARM_MM = 3;
const LETTER_MM = 2.5;
const ASIDE_MM = 1.2;

/** Trim line and crosses of one seam as the tile on that side of it prints them. */
export function seamMarks(seam: Seam, side: "before" | "after", avoid: readonly Window[]): Item {
  const crosses = seam.crosses.flatMap(({ at, letter }) => [
    line(point(at.x - ARM_MM, at.y), point(at.x + ARM_MM, at.y), PEN.fine),
    line(point(at.x, at.y - ARM_MM), point(at.x, at.y + ARM_MM), PEN.fine),
    crossLetter(letter, at, { direction: seam.direction, side, avoid }),
  ]);
  return layer("notes", [line(seam.from, seam.to, dashed(PEN.fine, 4, 2)), ...crosses]);
}

/** On the tile's own side of the seam, so that trimming leaves it; in the first of its places that is free. */
function crossLetter(
  letter: string,
  at: PagePoint,
  place: { direction: Seam["direction"]; side: "before" | "after"; avoid: readonly Window[] },
): Text {
  const own = place.side === "before" ? -1 : 1;
  const choices = [1, -1].map((other) => {
    const [x, y] = place.direction === "down" ? [own, other] : [other, own];
    const baseline = at.y + (y > 0 ? ASIDE_MM + LETTER_MM : -ASIDE_MM);
    return text(point(at.x + x * ASIDE_MM, baseline), letter, {
      capMm: LETTER_MM,
      face: "bold",
      anchor: x > 0 ? "start" : "end",
    });
  });
  const free = choices.find((choice) => !place.avoid.some((box) => boxesMeet(box, textBox(choice))));
  return free ?? choices[0] ?? text(at, letter, { capMm: LETTER_MM });
}

export interface Grid {
  readonly columns: number;
  readonly rows: number;
}

const CELL = { widthMm: 7, heightMm: 4.2 };
const MAP_CELLS = 4;
const PAD_MM = 1.5;
const NAME_MM = 5;
/** Narrower than this, the words about joining stand under the name and not beside it. */
const LEAST_JOIN_MM = 60;

/** Cells as large as their names need, smaller and nameless where a forced layout has many. */
function cellSize({ columns, rows }: Grid): { widthMm: number; heightMm: number; named: boolean } {
  const named = columns <= MAP_CELLS && rows <= MAP_CELLS;
  if (named) return { ...CELL, named };
  return {
    widthMm: (CELL.widthMm * MAP_CELLS) / Math.max(columns, MAP_CELLS),
    heightMm: (CELL.heightMm * MAP_CELLS) / Math.max(rows, MAP_CELLS),
    named,
  };
}

/** A small map of the whole with this tile grey; tiles that are not printed have no cell. */
function tileMap(grid: Grid, tiles: Tiles, corner: PagePoint): Item[] {
  const cell = cellSize(grid);
  return tiles.all.flatMap((each) => {
    const box = {
      x: corner.x + each.column * cell.widthMm,
      y: corner.y + each.row * cell.heightMm,
      widthMm: cell.widthMm,
      heightMm: cell.heightMm,
    };
    const own = sameCell(each, tiles.own);
    const label = text(
      point(box.x + box.widthMm / 2, box.y + (box.heightMm + LETTER_MM) / 2),
      tileName(each),
      {
        capMm: LETTER_MM,
        face: own ? "bold" : "regular",
        anchor: "middle",
      },
    );
    return [
      ...(own ? [filled(box, grey(0.75))] : []),
      rectangle(box, PEN.fine),
      ...(cell.named ? [label] : []),
    ];
  });
}

interface Tiles {
  readonly all: readonly Cell[];
  readonly own: Cell;
}

interface StripPlace {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly words: TileWords;
}

/** The strip over a tile: its name, how it joins the others, and the map. */
export function tileStrip(grid: Grid, tiles: Tiles, place: StripPlace): Block {
  const { x, y, widthMm } = place;
  const { name, capMm, join, mapMm, heightMm } = stripParts(grid, tiles, place);
  return {
    items: [
      text(point(x, y + capMm), name, { capMm, face: "bold" }),
      ...join.items,
      ...tileMap(grid, tiles, point(x + widthMm - mapMm.widthMm, y)),
    ],
    heightMm,
  };
}

/** Height of that strip in mm, which is wanted more often than the strip. */
export const tileStripMm = (grid: Grid, tiles: Tiles, place: StripPlace): number =>
  stripParts(grid, tiles, place).heightMm;

function stripParts(grid: Grid, tiles: Tiles, place: StripPlace) {
  const { words, x, y } = place;
  const cell = cellSize(grid);
  const mapMm = { widthMm: grid.columns * cell.widthMm, heightMm: grid.rows * cell.heightMm };
  const roomMm = place.widthMm - mapMm.widthMm - PAD_MM;
  const name = words.part(tileName(tiles.own), tiles.all.length);
  const face = "bold";
  const capMm = fitText(name, { face, widthMm: roomMm, leastMm: LETTER_MM, mostMm: NAME_MM });
  const nameMm = measureText(name, { capMm, face }).widthMm + 2 * PAD_MM;
  const beside = roomMm - nameMm > LEAST_JOIN_MM;
  const join = joinBlock(words.join, {
    x: beside ? x + nameMm : x,
    y: beside ? y : y + capMm * LINE_PITCH,
    widthMm: beside ? roomMm - nameMm : roomMm,
  });
  const nameHeightMm = capMm + PAD_MM;
  const wordsMm = beside ? Math.max(nameHeightMm, join.heightMm) : capMm * LINE_PITCH + join.heightMm;
  return { name, capMm, join, mapMm, heightMm: Math.max(nameHeightMm, wordsMm, mapMm.heightMm) + PAD_MM };
}

function joinBlock(words: string | null, place: { x: number; y: number; widthMm: number }): Block {
  return words === null ? { items: [], heightMm: 0 } : textBlock(words, { ...place, capMm: LETTER_MM });
}
