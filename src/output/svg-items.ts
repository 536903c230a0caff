import { Circle, ClipPath, type Element, G, Line, Path, Rect, Text as SvgText } from "@svgdotjs/svg.js";
import { drawable } from "../drawing/coverage.js";
import type {
  Group,
  Ink,
  Item,
  Layer,
  Mark,
  PagePoint,
  PathStep,
  Stroke,
  Text,
  Window,
} from "../drawing/drawing.js";
import { emMm } from "../drawing/text.js";
import { cleanText } from "./clean-text.js";
import { figure } from "./figure.js";

type Attributes = Record<string, string>;

/** Ids that were given on one page: never from a counter of the process, so that a page is always the same. */
export interface Ids {
  readonly layers: Map<Layer, number>;
  windows: number;
}

export const noIds = (): Ids => ({ layers: new Map(), windows: 0 });

/** Where a group's own coordinates begin on the page: shifts are added up, so that every figure is one of the page. */
const ORIGIN: PagePoint = { x: 0, y: 0 };

/** An element with attributes that are written as they are: svg.js itself would look for colours and units in them. */
function having<Made extends Element>(element: Made, attributes: Attributes): Made {
  for (const name in attributes) element.node.setAttribute(name, attributes[name] ?? "");
  return element;
}

/** One item of the display list as an element, all its attributes set at once. */
export function elementOf(item: Item, ids: Ids, from: PagePoint = ORIGIN): Element {
  const x = (at: PagePoint): string => figure(at.x + from.x);
  const y = (at: PagePoint): string => figure(at.y + from.y);
  switch (item.kind) {
    case "line":
      return having(new Line(), {
        ...{ x1: x(item.from), y1: y(item.from), x2: x(item.to), y2: y(item.to) },
        ...strokeOf(item.stroke),
        ...markOf(item.mark),
      });
    case "path":
      return having(new Path(), { d: item.steps.map((each) => step(each, from)).join(""), ...paintOf(item) });
    case "circle":
      return having(new Circle(), {
        ...{ cx: x(item.centre), cy: y(item.centre), r: figure(item.radiusMm) },
        ...paintOf(item),
      });
    case "rectangle":
      return having(new Rect(), {
        ...{ x: x(item.corner), y: y(item.corner) },
        ...{ width: figure(item.widthMm), height: figure(item.heightMm) },
        ...(item.cornerRadiusMm ? { rx: figure(item.cornerRadiusMm) } : {}),
        ...paintOf(item),
      });
    case "text":
      return textOf(item, { x: x(item.at), y: y(item.at) });
    case "group":
      return groupOf(item, ids, from);
  }
}

function step(each: PathStep, from: PagePoint): string {
  if (each.to === "close") return "Z";
  return `${each.to === "move" ? "M" : "L"}${figure(each.at.x + from.x)} ${figure(each.at.y + from.y)}`;
}

function colour({ red, green, blue }: Ink): string {
  const parts = [red, green, blue].map((part) => Math.round(Number(figure(part)) * 255));
  return `#${parts.map((part) => part.toString(16).padStart(2, "0")).join("")}`;
}

function strokeOf({ widthMm, ink, dashMm, dashFromMm }: Stroke): Attributes {
  const dash = dashMm === undefined ? {} : { "stroke-dasharray": dashMm.map(figure).join(" ") };
  const from = dashFromMm === undefined ? {} : { "stroke-dashoffset": figure(dashFromMm) };
  return { stroke: colour(ink), "stroke-width": figure(widthMm), ...dash, ...from };
}

const markOf = (mark: Mark | undefined): Attributes =>
  mark === undefined ? {} : { class: mark.role, "data-speaker": cleanText(mark.speaker) };

interface Painted {
  readonly stroke?: Stroke;
  readonly fill?: Ink;
  readonly mark?: Mark;
}

const paintOf = ({ stroke, fill, mark }: Painted): Attributes => ({
  ...(stroke === undefined ? {} : strokeOf(stroke)),
  ...(fill === undefined ? {} : { fill: colour(fill) }),
  ...markOf(mark),
});

function textOf(item: Text, { x, y }: { x: string; y: string }): Element {
  return having(new SvgText().plain(drawable(item.text)), {
    ...{ x, y, "font-size": figure(emMm(item)), fill: colour(item.ink) },
    ...(item.face === "bold" ? { "font-weight": "700" } : {}),
    ...(item.anchor === "start" ? {} : { "text-anchor": item.anchor }),
    ...(item.turnDeg ? { transform: `rotate(${figure(item.turnDeg)} ${x} ${y})` } : {}),
  });
}

function groupOf(group: Group, ids: Ids, from: PagePoint): Element {
  const { layer, window, shift = ORIGIN } = group;
  const element = having(new G(), layer === undefined ? {} : { id: layerId(layer, ids), class: "layer" });
  if (window !== undefined) clip(element, window, ids, from);
  const inside = { x: from.x + shift.x, y: from.y + shift.y };
  for (const item of group.items) element.add(elementOf(item, ids, inside));
  return element;
}

/** A layer's name, with a number from its second group on: ids may stand only once. */
function layerId(layer: Layer, { layers }: Ids): string {
  const number = (layers.get(layer) ?? 0) + 1;
  layers.set(layer, number);
  return number === 1 ? layer : `${layer}-${number}`;
}

/** A window clips in the coordinates outside its group's shift. */
function clip(element: G, window: Window, ids: Ids, from: PagePoint): void {
  ids.windows += 1;
  const id = `window-${ids.windows}`;
  element.attr("clip-path", `url(#${id})`);
  const { widthMm, heightMm } = window;
  const corner = { x: window.x + from.x, y: window.y + from.y };
  const opening: Item = { kind: "rectangle", corner, widthMm, heightMm };
  element.add(new ClipPath().attr("id", id).add(elementOf(opening, ids)));
}
