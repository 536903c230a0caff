/*
 * Drawings for measuring by: a cut line as it stands on a real sheet, crossed by its centre lines, with a flange line,
 * a dimension and words beside it, on one page or on tiles.
 */
import { BLACK, type Item, type Layer, type Page, type Stroke } from "../../src/drawing/drawing.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import { PAPERS, type Paper, parsePaper } from "../../src/standards/paper.js";
import type { NearCircle, NearRectangle } from "./measure.js";
import type { Point, Region } from "./picture.js";

export const LAYER_NAMES: Readonly<Record<Layer, string>> = {
  cut: "Cut",
  clear: "Clear area",
  framing: "Framing",
  obstructions: "Obstructions",
  dimensions: "Dimensions",
  aim: "Aim",
  notes: "Notes",
};

const CUT: Stroke = { widthMm: 0.7, ink: BLACK };
const THIN: Stroke = { widthMm: 0.25, ink: BLACK };

export type Cut =
  | { readonly kind: "circle"; readonly diameterMm: number }
  | { readonly kind: "rectangle"; readonly widthMm: number; readonly heightMm: number };

export const ROUND: Cut = { kind: "circle", diameterMm: 235 };
export const RECTANGULAR: Cut = { kind: "rectangle", widthMm: 200, heightMm: 342.9 };

export const sizeOf = (cut: Cut): { widthMm: number; heightMm: number } =>
  cut.kind === "circle" ? { widthMm: cut.diameterMm, heightMm: cut.diameterMm } : cut;

export const scaled = (cut: Cut, ratio: number): Cut =>
  cut.kind === "circle"
    ? { kind: "circle", diameterMm: cut.diameterMm / ratio }
    : { kind: "rectangle", widthMm: cut.widthMm / ratio, heightMm: cut.heightMm / ratio };

/** A cut line about `centre` with what stands around it. */
export function cutItems(cut: Cut, centre: Point): Item[] {
  const { widthMm, heightMm } = sizeOf(cut);
  const [right, bottom] = [centre.x + widthMm / 2, centre.y + heightMm / 2];
  const corner = { x: centre.x - widthMm / 2, y: centre.y - heightMm / 2 };
  const line = (from: Point, to: Point): Item => ({ kind: "line", from, to, stroke: THIN });
  const mark = { role: "cut", speaker: "TFL" } as const;
  const outline: Item =
    cut.kind === "circle"
      ? { kind: "circle", centre, radiusMm: cut.diameterMm / 2, stroke: CUT, mark }
      : { kind: "rectangle", corner, widthMm, heightMm, cornerRadiusMm: widthMm / 20, stroke: CUT, mark };
  const words: Item = {
    kind: "text",
    at: { x: centre.x, y: corner.y + 4 },
    text: "CUT HERE / CORTE AQUÍ",
    capMm: 5,
    face: "bold",
    anchor: "middle",
    ink: BLACK,
  };
  const flange: Item = { kind: "circle", centre, radiusMm: widthMm / 2 + 4, stroke: THIN };
  return [
    { kind: "group", layer: "cut", items: [outline] },
    line({ x: corner.x - 5, y: centre.y }, { x: right + 5, y: centre.y }),
    line({ x: centre.x, y: corner.y - 5 }, { x: centre.x, y: bottom + 5 }),
    line(corner, { x: right, y: bottom }),
    ...(widthMm > 100 ? [flange, words] : []),
  ];
}

/** A page and where on it, in the drawing's own coordinates, it lies. */
export interface Tile {
  readonly page: Page;
  readonly offset: Point;
  /** The part of the page that is drawn on, on the page. */
  readonly window: Region;
}

const MARGIN_MM = 12.7;
const OVERLAP_MM = 10;

/** How many tiles of a length are needed, and how far apart they begin. */
function along(lengthMm: number, windowMm: number): readonly number[] {
  const stepMm = windowMm - OVERLAP_MM;
  const count = Math.max(1, Math.ceil((lengthMm - OVERLAP_MM - EPSILON_MM) / stepMm));
  return Array.from({ length: count }, (_, index) => index * stepMm);
}

const ROLL_LENGTH_MM: Readonly<Record<string, number>> = { "roll-36": 2540, "roll-914": 5080 };

/** The paper's sides; a roll by the length that its drawing would take, the longest that there is on one of them. */
function sidesOf(paper: Paper) {
  const heightMm = paper.kind === "sheet" ? paper.heightMm : (ROLL_LENGTH_MM[paper.name] ?? 0);
  return { widthMm: paper.widthMm, heightMm };
}

/**
 * A cut line on a paper, at the far corner where an error of scale shows most, or on as many tiles as it takes; the
 * drawing's own coordinates begin at the first tile's window.
 */
export function tilesOf(cut: Cut, paper: Paper): { tiles: readonly Tile[]; centre: Point } {
  const sides = sidesOf(paper);
  const { widthMm, heightMm } = sizeOf(cut);
  const room = { x: sides.widthMm - 2 * MARGIN_MM, y: sides.heightMm - 2 * MARGIN_MM };
  const centre = {
    x: Math.max(room.x, widthMm + 10) - widthMm / 2 - 5,
    y: Math.max(room.y, heightMm + 10) - heightMm / 2 - 5,
  };
  const window = { x: MARGIN_MM, y: MARGIN_MM, widthMm: room.x, heightMm: room.y };
  const tiles = along(centre.y + heightMm / 2 + 5, room.y).flatMap((top) =>
    along(centre.x + widthMm / 2 + 5, room.x).map((left): Tile => {
      const shift = { x: MARGIN_MM - left, y: MARGIN_MM - top };
      const page: Page = {
        ...sides,
        title: paper.name,
        language: "en",
        items: [{ kind: "group", window, shift, items: cutItems(cut, centre) }],
      };
      return { page, offset: { x: -shift.x, y: -shift.y }, window };
    }),
  );
  return { tiles, centre };
}

/** The part of a tile's page where the cut line can be, with enough around it to see that it is elsewhere. */
export function regionOn({ offset, window }: Tile, cut: Cut, centre: Point): Region {
  const { widthMm, heightMm } = sizeOf(cut);
  const left = Math.max(centre.x - offset.x - widthMm / 2 - AROUND_MM, window.x);
  const top = Math.max(centre.y - offset.y - heightMm / 2 - AROUND_MM, window.y);
  const right = Math.min(centre.x - offset.x + widthMm / 2 + AROUND_MM, window.x + window.widthMm);
  const bottom = Math.min(centre.y - offset.y + heightMm / 2 + AROUND_MM, window.y + window.heightMm);
  return { x: left, y: top, widthMm: right - left, heightMm: bottom - top };
}

const AROUND_MM = 10;

/** Half of what is beside a small cut line at most, so that its own far side is never met. */
const searchMmOf = (cut: Cut): number => Math.min(8, sizeOf(cut).widthMm / 4);

export const nearCircle = (cut: Cut, centre: Point): NearCircle => ({
  centre,
  radiusMm: sizeOf(cut).widthMm / 2,
  searchMm: searchMmOf(cut),
});

export const nearRectangle = (cut: Cut, centre: Point): NearRectangle => ({
  centre,
  ...sizeOf(cut),
  searchMm: searchMmOf(cut),
  cornerMm: sizeOf(cut).widthMm / 12,
});

function stated(text: string): Paper {
  const result = parsePaper(text);
  if (!result.ok) throw new Error(`${text} is no paper`);
  return result.paper;
}

/** Every paper by name, and one whose size is stated. */
export const EVERY_PAPER: readonly Paper[] = [...PAPERS, stated("13 in x 19 in")];
