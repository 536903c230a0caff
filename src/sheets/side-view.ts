import { label } from "../drawing/label.js";
import { line } from "../drawing/pen.js";
import { isInside } from "../geometry/distance.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { SurfacePoint, Vector } from "../geometry/vector.js";
import type { Opening } from "../job.js";
import { type Cut, coveredOn, curvesPiece } from "./ear/curves.js";
import { away } from "./ear/dial.js";
import { LINES } from "./ear/lines.js";
import { degreesText, keyOf } from "./ear/parts.js";
import { loudspeakersPiece, seatsPiece } from "./ear/places.js";
import { widestMm } from "./ear/room-plan.js";
import { type Section, type Side, sectionThrough } from "./ear/section.js";
import { dialMm, elevationDial, type Ray } from "./ear/windows.js";
import { figuresOf } from "./figures.js";
import { type FittedPages, fittedPages, inOneSheet } from "./marking/fitted.js";
import type { Piece, WordsWish } from "./marking/piece.js";
import { planOutline } from "./marking/plan-outline.js";
import type { Sketch } from "./marking/sketch.js";
import type { View } from "./marking/view.js";
import { saying } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";

/** The room cut from front to back through the reference seat: elevations, and coverage in the cut; a page to each side. */
export function sideView(order: Order): Sheet[] {
  const { room, openings } = order.job;
  const plan = planOutline(order).outline;
  const section = sectionThrough(room, plan);
  const pages = (["left", "right"] as const).flatMap((side) => {
    const seen = openings.filter((opening) => isSeen(opening, room.reference.ear, side));
    return seen.length === 0 ? [] : [pagesTo(order, { section, side, seen })];
  });
  if (pages.length === 0) return [];
  const { title } = order.words.earPlane.side;
  return [inOneSheet({ name: "side-view", trades: ["installer"], title }, pages)];
}

/** On that side of the reference seat, or in the cut itself. */
function isSeen({ position }: Opening, ear: Vector, side: Side): boolean {
  const toLeftMm = ear.x - position.x;
  return side === "left" ? toLeftMm >= -EPSILON_MM : toLeftMm <= EPSILON_MM;
}

interface Looked {
  readonly section: Section;
  readonly side: Side;
  readonly seen: readonly Opening[];
}

/** Facing left the front wall is on the page's right, facing right on its left. */
const frontOf = (side: Side): 1 | -1 => (side === "left" ? 1 : -1);

function pagesTo(order: Order, looked: Looked): FittedPages {
  const { words, job } = order;
  const { side: say } = words.earPlane;
  const { section, side, seen } = looked;
  const facts = {
    title: say.title,
    view: words.frame.facingWall(section.walls[side]),
    hold: null,
    front: side === "left" ? 90 : 270,
    faces: null,
  };
  const isDirectedSeen = seen.some(isDirected);
  const has = (kind: "ceiling" | "wall"): boolean => seen.some(({ surface }) => surface.kind === kind);
  const parts = [
    saying(say.use(job.room.reference.name), "bold"),
    ...(isDirectedSeen ? [saying(say.dial)] : []),
    saying(say.cut),
    saying(words.earPlane.coverage.model),
    keyOf(
      order,
      ...(has("ceiling") ? (["inCeiling", "overhead"] as const) : []),
      ...(has("wall") ? (["inWall", "wall"] as const) : []),
      ...(isDirectedSeen ? (["direction"] as const) : []),
      "earPlane",
      ...(job.room.layout === null ? [] : (["window"] as const)),
    ),
  ];
  const forms = [{ sketch: sketchOf(order, looked), parts }] as const;
  return fittedPages(order, { facts, figuresTitle: say.figures, forms, allFigures: () => [] });
}

function sketchOf(order: Order, looked: Looked): Sketch {
  const { room } = order.job;
  const { section, side, seen } = looked;
  const onPage = ({ u, v }: SurfacePoint): SurfacePoint => ({ u: frontOf(side) * u, v });
  const projected = ({ y, z }: Vector): SurfacePoint => onPage({ u: y, v: z });
  const plan = planOutline(order).outline;
  const cut: Cut = {
    plane: section.plane,
    holds: (at) => isInside(at, section.outline),
    drawn: onPage,
    outline: plan,
    mostMm: widestMm(room, plan),
  };
  return {
    outline: section.outline.map(onPage),
    beyond: seen.map(({ position }) => projected(position)),
    edges: edgesOf(order, looked, onPage),
    chains: [],
    caption: null,
    inside: (view) => [
      earPlanePiece(order, section, onPage, view),
      curvesPiece(coveredOn(seen, cut), cut, view),
      dialPiece(order, looked, projected, view),
      seatsPiece(order, [room.reference], projected, view),
      loudspeakersPiece({ openings: seen, projected, under: (one) => elevationSaid(order, one) }, view),
    ],
  };
}

/** One of many that fill an area is heard all over it: nobody asks where it is from one seat. */
const isDirected = ({ speaker }: Opening): boolean => speaker.area === null;

const elevationSaid = ({ words }: Order, opening: Opening): string[] =>
  isDirected(opening) ? [words.earPlane.elevation(degreesText(opening.direction.elevationDeg))] : [];

/** Floor and the walls at both ends by name; ceilings are not named, their form says it. */
function edgesOf({ words }: Order, { section }: Looked, onPage: (at: SurfacePoint) => SurfacePoint) {
  const { outline, walls } = section;
  const [back, front] = [outline[0], outline[1]];
  const [overFront, overBack] = [outline[2], outline.at(-1)];
  if (back === undefined || front === undefined || overFront === undefined || overBack === undefined)
    return [];
  const edge = (along: string, from: SurfacePoint, to: SurfacePoint) => ({
    name: words.frame.wall(along),
    from: onPage(from),
    to: onPage(to),
  });
  return [edge("floor", back, front), edge(walls.front, front, overFront), edge(walls.back, overBack, back)];
}

function earPlanePiece(
  { job, words }: Order,
  { outline }: Section,
  onPage: (at: SurfacePoint) => SurfacePoint,
  view: View,
): Piece {
  const { z } = job.room.reference.ear;
  const [back, front] = [outline[0]?.u ?? 0, outline[1]?.u ?? 0];
  const [from, to] = [view.place(onPage({ u: back, v: z })), view.place(onPage({ u: front, v: z }))];
  const said = words.earPlane.plane(figuresOf(z, job.room.units).main);
  const plate = label([{ words: said, capMm: view.heights.smallMm, face: "regular" }]);
  const places = [0.3, 0.7, 0.2, 0.8, 0.4, 0.6, 0.1, 0.9].map((part) => ({
    x: from.x + (to.x - from.x) * part,
    y: from.y,
  }));
  return {
    layer: "dimensions",
    rank: 4,
    items: [line(from, to, LINES.earPlane)],
    wishes: [{ ...plate, middles: places, optional: true }],
  };
}

function dialPiece(
  order: Order,
  { side, seen }: Looked,
  projected: (at: Vector) => SurfacePoint,
  view: View,
): Piece {
  const { room } = order.job;
  const centre = view.place(projected(room.reference.ear));
  const outerMm = dialMm(centre, view);
  const { items, taken, rays } = elevationDial(room, seen.filter(isDirected), {
    centre,
    outerMm,
    front: frontOf(side),
  });
  return {
    layer: "notes",
    rank: 2,
    items,
    wishes: rays.map((ray) => rayName(ray, view)),
    taken,
  };
}

/** Beyond the ray's tip: who is seen there and under which elevation; the loudspeakers' own words say it too. */
function rayName({ openings, elevationDeg, tip, way }: Ray, { heights }: View): WordsWish {
  const ids = openings.map(({ speaker }) => speaker.id).join(" ");
  const said = label([
    { words: `${ids} ${degreesText(elevationDeg)}`, capMm: heights.smallMm, face: "regular" },
  ]);
  const reach = Math.abs(way.x) * (said.widthMm / 2) + Math.abs(way.y) * (said.heightMm / 2) + 0.5;
  const middles = [0, 2, 4, 7, 10].map((further) => away(tip, way, reach + further));
  return { ...said, middles, optional: true };
}
