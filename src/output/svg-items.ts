import { Circle, ClipPath, type Element, G, Line, Path, Rect, Text as SvgText } from "@svgdotjs/svg.js";
import { drawable } from "../drawing/coverage.js";
import type { Group, Ink, Item, Layer, Mark, PathStep, Stroke, Text } from "../drawing/drawing.js";
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

/** One item of the display list as an element, all its attributes set at once. */
export function elementOf(item: Item, ids: Ids): Element {
  switch (item.kind) {
    case "line":
      return new Line().attr({
        ...{ x1: figure(item.from.x), y1: figure(item.from.y), x2: figure(item.to.x), y2: figure(item.to.y) },
        ...strokeOf(item.stroke),
        ...markOf(item.mark),
      });
    case "path":
      return new Path().attr({ d: item.steps.map(step).join(""), ...paintOf(item) });
    case "circle":
      return new Circle().attr({
        ...{ cx: figure(item.centre.x), cy: figure(item.centre.y), r: figure(item.radiusMm) },
        ...paintOf(item),
      });
    case "rectangle":
      return new Rect().attr({
        ...boxOf({ ...item.corner, widthMm: item.widthMm, heightMm: item.heightMm }),
        ...(item.cornerRadiusMm ? { rx: figure(item.cornerRadiusMm) } : {}),
        ...paintOf(item),
      });
    case "text":
      return textOf(item);
    case "group":
      return groupOf(item, ids);
  }
}

function step(each: PathStep): string {
  if (each.to === "close") return "Z";
  return `${each.to === "move" ? "M" : "L"}${figure(each.at.x)} ${figure(each.at.y)}`;
}

const boxOf = (box: { x: number; y: number; widthMm: number; heightMm: number }): Attributes => ({
  x: figure(box.x),
  y: figure(box.y),
  width: figure(box.widthMm),
  height: figure(box.heightMm),
});

function colour({ red, green, blue }: Ink): string {
  const parts = [red, green, blue].map((part) => Math.round(Number(figure(part)) * 255));
  return `#${parts.map((part) => part.toString(16).padStart(2, "0")).join("")}`;
}

function strokeOf({ widthMm, ink, dashMm }: Stroke): Attributes {
  const dash = dashMm === undefined ? {} : { "stroke-dasharray": dashMm.map(figure).join(" ") };
  return { stroke: colour(ink), "stroke-width": figure(widthMm), ...dash };
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

function textOf(item: Text): Element {
  const { x, y } = { x: figure(item.at.x), y: figure(item.at.y) };
  return new SvgText().plain(drawable(item.text)).attr({
    ...{ x, y, "font-size": figure(emMm(item)), fill: colour(item.ink) },
    ...(item.face === "bold" ? { "font-weight": "700" } : {}),
    ...(item.anchor === "start" ? {} : { "text-anchor": item.anchor }),
    ...(item.turnDeg ? { transform: `rotate(${figure(item.turnDeg)} ${x} ${y})` } : {}),
  });
}

/** A window clips outside the shift, so a group with both is two elements, one in the other. */
function groupOf(group: Group, ids: Ids): Element {
  const { layer, window, shift } = group;
  const outer = new G().attr(layer === undefined ? {} : { id: layerId(layer, ids), class: "layer" });
  if (window !== undefined) clip(outer, window, ids);
  const inner = window !== undefined && shift !== undefined ? new G().addTo(outer) : outer;
  if (shift !== undefined) inner.attr("transform", `translate(${figure(shift.x)} ${figure(shift.y)})`);
  for (const item of group.items) inner.add(elementOf(item, ids));
  return outer;
}

/** A layer's name, with a number from its second group on: ids may stand only once. */
function layerId(layer: Layer, { layers }: Ids): string {
  const number = (layers.get(layer) ?? 0) + 1;
  layers.set(layer, number);
  return number === 1 ? layer : `${layer}-${number}`;
}

function clip(outer: G, window: NonNullable<Group["window"]>, ids: Ids): void {
  ids.windows += 1;
  const id = `window-${ids.windows}`;
  outer.attr("clip-path", `url(#${id})`);
  outer.add(new ClipPath().attr("id", id).add(new Rect().attr(boxOf(window))));
}
