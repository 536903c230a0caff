import type { Item, PagePoint, Stroke, Window } from "../../drawing/drawing.js";
import { arrow, circle, dashed, layer, line, PEN, point, rectangle } from "../../drawing/pen.js";
import type { Shape } from "../../geometry/shape.js";
import { directionOf, minus, plus, quarterTurn, times } from "../../geometry/surface-point.js";
import { radians, type SurfacePoint } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { repeats } from "../../place/run.js";
import type { Member, Obstruction } from "../../room/room.js";
import { MAX_PAGE_SIDE_MM } from "../../standards/paper.js";
import { isStrap } from "../marking/rows.js";

/** Around an outline, so that no part of it stands on a page's edge. */
const AROUND_MM = 2;
/** Framing further away than this from the centre is on no page of any template but the largest rolls'. */
const NEAR_MM = 1200;

/** Lines of a template by what they mean; each differs by its dashes, not by colour. */
const LINES = {
  cut: PEN.cut,
  /** Under an error the same line is broken. */
  notToCut: dashed(PEN.cut, 9, 6),
  flange: dashed(PEN.fine, 1.5, 1.5),
  cross: dashed(PEN.fine, 12, 2, 2, 2),
  measured: PEN.thin,
  assumed: dashed(PEN.thin, 6, 2),
  /** Hidden behind the flange: ISO 128's short dashes. */
  web: dashed(PEN.fine, 2.5, 1),
  strap: dashed(PEN.thin, 3, 1.2, 3, 5),
  obstruction: dashed(PEN.outline, 4, 1.5, 1, 1.5),
} as const satisfies Record<string, Stroke>;

/** Surface to page about the opening's centre: u to the right as it is on the surface, v up where a page's y is down. */
export const placeAbout =
  (centre: SurfacePoint) =>
  ({ u, v }: SurfacePoint): PagePoint =>
    point(u - centre.u, centre.v - v);

/** What of the drawing is wanted on paper, the flange and a little around it, and what must be, the cut line. */
export function templateExtents({ speaker }: Opening): { wanted: Window; least: Window } {
  return { wanted: around(larger(speaker.flange, speaker.opening)), least: around(speaker.opening) };
}

function around(shape: Shape): Window {
  const { widthMm, heightMm } = sizeOf(shape);
  return {
    x: -widthMm / 2 - AROUND_MM,
    y: -heightMm / 2 - AROUND_MM,
    widthMm: widthMm + 2 * AROUND_MM,
    heightMm: heightMm + 2 * AROUND_MM,
  };
}

const larger = (flange: Shape, opening: Shape): Shape =>
  sizeOf(flange).widthMm > sizeOf(opening).widthMm ? flange : opening;

export const sizeOf = (shape: Shape): { widthMm: number; heightMm: number } =>
  shape.kind === "round" ? { widthMm: shape.diameterMm, heightMm: shape.diameterMm } : shape;

/** The template at 1:1 about the opening's centre, without a word: words stand where each page has room for them. */
export function templateDrawing(opening: Opening): Item[] {
  const { speaker, surface } = opening;
  const stroke = opening.mustNotCut ? LINES.notToCut : LINES.cut;
  return [
    layer(
      "framing",
      nearMembers(opening).flatMap((member) => [
        ...memberLines(member, opening),
        ...webLines(member, opening),
      ]),
    ),
    layer(
      "obstructions",
      surface.obstructions.map((obstruction) => obstructionOutline(obstruction, opening.centre)),
    ),
    layer("dimensions", crossLines()),
    layer("notes", [shapeOutline(speaker.flange, LINES.flange)]),
    layer("aim", aimArrow(opening)),
    layer("cut", [shapeOutline(speaker.opening, stroke, { role: "cut", speaker: speaker.id })]),
  ];
}

function shapeOutline(shape: Shape, stroke: Stroke, mark?: { role: "cut"; speaker: string }): Item {
  if (shape.kind === "round") return circle(point(0, 0), shape.diameterMm / 2, stroke, mark);
  const { widthMm, heightMm } = shape;
  return rectangle({ x: -widthMm / 2, y: -heightMm / 2, widthMm, heightMm }, stroke, mark);
}

/** Out to the edges of any page: the window of each cuts them. */
function crossLines(): Item[] {
  const reach = MAX_PAGE_SIDE_MM;
  return [
    line(point(-reach, 0), point(reach, 0), LINES.cross),
    line(point(0, -reach), point(0, reach), LINES.cross),
  ];
}

/** A member's two edges and its ends as page points: near side first. */
export interface Band {
  readonly member: Member;
  readonly along: PagePoint;
  readonly edges: readonly [readonly [PagePoint, PagePoint], readonly [PagePoint, PagePoint]];
}

export function bandOf(member: Member, centre: SurfacePoint): Band {
  const place = placeAbout(centre);
  const [from, to] = [place(member.from), place(member.to)];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = point((to.x - from.x) / length, (to.y - from.y) / length);
  const edge = (side: 1 | -1): readonly [PagePoint, PagePoint] => {
    const aside = point((-along.y * side * member.widthMm) / 2, (along.x * side * member.widthMm) / 2);
    return [point(from.x + aside.x, from.y + aside.y), point(to.x + aside.x, to.y + aside.y)];
  };
  return { member, along, edges: [edge(1), edge(-1)] };
}

export function nearMembers({ surface: { framing }, centre }: Opening): readonly Member[] {
  if (framing.kind === "unknown") return [];
  return framing.members.filter((member) => distanceMm(member, centre) < NEAR_MM);
}

/** From a point to the line through a member's middle. */
function distanceMm({ from, to }: Member, centre: SurfacePoint): number {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  return Math.abs(du * (centre.v - from.v) - dv * (centre.u - from.u)) / Math.hypot(du, dv);
}

function memberLines(member: Member, { centre }: Opening): Item[] {
  const known = member.basis === "measured" ? LINES.measured : LINES.assumed;
  const stroke = isStrap(member) ? LINES.strap : known;
  const [near, far] = bandOf(member, centre).edges;
  return [
    line(near[0], near[1], stroke),
    line(far[0], far[1], stroke),
    line(near[0], far[0], stroke),
    line(near[1], far[1], stroke),
  ];
}

/** Both faces of an I-joist's web, hidden behind its flange. */
function webLines(member: Member, { surface: { framing }, centre }: Opening): Item[] {
  if (framing.kind === "unknown" || framing.web?.kind !== "solid" || !repeats(member)) return [];
  const { mm } = framing.web;
  // One that is doubled has two flanges beside each other, and a web over the middle of each.
  const flangeMm = Math.min(...framing.members.filter(repeats).map(({ widthMm }) => widthMm));
  const offs = member.widthMm > 1.5 * flangeMm ? [-flangeMm / 2, flangeMm / 2] : [0];
  const aside = quarterTurn(directionOf(minus(member.to, member.from)));
  return offs.flatMap((offMm) => {
    const [from, to] = [member.from, member.to].map((end) => plus(end, times(aside, offMm)));
    if (from === undefined || to === undefined) return [];
    const { edges } = bandOf({ ...member, from, to, widthMm: mm }, centre);
    return edges.map(([start, end]) => line(start, end, LINES.web));
  });
}

function obstructionOutline({ area }: Obstruction, centre: SurfacePoint): Item {
  const place = placeAbout(centre);
  if (area.kind === "round") return circle(place(area.centre), area.diameterMm / 2, LINES.obstruction);
  const corner = place({ u: area.min.u, v: area.max.v });
  const box = { ...corner, widthMm: area.max.u - area.min.u, heightMm: area.max.v - area.min.v };
  return rectangle(box, LINES.obstruction);
}

/** Direction of the arrow on a page drawn in (u, v): `arrowDeg` counts anticlockwise from v. */
export const arrowOnPage = (arrowDeg: number): PagePoint =>
  point(-Math.sin(radians(arrowDeg)), -Math.cos(radians(arrowDeg)));

/** Share of the way to the flange that is left free about the centre, for the compass. */
const FREE_CENTRE = 0.15;

function aimArrow({ aim, speaker }: Opening): Item[] {
  if (aim === null || aim.arrowDeg === null) return [];
  const to = arrowOnPage(aim.arrowDeg);
  const reach = reachTo(speaker.flange, to);
  const at = (share: number): PagePoint => point(to.x * reach * share, to.y * reach * share);
  return arrow(at(FREE_CENTRE), at(1), PEN.outline, { role: "aim", speaker: speaker.id });
}

/** From the centre to a shape's outline in a direction of length 1. */
export function reachTo(shape: Shape, direction: PagePoint): number {
  if (shape.kind === "round") return shape.diameterMm / 2;
  return Math.min(shape.widthMm / 2 / Math.abs(direction.x), shape.heightMm / 2 / Math.abs(direction.y));
}
