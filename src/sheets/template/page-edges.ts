import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { line, PEN, point, text } from "../../drawing/pen.js";
import { fitText } from "../../drawing/text.js";
import { type Block, stack, textBlock } from "../../drawing/text-block.js";
import { edgeToward, type Spot } from "../../listen/edges.js";
import type { Surface } from "../../room/room.js";
import { AXIS_MARK_MM, type PageSize, printable } from "../frame.js";
import type { Order } from "../sheet.js";

/** Strip along each edge but the top that holds a wall's name; outside the axis marks. */
const STRIP_MM = 5.7;
const CAP_MM = { top: 5, others: 3.2 } as const;
/** Between a name and the page's edge: on the right the axis mark stands there. */
const AIR_MM = { others: 1, right: 1.6 } as const;

/** The part of an area inside its edges' names. */
export function insideEdges({ words }: Order, surface: Surface, area: Window): Window {
  const top = topEdge(words, surface, area).heightMm;
  return {
    x: area.x + STRIP_MM,
    y: area.y + top,
    widthMm: area.widthMm - 2 * STRIP_MM,
    heightMm: area.heightMm - top - STRIP_MM,
  };
}

interface Letters {
  readonly roomMm: number;
  readonly mostMm?: number;
  readonly turnDeg?: number;
}

function label(words: string, at: PagePoint, { roomMm, mostMm = CAP_MM.others, turnDeg }: Letters): Item {
  const capMm = fitText(words, { face: "bold", widthMm: roomMm - 4, leastMm: 2.5, mostMm });
  const turned = turnDeg === undefined ? {} : { turnDeg };
  return text(at, words, { capMm, face: "bold", anchor: "middle", ...turned });
}

/** What each edge of the page is nearest to when it is held as it must be; the top edge says how that is. */
export function edgeNames({ words }: Order, spot: Spot, area: Window): Item[] {
  const { surface } = spot;
  const name = (u: number, v: number): string => words.frame.wall(edgeToward(spot, { u, v }));
  const middle = point(area.x + area.widthMm / 2, area.y + area.heightMm / 2);
  const right = area.x + area.widthMm - AIR_MM.right - CAP_MM.others;
  const bottom = area.y + area.heightMm - AIR_MM.others;
  const across = { roomMm: area.widthMm };
  const down = { roomMm: area.heightMm };
  return [
    ...topEdge(words, surface, area).items,
    label(name(0, -1), point(middle.x, bottom), across),
    label(name(-1, 0), point(area.x + AIR_MM.others + CAP_MM.others, middle.y), { ...down, turnDeg: -90 }),
    label(name(1, 0), point(right, middle.y), { ...down, turnDeg: 90 }),
  ];
}

/** How the page is held, large: UP on a wall; overhead, which edge goes where. */
function topEdge({ template }: Order["words"], { kind }: Surface, area: Window): Block {
  const words = kind === "wall" ? template.edge.up : template.edge.front;
  const capMm = fitText(words, { face: "bold", widthMm: area.widthMm, leastMm: 2.5, mostMm: CAP_MM.top });
  const letters = { ...area, face: "bold", anchor: "middle" } as const;
  const below = kind === "wall" ? [] : [template.edge.overhead];
  return stack(area.y, [
    // Accents and arrows reach above the capitals.
    () => ({ items: [], heightMm: 1 }),
    (y) => ({ ...textBlock(words, { ...letters, y, capMm }), heightMm: capMm + 1.8 }),
    ...below.map((more) => (y: number) => textBlock(more, { ...letters, y, capMm: CAP_MM.others })),
  ]);
}

/** Short marks at the edges of the printable area where the cross's two lines would leave the page. */
export function axisMarks(order: Order, size: PageSize, centre: PagePoint, window: Window): Item[] {
  const inside = printable(order, size);
  const [right, bottom] = [inside.x + inside.widthMm, inside.y + inside.heightMm];
  const across = centre.y >= window.y && centre.y <= window.y + window.heightMm;
  const down = centre.x >= window.x && centre.x <= window.x + window.widthMm;
  const { x, y } = centre;
  return [
    ...(down ? [line(point(x, inside.y), point(x, inside.y + AXIS_MARK_MM), PEN.thin)] : []),
    ...(down ? [line(point(x, bottom - AXIS_MARK_MM), point(x, bottom), PEN.thin)] : []),
    ...(across ? [line(point(inside.x, y), point(inside.x + AXIS_MARK_MM, y), PEN.thin)] : []),
    ...(across ? [line(point(right - AXIS_MARK_MM, y), point(right, y), PEN.thin)] : []),
  ];
}
