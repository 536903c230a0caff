import { grey, type Item, type PagePoint, type PathStep } from "../../drawing/drawing.js";
import { line, point, polyline } from "../../drawing/pen.js";
import type { Region } from "../../geometry/clip.js";
import type { Opening } from "../../job.js";
import type { Order } from "../sheet.js";
import { slideIn } from "../slides.js";
import { LINES } from "./lines.js";
import type { Piece } from "./piece.js";
import type { View } from "./view.js";

/** Lighter than a joist between its lines: it lies under everything. */
export const CLEAR_FILL = grey(0.95);

/** Where each opening's centre may lie without leaving its bay: faint, under all that is marked by. */
export function clearPiece({ job }: Order, openings: readonly Opening[], view: View): Piece {
  const all = openings.flatMap((opening) => {
    const slide = slideIn(job, opening);
    return slide === null ? [] : [{ speaker: opening.speaker.id, rings: onPage(slide.piece, view) }];
  });
  return {
    layer: "clear",
    rank: 9,
    items: [
      ...all.map(({ speaker, rings }) => filling(speaker, rings)),
      ...all.flatMap(({ rings }) => rings.flatMap(borderOf)),
    ],
  };
}

const onPage = (piece: Region, view: View): PagePoint[][] => piece.map((ring) => ring.map(view.place));

function filling(speaker: string, rings: readonly PagePoint[][]): Item {
  const steps = rings.flatMap((ring): PathStep[] => [
    ...ring.map((at, index): PathStep => ({ to: index === 0 ? "move" : "line", at })),
    { to: "close" },
  ]);
  return { kind: "path", steps, fill: CLEAR_FILL, mark: { role: "clear", speaker } };
}

const PERIOD_MM = LINES.clear.dashMm.reduce((sum, mm) => sum + mm, 0);

/**
 * Long sides as lines whose dashes count from the page's corner: areas of two openings in one bay share them, and dash
 * falls on dash. What is shorter than a period, as the chords of an arc, is drawn on without a break.
 */
function borderOf(ring: readonly PagePoint[]): Item[] {
  const sides = ring.map((from, index) => [from, ring[(index + 1) % ring.length] ?? from] as const);
  const isLong = ([from, to]: readonly [PagePoint, PagePoint]): boolean =>
    Math.hypot(to.x - from.x, to.y - from.y) >= PERIOD_MM;
  const first = Math.max(0, sides.findIndex(isLong));
  const items: Item[] = [];
  let arc: PagePoint[] = [];
  const draw = (): void => {
    if (arc.length > 1) items.push(polyline(arc, LINES.clear));
    arc = [];
  };
  for (const side of [...sides.slice(first), ...sides.slice(0, first)]) {
    if (isLong(side)) {
      draw();
      items.push(anchored(side));
    } else arc.push(...(arc.length === 0 ? side : side.slice(1)));
  }
  draw();
  return items;
}

function anchored([one, other]: readonly [PagePoint, PagePoint]): Item {
  const [from, to] = one.x < other.x || (one.x === other.x && one.y < other.y) ? [one, other] : [other, one];
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const along = (from.x * (to.x - from.x) + from.y * (to.y - from.y)) / long;
  return line(from, to, { ...LINES.clear, dashFromMm: ((along % PERIOD_MM) + PERIOD_MM) % PERIOD_MM });
}

/** The line with its filling, as long as a sample in the key. */
export function clearSample(longMm: number, highMm: number): (x: number, y: number) => readonly Item[] {
  return (x, y) => {
    const [top, bottom] = [y - highMm / 2, y + highMm / 2];
    const rows = [top, bottom].map((at) => line(point(x, at), point(x + longMm, at), LINES.clear));
    return [
      {
        kind: "rectangle",
        corner: point(x, top),
        widthMm: longMm,
        heightMm: highMm,
        fill: CLEAR_FILL,
      },
      ...rows,
    ];
  };
}
