import type { Window } from "../drawing/drawing.js";
import { textBlock } from "../drawing/text-block.js";
import { jointsOf, type Lie, OVERLAP_MM, type Tile, tile } from "../drawing/tiles.js";
import { MAX_PAGE_SIDE_MM } from "../standards/paper.js";
import { facingFacts } from "./facing.js";
import { frameArea, type PageSize } from "./frame.js";
import { fullSizeDrawing } from "./marking/full-size.js";
import { type SurfaceStage, surfaceAt, surfacesToMark } from "./marking/surface-stage.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";
import { facesAt, stagesOf } from "./tapes.js";

/** More parts than this nobody would join: a hall on office paper. Our own choice. */
const MOST_PARTS = 2000;
/** What a part's own strip (name, map, how to join) may take of a page's height. */
const PART_STRIP_MM = 30;

/**
 * Every surface with openings at 1:1: on a roll in strips as long as a page may be, on sheets in parts with matching
 * marks. Only where the order asks for it.
 */
export function fullSizeMarks(order: Order): Sheet[] {
  if (!order.fullSize) return [];
  return surfacesToMark(order.job).flatMap((surface) =>
    stagesOf(order.job.room, surface).map((stage, index) => {
      const name = surface.kind === "wall" ? `wall-${surface.name}` : surface.name;
      return fullSizeSheet(order, surfaceAt(order, surface, stage), {
        name: `${name}-full${index === 0 ? "" : "-after"}`,
      });
    }),
  );
}

function fullSizeSheet(order: Order, at: SurfaceStage, { name }: { name: string }): Sheet {
  const { words } = order;
  const { surface, stage } = at;
  const facts: FrameFacts = {
    title: words.marking.full[surface.kind](surface.name),
    scale: words.frame.trueScale,
    faces: words.frame.faces[facesAt(stage)],
    ...facingFacts(order, surface),
  };
  return {
    name,
    trades: ["drywall"],
    title: facts.title,
    pages: pagesOf(order, facts, at),
    whole: null,
  };
}

function pagesOf(order: Order, facts: FrameFacts, at: SurfaceStage): Body[] {
  const { items, extent } = fullSizeDrawing(order, at);
  const lies = liesOf(order, facts, extent);
  const [first] = lies;
  if (first === undefined) return [];
  const grid = leastGrid(first.area, extent);
  if (grid.columns * grid.rows > MOST_PARTS) return [refusal(order, facts, first, grid)];
  const { tiles: words } = order.words.template;
  const request = { drawing: items, extent, lies, words, forced: true };
  // Where the joints fall is known by now: drawn again, the words keep off them.
  const drawing = fullSizeDrawing(order, at, jointsOf(request)).items;
  const tiling = tile({ ...request, drawing });
  if (tiling.kind === "too-large") return [refusal(order, facts, first, tiling.grid ?? grid)];
  const { lie, tiles } = tiling;
  return tiles.map((part) => bodyOf(lie, facts, part));
}

const bodyOf = ({ widthMm, heightMm }: Lie, facts: FrameFacts, { name, items }: Tile): Body => ({
  widthMm,
  heightMm,
  title: `${facts.title} ${name}`,
  frame: facts,
  items,
});

function refusal(
  order: Order,
  facts: FrameFacts,
  { widthMm, heightMm, area }: Lie,
  { columns, rows }: { columns: number; rows: number },
): Body {
  const said = order.words.template.tooLarge(columns, rows);
  const { items } = textBlock(said, { ...area, capMm: 5, face: "bold" });
  return { widthMm, heightMm, title: facts.title, frame: facts, items };
}

/** Columns and rows that an area needs at the least. */
function leastGrid(area: Window, extent: Window): { columns: number; rows: number } {
  const count = (long: number, free: number): number => Math.ceil(long / Math.max(free, 1));
  return { columns: count(extent.widthMm, area.widthMm), rows: count(extent.heightMm, area.heightMm) };
}

function liesOf(order: Order, facts: FrameFacts, extent: Window): Lie[] {
  const sizes = order.paper.kind === "roll" ? rollPages(order, facts, extent) : sheetPages(order.paper);
  return sizes
    .map((size) => ({ ...size, area: frameArea(order, facts, size) }))
    .filter(({ area }) => area.widthMm > 0 && area.heightMm > PART_STRIP_MM);
}

const sheetPages = ({ widthMm, heightMm }: PageSize): PageSize[] => [
  { widthMm, heightMm },
  { widthMm: heightMm, heightMm: widthMm },
];

/** A roll's pages along the drawing and across it, none longer than a page may be and all of one length. */
function rollPages(order: Order, facts: FrameFacts, extent: Window): PageSize[] {
  const { widthMm } = order.paper;
  const tall = { widthMm, heightMm: MAX_PAGE_SIDE_MM };
  const wide = { widthMm: MAX_PAGE_SIDE_MM, heightMm: widthMm };
  const taken = (free: number): number => MAX_PAGE_SIDE_MM - free;
  const overheadTall = taken(frameArea(order, facts, tall).heightMm) + PART_STRIP_MM;
  const overheadWide = taken(frameArea(order, facts, wide).widthMm);
  return [
    { ...tall, heightMm: evenLengthMm(extent.heightMm, overheadTall) },
    { ...wide, widthMm: evenLengthMm(extent.widthMm, overheadWide) },
  ];
}

/** The shortest equal pages that cover a length, each losing `overheadMm` to its frame and sharing an overlap with the next. */
export function evenLengthMm(lengthMm: number, overheadMm: number): number {
  const mostFreeMm = MAX_PAGE_SIDE_MM - overheadMm;
  const pages = Math.ceil((lengthMm - OVERLAP_MM) / (mostFreeMm - OVERLAP_MM));
  return Math.min(MAX_PAGE_SIDE_MM, Math.ceil((lengthMm - OVERLAP_MM) / pages + OVERLAP_MM + overheadMm));
}
