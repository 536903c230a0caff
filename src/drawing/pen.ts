import {
  type Anchor,
  BLACK,
  type Face,
  type Group,
  type Ink,
  type Item,
  type Layer,
  type Mark,
  type PagePoint,
  type PathStep,
  type Stroke,
  type Text,
} from "./drawing.js";

/** Line widths of ISO 128 in mm, by what they are for. */
export const PEN = {
  cut: { widthMm: 0.7, ink: BLACK },
  outline: { widthMm: 0.5, ink: BLACK },
  thin: { widthMm: 0.35, ink: BLACK },
  fine: { widthMm: 0.25, ink: BLACK },
} as const satisfies Record<string, Stroke>;

export const point = (x: number, y: number): PagePoint => ({ x, y });

export const dashed = (stroke: Stroke, ...dashMm: readonly number[]): Stroke => ({ ...stroke, dashMm });

const marked = (mark: Mark | undefined): { mark?: Mark } => (mark === undefined ? {} : { mark });

export const line = (from: PagePoint, to: PagePoint, stroke: Stroke = PEN.thin, mark?: Mark): Item =>
  mark === undefined ? { kind: "line", from, to, stroke } : { kind: "line", from, to, stroke, mark };

export const circle = (
  centre: PagePoint,
  radiusMm: number,
  stroke: Stroke = PEN.thin,
  mark?: Mark,
): Item => ({
  kind: "circle",
  centre,
  radiusMm,
  stroke,
  ...marked(mark),
});

export const dot = (centre: PagePoint, radiusMm: number, fill: Ink = BLACK): Item => ({
  kind: "circle",
  centre,
  radiusMm,
  fill,
});

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export const rectangle = (box: Box, stroke: Stroke = PEN.thin, mark?: Mark): Item => ({
  kind: "rectangle",
  corner: point(box.x, box.y),
  widthMm: box.widthMm,
  heightMm: box.heightMm,
  stroke,
  ...marked(mark),
});

export const filled = (box: Box, fill: Ink): Item => ({
  kind: "rectangle",
  corner: point(box.x, box.y),
  widthMm: box.widthMm,
  heightMm: box.heightMm,
  fill,
});

function steps(points: readonly PagePoint[]): PathStep[] {
  return points.map((at, index) => ({ to: index === 0 ? "move" : "line", at }));
}

export const polyline = (points: readonly PagePoint[], stroke: Stroke = PEN.thin, mark?: Mark): Item => ({
  kind: "path",
  steps: steps(points),
  stroke,
  ...marked(mark),
});

/** A closed outline, filled, stroked or both. */
export const outline = (points: readonly PagePoint[], ink: { stroke?: Stroke; fill?: Ink }): Item => ({
  kind: "path",
  steps: [...steps(points), { to: "close" }],
  ...ink,
});

export interface Lettering {
  readonly capMm: number;
  readonly face?: Face;
  readonly anchor?: Anchor;
  readonly ink?: Ink;
  readonly turnDeg?: number;
}

export function text(at: PagePoint, words: string, lettering: Lettering): Text {
  const { capMm, face = "regular", anchor = "start", ink = BLACK, turnDeg } = lettering;
  const upright: Text = { kind: "text", at, text: words, capMm, face, anchor, ink };
  return turnDeg === undefined ? upright : { ...upright, turnDeg };
}

export const layer = (name: Layer, items: readonly Item[]): Group => ({ kind: "group", layer: name, items });

export const shifted = (items: readonly Item[], shift: PagePoint): Group => ({ kind: "group", shift, items });

/** An arrow from tail to tip: its shaft carries the mark, its head is filled (ISO 129-1: 15 to 30 degrees). */
export function arrow(tail: PagePoint, tip: PagePoint, stroke: Stroke = PEN.outline, mark?: Mark): Item[] {
  const long = Math.hypot(tip.x - tail.x, tip.y - tail.y);
  if (long === 0) return [];
  const headMm = Math.min(Math.max(stroke.widthMm * 8, 2.5), long * 0.6);
  const along = point((tip.x - tail.x) / long, (tip.y - tail.y) / long);
  const base = point(tip.x - along.x * headMm, tip.y - along.y * headMm);
  const half = headMm * Math.tan(Math.PI / 9);
  const wings = [1, -1].map((side) => point(base.x - along.y * half * side, base.y + along.x * half * side));
  return [line(tail, tip, stroke, mark), outline([tip, ...wings], { fill: stroke.ink })];
}
