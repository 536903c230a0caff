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
import { attribute, element, escaped } from "./svg-element.js";

/** Ids that were given on one page: never from a counter of the process, so that a page is always the same. */
export interface Ids {
  readonly layers: Map<Layer, number>;
  windows: number;
}

export const noIds = (): Ids => ({ layers: new Map(), windows: 0 });

/** Where a group's own coordinates begin on the page: shifts are added up, so that every figure is one of the page. */
const ORIGIN: PagePoint = { x: 0, y: 0 };

/** One item of the display list as an element. */
export function elementOf(item: Item, ids: Ids, from: PagePoint = ORIGIN): string {
  const x = (at: PagePoint): string => figure(at.x + from.x);
  const y = (at: PagePoint): string => figure(at.y + from.y);
  switch (item.kind) {
    case "line": {
      const start = attribute("x1", x(item.from)) + attribute("y1", y(item.from));
      const end = attribute("x2", x(item.to)) + attribute("y2", y(item.to));
      return element("line", start + end + strokeOf(item.stroke) + markOf(item.mark));
    }
    case "path": {
      const steps = item.steps.map((each) => step(each, from)).join("");
      return element("path", attribute("d", steps) + paintOf(item));
    }
    case "circle": {
      const centre = attribute("cx", x(item.centre)) + attribute("cy", y(item.centre));
      return element("circle", centre + attribute("r", figure(item.radiusMm)) + paintOf(item));
    }
    case "rectangle": {
      const corner = attribute("x", x(item.corner)) + attribute("y", y(item.corner));
      return element("rect", corner + sizeOf(item) + paintOf(item));
    }
    case "text":
      return textOf(item, { x: x(item.at), y: y(item.at) });
    case "group":
      return groupOf(item, ids, from);
  }
}

function sizeOf({ widthMm, heightMm, cornerRadiusMm }: Extract<Item, { kind: "rectangle" }>): string {
  const size = attribute("width", figure(widthMm)) + attribute("height", figure(heightMm));
  return cornerRadiusMm ? size + attribute("rx", figure(cornerRadiusMm)) : size;
}

function step(each: PathStep, from: PagePoint): string {
  if (each.to === "close") return "Z";
  return `${each.to === "move" ? "M" : "L"}${figure(each.at.x + from.x)} ${figure(each.at.y + from.y)}`;
}

function colour({ red, green, blue }: Ink): string {
  const parts = [red, green, blue].map((part) => Math.round(Number(figure(part)) * 255));
  return `#${parts.map((part) => part.toString(16).padStart(2, "0")).join("")}`;
}

function strokeOf({ widthMm, ink, dashMm, dashFromMm }: Stroke): string {
  const pen = attribute("stroke", colour(ink)) + attribute("stroke-width", figure(widthMm));
  const dash = dashMm === undefined ? "" : attribute("stroke-dasharray", dashMm.map(figure).join(" "));
  return pen + dash + (dashFromMm === undefined ? "" : attribute("stroke-dashoffset", figure(dashFromMm)));
}

const markOf = (mark: Mark | undefined): string =>
  mark === undefined
    ? ""
    : attribute("class", mark.role) + attribute("data-speaker", cleanText(mark.speaker));

interface Painted {
  readonly stroke?: Stroke;
  readonly fill?: Ink;
  readonly mark?: Mark;
}

const paintOf = ({ stroke, fill, mark }: Painted): string =>
  (stroke === undefined ? "" : strokeOf(stroke)) +
  (fill === undefined ? "" : attribute("fill", colour(fill))) +
  markOf(mark);

function textOf(item: Text, { x, y }: { x: string; y: string }): string {
  const attributes = [
    attribute("x", x) + attribute("y", y),
    attribute("font-size", figure(emMm(item))) + attribute("fill", colour(item.ink)),
    item.face === "bold" ? attribute("font-weight", "700") : "",
    item.anchor === "start" ? "" : attribute("text-anchor", item.anchor),
    item.turnDeg ? attribute("transform", `rotate(${figure(item.turnDeg)} ${x} ${y})`) : "",
  ];
  return element("text", attributes.join(""), escaped(drawable(item.text)));
}

function groupOf(group: Group, ids: Ids, from: PagePoint): string {
  const { layer, window, shift = ORIGIN } = group;
  const named = layer === undefined ? "" : attribute("id", layerId(layer, ids)) + attribute("class", "layer");
  const clip = window === undefined ? NO_CLIP : clipOf(window, ids, from);
  const inside = { x: from.x + shift.x, y: from.y + shift.y };
  const items = group.items.map((item) => elementOf(item, ids, inside));
  return element("g", named + clip.attribute, clip.element + items.join(""));
}

/** A layer's name, with a number from its second group on: ids may stand only once. */
function layerId(layer: Layer, { layers }: Ids): string {
  const number = (layers.get(layer) ?? 0) + 1;
  layers.set(layer, number);
  return number === 1 ? layer : `${layer}-${number}`;
}

interface Clip {
  readonly attribute: string;
  readonly element: string;
}

const NO_CLIP: Clip = { attribute: "", element: "" };

/** A window clips in the coordinates outside its group's shift. */
function clipOf(window: Window, ids: Ids, from: PagePoint): Clip {
  ids.windows += 1;
  const id = `window-${ids.windows}`;
  const { widthMm, heightMm } = window;
  const corner = { x: window.x + from.x, y: window.y + from.y };
  const opening = elementOf({ kind: "rectangle", corner, widthMm, heightMm }, ids);
  return {
    attribute: attribute("clip-path", `url(#${id})`),
    element: element("clipPath", attribute("id", id), opening),
  };
}
