import type { Area, Polygon, Shape } from "../../src/geometry/shape.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { type Member, type Room, type Speaker, type Surface, surfaceNamed } from "../../src/room/room.js";

/*
 * Distances in a box room with the plainest arithmetic there is, to hold the house's own against: everything that
 * stands on a surface is a disc or a rectangle along u and v, and so is every opening.
 */

export interface Block {
  readonly u: readonly [number, number];
  readonly v: readonly [number, number];
}

const blockOf = (points: Polygon): Block => {
  const us = points.map(({ u }) => u);
  const vs = points.map(({ v }) => v);
  return { u: [Math.min(...us), Math.max(...us)], v: [Math.min(...vs), Math.max(...vs)] };
};

export function bandBlock({ from, to, widthMm }: Member): Block {
  const { u, v } = blockOf([from, to]);
  const half = widthMm / 2;
  return u[1] - u[0] > v[1] - v[0]
    ? { u, v: [v[0] - half, v[1] + half] }
    : { u: [u[0] - half, u[1] + half], v };
}

const outside = ([low, high]: readonly [number, number], [from, to]: readonly [number, number]): number =>
  Math.max(low - to, from - high);

/** Edge to edge: negative by the shortest way out. */
export function gapByHand(block: Block, shape: Shape, centre: SurfacePoint): number {
  const half = halfOf(shape);
  const core = shape.kind === "round" ? { u: 0, v: 0 } : half;
  const du = outside(block.u, [centre.u - core.u, centre.u + core.u]);
  const dv = outside(block.v, [centre.v - core.v, centre.v + core.v]);
  const coreGap = du > 0 && dv > 0 ? Math.hypot(du, dv) : Math.max(du, dv);
  return shape.kind === "round" ? coreGap - shape.diameterMm / 2 : coreGap;
}

const halfOf = (shape: Shape): { readonly u: number; readonly v: number } =>
  shape.kind === "round"
    ? { u: shape.diameterMm / 2, v: shape.diameterMm / 2 }
    : { u: shape.widthMm / 2, v: shape.heightMm / 2 };

function areaGap(area: Area, shape: Shape, centre: SurfacePoint): number {
  if (area.kind === "rectangle") {
    return gapByHand({ u: [area.min.u, area.max.u], v: [area.min.v, area.max.v] }, shape, centre);
  }
  return shapeGap({ kind: "round", diameterMm: area.diameterMm }, area.centre, { shape, centre });
}

interface Standing {
  readonly shape: Shape;
  readonly centre: SurfacePoint;
}

function shapeGap(shape: Shape, at: SurfacePoint, other: Standing): number {
  if (shape.kind === "round" && other.shape.kind === "round") {
    const apart = Math.hypot(at.u - other.centre.u, at.v - other.centre.v);
    return apart - (shape.diameterMm + other.shape.diameterMm) / 2;
  }
  if (shape.kind === "round") return shapeGap(other.shape, other.centre, { shape, centre: at });
  const half = halfOf(shape);
  const block: Block = { u: [at.u - half.u, at.u + half.u], v: [at.v - half.v, at.v + half.v] };
  return gapByHand(block, other.shape, other.centre);
}

/** Whether the loudspeaker may have its centre there, `slackMm` less than all that is asked for being enough. */
export function isClearByHand(room: Room, speaker: Speaker, centre: SurfacePoint, slackMm: number): boolean {
  const surface = surfaceNamed(room, speaker.surface);
  const { model } = speaker;
  const wanted = model.clampReachMm + room.checks.clearMm;
  const neighbours = room.speakers.filter(({ id, surface: on }) => id !== speaker.id && on === surface.name);
  return (
    lies(surface, speaker.flange, centre, slackMm) &&
    framingBlocks(surface).every((block) => gapByHand(block, speaker.opening, centre) >= wanted - slackMm) &&
    surface.obstructions.every(
      ({ area, keepMm, behindMm }) =>
        (behindMm !== null && model.depthMm <= behindMm + surface.boardMm) ||
        areaGap(area, speaker.opening, centre) >= Math.max(keepMm, wanted) - slackMm,
    ) &&
    neighbours.every(({ position, opening, flange, model: other }) => {
      if (position.kind !== "given") return true;
      const at = position.centre;
      const openings = shapeGap(opening, at, { shape: speaker.opening, centre });
      const flanges = shapeGap(flange, at, { shape: speaker.flange, centre });
      return openings >= wanted + other.clampReachMm - slackMm && flanges >= -slackMm;
    })
  );
}

/** Members' bands and unknown stretches. */
export function framingBlocks({ framing }: Surface): readonly Block[] {
  if (framing.kind === "unknown") throw new Error("framing unknown");
  return [...framing.members.map(bandBlock), ...framing.unknown.map(blockOf)];
}

function lies({ finished }: Surface, flange: Shape, centre: SurfacePoint, slackMm: number): boolean {
  const { u, v } = blockOf(finished);
  const half = halfOf(flange);
  return (
    centre.u - half.u >= u[0] - slackMm &&
    centre.u + half.u <= u[1] + slackMm &&
    centre.v - half.v >= v[0] - slackMm &&
    centre.v + half.v <= v[1] + slackMm
  );
}
