import type { Area, Shape } from "../../../src/geometry/shape.js";
import type { SurfacePoint, Vector } from "../../../src/geometry/vector.js";
import type { Room, Speaker, Surface } from "../../../src/room/room.js";
import { PUBLISHED } from "../../standards/published-positions.js";

/*
 * A second way to everything that placing rests on, for box rooms with 12.5 mm of board: where points of a surface lie
 * in the room, azimuth and elevation, the published ranges, and what is clear, from distances between rectangles and
 * circles. None of it is taken from src.
 */

const BOARD_MM = 12.5;
/** The house lets pass what is this near to a limit. */
const EPSILON_MM = 0.01;

interface Size {
  readonly width: number;
  readonly length: number;
  readonly height: number;
}

export function sizeOf(room: Room): Size {
  const ceiling = room.surfaces.find(({ name }) => name === "ceiling");
  if (ceiling === undefined) throw new Error("no ceiling");
  const us = ceiling.edges.map(({ from }) => from.u);
  const vs = ceiling.edges.map(({ from }) => from.v);
  // Straps hold the board that much lower than the joists.
  const strapMm = room.surfaces
    .flatMap(({ name, framing }) => (name === "ceiling" && framing.kind === "known" ? framing.members : []))
    .filter(({ kind }) => kind === "strap" || kind === "channel")
    .reduce((most, { depthMm }) => Math.max(most, depthMm), 0);
  const height = ceiling.frame.origin.z - strapMm;
  return { width: Math.max(...us), length: Math.max(...vs), height };
}

/** The finished face of each surface of a box in the room: u to the right of a person who faces it, v up or forward. */
export function positionOn(name: string, { width, length, height }: Size, u: number, v: number): Vector {
  switch (name) {
    case "ceiling":
      return { x: width - u, y: v, z: height - BOARD_MM };
    case "front":
      return { x: u, y: length - BOARD_MM, z: v };
    case "back":
      return { x: width - u, y: BOARD_MM, z: v };
    case "left":
      return { x: BOARD_MM, y: u, z: v };
    case "right":
      return { x: width - BOARD_MM, y: length - u, z: v };
    default:
      throw new Error(name);
  }
}

export function extentOf(name: string, { width, length, height }: Size): readonly [number, number] {
  if (name === "ceiling") return [width, length];
  return [name === "front" || name === "back" ? width : length, height];
}

interface Published {
  readonly azimuth: number;
  readonly elevation: number;
  readonly azimuths: readonly [number, number];
  readonly elevations: readonly [number, number];
}

const rangeIn = (text: string): readonly [number, number] => {
  const [low = Number.NaN, high = low] = text.split("..").map(Number);
  return [low, high];
};

/** What is published of a channel in a system of that name. */
export function published(layout: string, label: string): Published {
  const lines = PUBLISHED.find(([, name]) => name === layout)?.[4].split("\n") ?? [];
  const line = lines.map((one) => one.trim().split(/ +/u)).find(([first]) => first === label);
  const [, azimuth = "", elevation = "", azimuths = "", elevations = ""] = line ?? [];
  if (line === undefined) throw new Error(`${label} is not in ${layout}`);
  return {
    azimuth: Number(azimuth),
    elevation: Number(elevation),
    azimuths: rangeIn(azimuths),
    elevations: rangeIn(elevations),
  };
}

const DEG = Math.PI / 180;

export interface Seen {
  readonly offDeg: number;
  readonly breaches: number;
}

/** How a position is seen from the ear, against what is published; `toleranceDeg` where one value is fixed. */
export function seen(ear: Vector, at: Vector, wanted: Published, toleranceDeg: number): Seen {
  const [x, y, z] = [at.x - ear.x, at.y - ear.y, at.z - ear.z];
  const azimuth = Math.atan2(-x, y) / DEG;
  const elevation = Math.atan2(z, Math.hypot(x, y)) / DEG;
  // The law of cosines on the sphere.
  const cosine =
    Math.sin(wanted.elevation * DEG) * Math.sin(elevation * DEG) +
    Math.cos(wanted.elevation * DEG) * Math.cos(elevation * DEG) * Math.cos((azimuth - wanted.azimuth) * DEG);
  const within = (figure: number, [low, high]: readonly [number, number]): boolean => {
    const spare = low === high ? toleranceDeg : 0;
    return figure >= low - spare - 1e-6 && figure <= high + spare + 1e-6;
  };
  const around = [azimuth - 360, azimuth, azimuth + 360];
  const azimuthIsRight = elevation > 85 || around.some((one) => within(one, wanted.azimuths));
  const elevationIsRight = within(elevation, wanted.elevations);
  return {
    offDeg: Math.acos(Math.min(1, Math.max(-1, cosine))) / DEG,
    breaches: (azimuthIsRight ? 0 : 1) + (elevationIsRight ? 0 : 1),
  };
}

/** Cosine of the angle at the ear between what is published and a position: the product of two directions. */
export function nearness(ear: Vector, wanted: Published): (at: Vector) => number {
  const level = Math.cos(wanted.elevation * DEG);
  const x = -Math.sin(wanted.azimuth * DEG) * level;
  const y = Math.cos(wanted.azimuth * DEG) * level;
  const z = Math.sin(wanted.elevation * DEG);
  return (at) => {
    const [dx, dy, dz] = [at.x - ear.x, at.y - ear.y, at.z - ear.z];
    return (dx * x + dy * y + dz * z) / Math.sqrt(dx * dx + dy * dy + dz * dz);
  };
}

interface Rectangle {
  readonly u: readonly [number, number];
  readonly v: readonly [number, number];
}

/** Distance from edge to edge of a round or rectangular shape at a centre and a rectangle; 0 where they overlap. */
function toRectangle(shape: Shape, at: SurfacePoint, { u, v }: Rectangle): number {
  const [halfU, halfV] = shape.kind === "round" ? [0, 0] : [shape.widthMm / 2, shape.heightMm / 2];
  const du = Math.max(u[0] - at.u - halfU, at.u - halfU - u[1], 0);
  const dv = Math.max(v[0] - at.v - halfV, at.v - halfV - v[1], 0);
  return Math.max(0, Math.hypot(du, dv) - (shape.kind === "round" ? shape.diameterMm / 2 : 0));
}

function rectangleOf(shape: Extract<Shape, { kind: "rectangle" }>, at: SurfacePoint): Rectangle {
  const [halfU, halfV] = [shape.widthMm / 2, shape.heightMm / 2];
  return { u: [at.u - halfU, at.u + halfU], v: [at.v - halfV, at.v + halfV] };
}

function betweenShapes(a: Shape, at: SurfacePoint, b: Shape, there: SurfacePoint): number {
  if (b.kind === "rectangle") return toRectangle(a, at, rectangleOf(b, there));
  if (a.kind === "rectangle") return toRectangle(b, there, rectangleOf(a, at));
  const apart = Math.hypot(at.u - there.u, at.v - there.v);
  return Math.max(0, apart - (a.diameterMm + b.diameterMm) / 2);
}

const asShape = (area: Area): readonly [Shape, SurfacePoint] =>
  area.kind === "round"
    ? [area, area.centre]
    : [
        { kind: "rectangle", widthMm: area.max.u - area.min.u, heightMm: area.max.v - area.min.v },
        { u: (area.min.u + area.max.u) / 2, v: (area.min.v + area.max.v) / 2 },
      ];

export interface Standing {
  readonly speaker: Speaker;
  readonly surface: Surface;
  readonly centre: SurfacePoint;
}

/** Whether the opening lies over a line where two sheets meet; its very edge may lie on one. */
export function isOverJoint({ speaker: { opening }, surface, centre }: Standing): boolean {
  const smaller: Shape =
    opening.kind === "round"
      ? { kind: "round", diameterMm: opening.diameterMm - 2 * EPSILON_MM }
      : {
          kind: "rectangle",
          widthMm: opening.widthMm - 2 * EPSILON_MM,
          heightMm: opening.heightMm - 2 * EPSILON_MM,
        };
  return surface.joints.some(({ from, to }) => {
    const line: Rectangle = {
      u: [Math.min(from.u, to.u), Math.max(from.u, to.u)],
      v: [Math.min(from.v, to.v), Math.max(from.v, to.v)],
    };
    return toRectangle(smaller, centre, line) === 0;
  });
}

/** Whether an opening may have its centre there: framing along u or v, everything kept away from, and the others. */
export function isClear(
  room: Room,
  { speaker, surface, centre }: Standing,
  others: readonly Standing[],
): boolean {
  const { framing, obstructions, finished } = surface;
  const { opening, flange, model } = speaker;
  const wantedMm = model.clampReachMm + room.checks.clearMm;
  if (framing.kind === "unknown") return false;
  const us = finished.map(({ u }) => u);
  const vs = finished.map(({ v }) => v);
  const halfU = (flange.kind === "round" ? flange.diameterMm : flange.widthMm) / 2 - EPSILON_MM;
  const halfV = (flange.kind === "round" ? flange.diameterMm : flange.heightMm) / 2 - EPSILON_MM;
  const isOn =
    centre.u >= Math.min(...us) + halfU &&
    centre.u <= Math.max(...us) - halfU &&
    centre.v >= Math.min(...vs) + halfV &&
    centre.v <= Math.max(...vs) - halfV;
  if (!isOn) return false;
  const members = framing.members.every(({ from, to, widthMm }) => {
    const runsUp = Math.abs(to.v - from.v) > Math.abs(to.u - from.u);
    const [aside, along] = runsUp ? [widthMm / 2, 0] : [0, widthMm / 2];
    const band: Rectangle = {
      u: [Math.min(from.u, to.u) - aside, Math.max(from.u, to.u) + aside],
      v: [Math.min(from.v, to.v) - along, Math.max(from.v, to.v) + along],
    };
    return toRectangle(opening, centre, band) >= wantedMm - EPSILON_MM;
  });
  const stretches = framing.unknown.every((stretch) => {
    const u = stretch.map((corner) => corner.u);
    const v = stretch.map((corner) => corner.v);
    const part: Rectangle = {
      u: [Math.min(...u), Math.max(...u)],
      v: [Math.min(...v), Math.max(...v)],
    };
    return toRectangle(opening, centre, part) >= wantedMm - EPSILON_MM;
  });
  const things = obstructions.every(
    ({ area, keepMm, behindMm }) =>
      (behindMm !== null && model.depthMm <= behindMm + BOARD_MM) ||
      betweenShapes(opening, centre, ...asShape(area)) >= Math.max(keepMm, wantedMm) - EPSILON_MM,
  );
  const neighbours = others
    .filter((other) => other.surface.name === surface.name)
    .every(
      (other) =>
        betweenShapes(opening, centre, other.speaker.opening, other.centre) >=
          wantedMm + other.speaker.model.clampReachMm - EPSILON_MM &&
        overlapsNot(flange, centre, other.speaker.flange, other.centre),
    );
  return members && stretches && things && neighbours;
}

/** Flanges may touch, and by the house's tolerance a little more. */
function overlapsNot(a: Shape, at: SurfacePoint, b: Shape, there: SurfacePoint): boolean {
  const smaller = (shape: Shape): Shape =>
    shape.kind === "round"
      ? { kind: "round", diameterMm: shape.diameterMm - EPSILON_MM }
      : { kind: "rectangle", widthMm: shape.widthMm - EPSILON_MM, heightMm: shape.heightMm - EPSILON_MM };
  return betweenShapes(smaller(a), at, smaller(b), there) > 0;
}
