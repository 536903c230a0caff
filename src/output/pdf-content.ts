import type { Group, Ink, Item, Layer, PagePoint, PathStep, Stroke } from "../drawing/drawing.js";
import { figure } from "./figure.js";
import type { UsedGlyphs } from "./pdf-glyphs.js";
import { glyphsOf, type Literals, noLiterals, textOperators } from "./pdf-text.js";

/** What drawing a page notes for the document around it. */
export interface Noted {
  readonly glyphs: UsedGlyphs;
  readonly layers: ReadonlySet<Layer>;
}

/** Items drawn, though not yet on a page: plain data. */
export interface Content extends Noted {
  readonly operators: string;
}

/** Items as operators in millimetres, y down; the matrix that makes them so stands before them. */
export function contentOf(items: readonly Item[]): Content {
  const writing: Writing = { lines: [], literals: noLiterals(), layers: new Set() };
  writeItems(items, writing);
  const { lines, literals, layers } = writing;
  return { operators: lines.join("\n"), glyphs: glyphsOf(literals), layers };
}

interface Writing {
  readonly lines: string[];
  readonly literals: Literals;
  readonly layers: Set<Layer>;
}

/** What a group has told the page already, so that only changes are written; mostly the next pen is the very same. */
interface Told {
  stroke: Stroke | null;
  strokeOperators: string;
  fill: Ink | null;
  fillOperator: string;
}

function writeItems(items: readonly Item[], writing: Writing): void {
  const told: Told = { stroke: null, strokeOperators: "", fill: null, fillOperator: "" };
  for (const item of items) writeItem(item, writing, told);
}

function writeItem(item: Item, writing: Writing, told: Told): void {
  const { lines } = writing;
  switch (item.kind) {
    case "group":
      writeGroup(item, writing);
      return;
    case "text":
      tellFill(item.ink, lines, told);
      lines.push(textOperators(item, writing.literals));
      return;
    case "line":
      tellStroke(item.stroke, lines, told);
      lines.push(`${moveTo(item.from)} ${lineTo(item.to)} S`);
      return;
    default: {
      const operator = paintOperator(item);
      if (operator === null) return;
      if (item.stroke !== undefined) tellStroke(item.stroke, lines, told);
      if (item.fill !== undefined) tellFill(item.fill, lines, told);
      lines.push(`${outline(item)} ${operator}`);
    }
  }
}

/** Saved and restored around each group: a viewer that skips a hidden layer skips nothing that others rely on. */
function writeGroup(group: Group, writing: Writing): void {
  const { layer, window, shift } = group;
  const { lines, layers } = writing;
  if (layer !== undefined) {
    layers.add(layer);
    lines.push(`/OC /${layer} BDC`);
  }
  lines.push("q");
  if (window !== undefined) {
    lines.push(`${pair(window.x, window.y)} ${pair(window.widthMm, window.heightMm)} re W n`);
  }
  if (shift !== undefined) lines.push(`1 0 0 1 ${pair(shift.x, shift.y)} cm`);
  writeItems(group.items, writing);
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

function tellStroke(stroke: Stroke, lines: string[], told: Told): void {
  if (stroke === told.stroke) return;
  told.stroke = stroke;
  const operators = strokeOperators(stroke);
  if (operators === told.strokeOperators) return;
  told.strokeOperators = operators;
  lines.push(operators);
}

function tellFill(fill: Ink, lines: string[], told: Told): void {
  if (fill === told.fill) return;
  told.fill = fill;
  const operator = inkOperator(fill, "g", "rg");
  if (operator === told.fillOperator) return;
  told.fillOperator = operator;
  lines.push(operator);
}

function strokeOperators({ widthMm, ink, dashMm, dashFromMm }: Stroke): string {
  const dashes = dashMm === undefined ? "" : dashMm.map(figure).join(" ");
  return `${figure(widthMm)} w [${dashes}] ${figure(dashFromMm ?? 0)} d ${inkOperator(ink, "G", "RG")}`;
}

function inkOperator({ red, green, blue }: Ink, greyOperator: string, colourOperator: string): string {
  if (red === green && green === blue) return `${figure(red)} ${greyOperator}`;
  return `${pair(red, green)} ${figure(blue)} ${colourOperator}`;
}

const pair = (x: number, y: number): string => `${figure(x)} ${figure(y)}`;
const moveTo = ({ x, y }: PagePoint): string => `${figure(x)} ${figure(y)} m`;
const lineTo = ({ x, y }: PagePoint): string => `${figure(x)} ${figure(y)} l`;

function outline(item: Exclude<Item, { kind: "line" | "text" | "group" }>): string {
  switch (item.kind) {
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

/** An arc of a circle of radius 1 about 0: a cubic, its points as they are written. */
interface Arc {
  readonly from: PagePoint;
  readonly leaving: PagePoint;
  readonly arriving: PagePoint;
  readonly to: PagePoint;
}

const ray = (number: number): PagePoint => ({
  x: Math.cos(number * ARC_RADIANS),
  y: Math.sin(number * ARC_RADIANS),
});

/** Clockwise on the page, the first from three o'clock. */
const CIRCLE: readonly Arc[] = Array.from({ length: ARCS_IN_CIRCLE }, (_, number) => {
  const [from, to] = [ray(number), ray(number + 1)];
  const leaving = { x: from.x - HANDLE * from.y, y: from.y + HANDLE * from.x };
  const arriving = { x: to.x + HANDLE * to.y, y: to.y - HANDLE * to.x };
  return { from, leaving, arriving, to };
});

const QUARTER = ARCS_IN_CIRCLE / 4;

function arcs(centre: PagePoint, radiusMm: number, pieces: readonly Arc[]): string {
  const at = ({ x, y }: PagePoint): string => pair(centre.x + radiusMm * x, centre.y + radiusMm * y);
  return pieces.map(({ leaving, arriving, to }) => `${at(leaving)} ${at(arriving)} ${at(to)} c`).join(" ");
}

function circle(centre: PagePoint, radiusMm: number): string {
  return `${pair(centre.x + radiusMm, centre.y)} m ${arcs(centre, radiusMm, CIRCLE)} h`;
}

/** A line to where a rounded corner begins, and the corner. */
function cornerOf(centre: PagePoint, radiusMm: number, pieces: readonly Arc[]): string {
  const { x, y } = pieces[0]?.from ?? centre;
  const start = lineTo({ x: centre.x + radiusMm * x, y: centre.y + radiusMm * y });
  return `${start} ${arcs(centre, radiusMm, pieces)}`;
}

/** From the top left clockwise, as SVG draws a rect, so that dashes fall alike. */
function rectangle(item: Extract<Item, { kind: "rectangle" }>): string {
  const { corner, widthMm, heightMm, cornerRadiusMm = 0 } = item;
  if (cornerRadiusMm === 0) return `${pair(corner.x, corner.y)} ${pair(widthMm, heightMm)} re`;
  const radiusMm = Math.min(cornerRadiusMm, widthMm / 2, heightMm / 2);
  const [left, right] = [corner.x + radiusMm, corner.x + widthMm - radiusMm];
  const [top, bottom] = [corner.y + radiusMm, corner.y + heightMm - radiusMm];
  const corners = [
    cornerOf({ x: right, y: top }, radiusMm, CIRCLE.slice(3 * QUARTER)),
    cornerOf({ x: right, y: bottom }, radiusMm, CIRCLE.slice(0, QUARTER)),
    cornerOf({ x: left, y: bottom }, radiusMm, CIRCLE.slice(QUARTER, 2 * QUARTER)),
    cornerOf({ x: left, y: top }, radiusMm, CIRCLE.slice(2 * QUARTER, 3 * QUARTER)),
  ];
  return `${moveTo({ x: left, y: corner.y })} ${corners.join(" ")} h`;
}
