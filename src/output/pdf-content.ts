import type { Group, Ink, Item, Layer, Page, PagePoint, PathStep, Stroke } from "../drawing/drawing.js";
import { figure } from "./figure.js";
import { textOperators, type UsedGlyphs } from "./pdf-text.js";

/** What drawing a page notes for the document around it. */
export interface Noted {
  readonly glyphs: UsedGlyphs;
  readonly layers: Set<Layer>;
}

/** What the writer has told the page already, so that only changes are written. */
interface Told {
  readonly stroke: string;
  readonly fill: string;
}

const NOTHING_TOLD: Told = { stroke: "", fill: "" };

/** A page's items as operators in millimetres, y down; the matrix that makes them so stands before them. */
export function contentOf(page: Page, noted: Noted): string {
  const lines: string[] = [];
  writeItems(page.items, lines, noted);
  return lines.join("\n");
}

function writeItems(items: readonly Item[], lines: string[], noted: Noted): void {
  let told = NOTHING_TOLD;
  for (const item of items) told = writeItem(item, { lines, noted, told });
}

interface Writing {
  readonly lines: string[];
  readonly noted: Noted;
  readonly told: Told;
}

function writeItem(item: Item, writing: Writing): Told {
  if (item.kind === "group") {
    writeGroup(item, writing);
    return writing.told;
  }
  if (item.kind === "text") {
    const told = tell(writing, { fill: item.ink });
    writing.lines.push(textOperators(item, writing.noted.glyphs));
    return told;
  }
  const paint: Paint = item.kind === "line" ? { stroke: item.stroke } : item;
  const operator = paintOperator(paint);
  if (operator === null) return writing.told;
  const told = tell(writing, paint);
  writing.lines.push(`${outline(item)} ${operator}`);
  return told;
}

/** Saved and restored around each group: a viewer that skips a hidden layer skips nothing that others rely on. */
function writeGroup(group: Group, { lines, noted }: Writing): void {
  const { layer, window, shift } = group;
  if (layer !== undefined) {
    noted.layers.add(layer);
    lines.push(`/OC /${layer} BDC`);
  }
  lines.push("q");
  if (window !== undefined) {
    const { x, y, widthMm, heightMm } = window;
    lines.push(`${figures(x, y, widthMm, heightMm)} re W n`);
  }
  if (shift !== undefined) lines.push(`1 0 0 1 ${figures(shift.x, shift.y)} cm`);
  writeItems(group.items, lines, noted);
  lines.push("Q");
  if (layer !== undefined) lines.push("EMC");
}

interface Paint {
  readonly stroke?: Stroke;
  readonly fill?: Ink;
}

function paintOperator({ stroke, fill }: Paint): "B" | "S" | "f" | null {
  if (stroke !== undefined) return fill === undefined ? "S" : "B";
  return fill === undefined ? null : "f";
}

function tell({ lines, told }: Writing, paint: Paint): Told {
  const stroke = paint.stroke === undefined ? told.stroke : strokeOperators(paint.stroke);
  const fill = paint.fill === undefined ? told.fill : inkOperator(paint.fill, { grey: "g", colour: "rg" });
  if (stroke !== told.stroke) lines.push(stroke);
  if (fill !== told.fill) lines.push(fill);
  return { stroke, fill };
}

function strokeOperators({ widthMm, ink, dashMm, dashFromMm }: Stroke): string {
  const colour = inkOperator(ink, { grey: "G", colour: "RG" });
  return `${figure(widthMm)} w [${figures(...(dashMm ?? []))}] ${figure(dashFromMm ?? 0)} d ${colour}`;
}

function inkOperator({ red, green, blue }: Ink, operator: { grey: string; colour: string }): string {
  if (red === green && green === blue) return `${figure(red)} ${operator.grey}`;
  return `${figures(red, green, blue)} ${operator.colour}`;
}

const figures = (...values: readonly number[]): string => values.map(figure).join(" ");
const moveTo = (at: PagePoint): string => `${figures(at.x, at.y)} m`;
const lineTo = (at: PagePoint): string => `${figures(at.x, at.y)} l`;

function outline(item: Exclude<Item, { kind: "text" | "group" }>): string {
  switch (item.kind) {
    case "line":
      return `${moveTo(item.from)} ${lineTo(item.to)}`;
    case "path":
      return item.steps.map(step).join(" ");
    case "circle":
      return circle(item.centre, item.radiusMm);
    case "rectangle":
      return rectangle(item);
  }
}

function step(each: PathStep): string {
  if (each.to === "close") return "h";
  return each.to === "move" ? moveTo(each.at) : lineTo(each.at);
}

/** Sixteen arcs: four, as is usual, are 0.064 mm oversize at 235 mm, sixteen 0.00002 mm (measured). */
const ARCS_IN_CIRCLE = 16;
const ARC_RADIANS = (2 * Math.PI) / ARCS_IN_CIRCLE;
/** Length of an arc's handles for radius 1: the usual cubic whose middle lies on the circle. */
const HANDLE = (4 / 3) * Math.tan(ARC_RADIANS / 4);

/** Arcs clockwise on the page about `centre`, from the arc numbered `first` (0 starts at three o'clock). */
function arcs(
  centre: PagePoint,
  radiusMm: number,
  { first, count }: { first: number; count: number },
): string {
  return Array.from({ length: count }, (_, index) => arc(centre, radiusMm, first + index)).join(" ");
}

function arc(centre: PagePoint, radiusMm: number, number: number): string {
  const from = ray(number);
  const to = ray(number + 1);
  const at = (x: number, y: number): string => figures(centre.x + radiusMm * x, centre.y + radiusMm * y);
  const leaving = at(from.x - HANDLE * from.y, from.y + HANDLE * from.x);
  const arriving = at(to.x + HANDLE * to.y, to.y - HANDLE * to.x);
  return `${leaving} ${arriving} ${at(to.x, to.y)} c`;
}

const ray = (number: number): PagePoint => ({
  x: Math.cos(number * ARC_RADIANS),
  y: Math.sin(number * ARC_RADIANS),
});

function circle(centre: PagePoint, radiusMm: number): string {
  const start = moveTo({ x: centre.x + radiusMm, y: centre.y });
  return `${start} ${arcs(centre, radiusMm, { first: 0, count: ARCS_IN_CIRCLE })} h`;
}

function rectangle(item: Extract<Item, { kind: "rectangle" }>): string {
  const { corner, widthMm, heightMm, cornerRadiusMm = 0 } = item;
  if (cornerRadiusMm === 0) return `${figures(corner.x, corner.y, widthMm, heightMm)} re`;
  const radiusMm = Math.min(cornerRadiusMm, widthMm / 2, heightMm / 2);
  const [left, right] = [corner.x + radiusMm, corner.x + widthMm - radiusMm];
  const [top, bottom] = [corner.y + radiusMm, corner.y + heightMm - radiusMm];
  // From the top left clockwise, as SVG draws a rect, so that dashes fall alike.
  const centres = [
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
    { x: left, y: top },
  ];
  const quarter = ARCS_IN_CIRCLE / 4;
  const corners = centres.map((centre, index) => {
    const first = (quarter * (index + 3)) % ARCS_IN_CIRCLE;
    const from = ray(first);
    const start = lineTo({ x: centre.x + radiusMm * from.x, y: centre.y + radiusMm * from.y });
    return `${start} ${arcs(centre, radiusMm, { first, count: quarter })}`;
  });
  return `${moveTo({ x: left, y: corner.y })} ${corners.join(" ")} h`;
}
