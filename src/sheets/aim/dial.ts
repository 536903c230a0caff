import type { Item, PagePoint } from "../../drawing/drawing.js";
import { arrow, circle, dashed, layer, line, PEN, point } from "../../drawing/pen.js";
import { type Block, textBlock } from "../../drawing/text-block.js";
import type { Surface } from "../../room/room.js";
import type { Order } from "../sheet.js";
import { arrowOnPage } from "../template/template-drawing.js";
import type { Aimed } from "./aimed.js";

export const DIAL_MM = 42;
const RADIUS_MM = DIAL_MM / 2 - 1;

/**
 * The arrow through the dial's middle as it lies on the surface, over the line in which the members run; what that
 * line is stands under it.
 */
export function dial(order: Order, { aim, speaker, surface }: Aimed, corner: PagePoint): Block {
  const centre = point(corner.x + DIAL_MM / 2, corner.y + DIAL_MM / 2);
  const shaft = aim.arrowDeg === null ? [] : aimArrow(aim.arrowDeg, centre, speaker.id);
  const run = runLine(surface, centre);
  const name = order.words.strips.aim.run[surface.kind === "ceiling" ? "joist" : "stud"];
  const place = { x: corner.x, y: corner.y + DIAL_MM + 1, widthMm: DIAL_MM };
  const under = textBlock(`—·— ${name}`, { ...place, capMm: 2.5, anchor: "middle" });
  return {
    items: [
      layer("framing", run === null ? [] : [run, ...under.items]),
      layer("notes", [circle(centre, RADIUS_MM, PEN.fine)]),
      ...(shaft.length === 0 ? [] : [layer("aim", shaft)]),
    ],
    heightMm: DIAL_MM + 1 + under.heightMm,
  };
}

function aimArrow(arrowDeg: number, centre: PagePoint, speaker: string): Item[] {
  const to = arrowOnPage(arrowDeg);
  const at = (reachMm: number): PagePoint => point(centre.x + to.x * reachMm, centre.y + to.y * reachMm);
  return arrow(at(-RADIUS_MM), at(RADIUS_MM), PEN.cut, { role: "aim", speaker });
}

function runLine({ framing }: Surface, { x, y }: PagePoint): Item | null {
  if (framing.kind === "unknown") return null;
  const stroke = dashed(PEN.fine, 8, 1.5, 1.5, 1.5);
  const { u, v } = framing.direction;
  const at = (reachMm: number): PagePoint => point(x + u * reachMm, y - v * reachMm);
  return line(at(-RADIUS_MM), at(RADIUS_MM), stroke);
}
