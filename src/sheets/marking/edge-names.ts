import { type Item, type PagePoint, WHITE } from "../../drawing/drawing.js";
import { BASELINE, label } from "../../drawing/label.js";
import { type LabelWish, middlesAround } from "../../drawing/label-places.js";
import { filled, point, text } from "../../drawing/pen.js";
import type { Side } from "../../drawing/running-chain.js";
import { spread } from "../../drawing/spread.js";
import { fitText, measureText, wrapText } from "../../drawing/text.js";
import { LINE_PITCH } from "../../drawing/text-block.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { boxBetween, type Margins, type View } from "./view.js";

/** An edge of the outline with the words for what stands along it. */
export interface NamedEdge {
  readonly name: string;
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
}

/** Least width that a name is wrapped into, so that words stay whole along a short edge. */
const LEAST_COLUMN_MM = 24;
const BETWEEN_MM = 1;

/** A name as it stands along a side of the outline's box. */
export interface Name {
  readonly side: Side;
  readonly lines: readonly string[];
  readonly capMm: number;
  readonly longMm: number;
  readonly deepMm: number;
  readonly middleMm: number;
}

/** The names that stand along the sides of the box. */
export const namesOn = (edges: readonly NamedEdge[], view: View): readonly Name[] =>
  edges.flatMap((edge) => nameOn(edge, view) ?? []);

/** Room that they take on each side of the box. */
export function nameStrips(names: readonly Name[]): Margins {
  const depth = (side: Side): number =>
    Math.max(2, ...names.filter((name) => name.side === side).map(({ deepMm }) => deepMm));
  return { left: depth("left"), right: depth("right"), top: depth("top"), bottom: depth("bottom") };
}

/** Along the sides of the box, outside, spread where edges are short, on panels that no line runs through. */
export function drawNames(names: readonly Name[], view: View, strips: Margins): Item[] {
  return (["left", "right", "top", "bottom"] as const).flatMap((side) => {
    const own = names.filter((name) => name.side === side);
    const { x, y, widthMm, heightMm } = view.box;
    const [start, long] = isVertical(side) ? [y, heightMm] : [x, widthMm];
    const range = { from: start, to: start + long, gapMm: BETWEEN_MM };
    const middles = spread(
      own.map(({ middleMm, longMm }) => ({ at: middleMm, sizeMm: longMm })),
      range,
    );
    return own.flatMap((name, index) => drawName(name, middles[index] ?? name.middleMm, view, strips));
  });
}

const isVertical = (side: Side): boolean => side === "left" || side === "right";

/** The name of an edge that lies on a side of the box; null for an edge further in. */
function nameOn(edge: NamedEdge, view: View): Name | null {
  const [from, to] = [view.place(edge.from), view.place(edge.to)];
  const side = sideOf(boxBetween(from, to), view);
  if (side === null) return null;
  // Not from the places on the page: what fits must not hang on where that lies there.
  const along = isVertical(side) ? edge.to.v - edge.from.v : edge.to.u - edge.from.u;
  const longMm = view.shrunk(Math.abs(along));
  const widthMm = Math.max(LEAST_COLUMN_MM, longMm - 2);
  const capMm = fitText(edge.name, {
    face: "bold",
    widthMm,
    leastMm: view.heights.smallMm,
    mostMm: view.heights.wallMm,
  });
  const lines = wrapText(edge.name, { capMm, face: "bold", widthMm });
  const widest = Math.max(...lines.map((words) => measureText(words, { capMm, face: "bold" }).widthMm));
  const middleMm = isVertical(side) ? (from.y + to.y) / 2 : (from.x + to.x) / 2;
  return { side, lines, capMm, longMm: widest + 1.6, deepMm: lines.length * capMm * LINE_PITCH, middleMm };
}

function sideOf(edge: ReturnType<typeof boxBetween>, { box }: View): Side | null {
  const near = (a: number, b: number): boolean => Math.abs(a - b) < EPSILON_MM;
  if (near(edge.widthMm, 0)) {
    if (near(edge.x, box.x)) return "left";
    if (near(edge.x, box.x + box.widthMm)) return "right";
  }
  if (near(edge.heightMm, 0)) {
    if (near(edge.y, box.y)) return "top";
    if (near(edge.y, box.y + box.heightMm)) return "bottom";
  }
  return null;
}

function drawName(name: Name, middle: number, { box }: View, strips: Margins): Item[] {
  const { side, lines, capMm, longMm, deepMm } = name;
  const outward = (strips[side] - deepMm) / 2;
  const corner = {
    left: point(box.x - outward - deepMm, middle - longMm / 2),
    right: point(box.x + box.widthMm + outward, middle - longMm / 2),
    top: point(middle - longMm / 2, box.y - outward - deepMm),
    bottom: point(middle - longMm / 2, box.y + box.heightMm + outward),
  }[side];
  const size = isVertical(side)
    ? { widthMm: deepMm, heightMm: longMm }
    : { widthMm: longMm, heightMm: deepMm };
  const lettering = { capMm, face: "bold", anchor: "middle" } as const;
  const words = lines.map((line, index) => {
    const down = capMm * (BASELINE + index * LINE_PITCH);
    return isVertical(side)
      ? text(point(corner.x + down, middle), line, { ...lettering, turnDeg: -90 })
      : text(point(middle, corner.y + down), line, lettering);
  });
  return [filled({ ...corner, ...size }, WHITE), ...words];
}

/** Names of edges further in, which look for a place beside the edge. */
export function nameWishes(edges: readonly NamedEdge[], view: View): LabelWish[] {
  return edges.flatMap((edge) => {
    const box = boxBetween(view.place(edge.from), view.place(edge.to));
    if (sideOf(box, view) !== null) return [];
    const { smallMm } = view.heights;
    const words = label(
      wrapText(edge.name, { capMm: smallMm, face: "bold", widthMm: LEAST_COLUMN_MM }).map((line) => ({
        words: line,
        capMm: smallMm,
        face: "bold",
      })),
    );
    const middle = { x: box.x + box.widthMm / 2, y: box.y + box.heightMm / 2, widthMm: 0, heightMm: 0 };
    const middles = middlesAround(middle, words, [1, 3, 6, 10]);
    const isOut = (at: PagePoint): boolean => liesOutside(edge, at, view);
    return [{ ...words, middles: [...middles.filter(isOut), ...middles.filter((at) => !isOut(at))] }];
  });
}

/** Whether a point of the page lies behind the edge: outlines run anticlockwise, and y is down. */
function liesOutside(edge: NamedEdge, at: PagePoint, view: View): boolean {
  const [from, to] = [view.place(edge.from), view.place(edge.to)];
  return (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x) > EPSILON_MM;
}
