import { toSurface, toWorld } from "../geometry/frame.js";
import type { Area } from "../geometry/shape.js";
import { inner, outer } from "../geometry/surface-point.js";
import { add, type SurfacePoint, scale } from "../geometry/vector.js";
import type { Edge, Framing, Member, Obstruction, Surface } from "../room/room.js";
import type { Box } from "./box.js";

/*
 * Cable lies along members or square to them. Where these run at an angle to their surface's own axes, the surface is
 * looked at with its axes turned: everything on it is where it was, told in other figures.
 */

/** The surface with its u along its members; itself where they lie along an axis or are unknown. */
export function alongMembers(surface: Surface): Surface {
  const { framing, frame } = surface;
  if (framing.kind === "unknown" || surface.kind === "wall") return surface;
  const along = framing.direction;
  if (Math.max(Math.abs(along.u), Math.abs(along.v)) > 1 - SQUARE) return surface;
  const point = (at: SurfacePoint): SurfacePoint => ({ u: inner(along, at), v: outer(along, at) });
  const edge = (each: Edge): Edge => ({ ...each, from: point(each.from), to: point(each.to) });
  return {
    ...surface,
    frame: {
      ...frame,
      u: add(scale(frame.u, along.u), scale(frame.v, along.v)),
      v: add(scale(frame.u, -along.v), scale(frame.v, along.u)),
    },
    edges: surface.edges.map(edge),
    finished: surface.finished.map(point),
    voids: surface.voids.map((each) => ({
      ...each,
      edges: each.edges.map(edge),
      finished: each.finished.map(point),
    })),
    joints: surface.joints.map((joint) => ({ ...joint, from: point(joint.from), to: point(joint.to) })),
    framing: turnedFraming(framing, point),
    obstructions: surface.obstructions.map(
      (each): Obstruction => ({ ...each, area: turnedArea(each.area, point) }),
    ),
  };
}

/** Sine or so of no angle at all. */
const SQUARE = 1e-9;

type ToPoint = (at: SurfacePoint) => SurfacePoint;

function turnedFraming(framing: Extract<Framing, { kind: "known" }>, point: ToPoint): Framing {
  const member = (each: Member): Member => {
    const [from, to] = [point(each.from), point(each.to)];
    // Rounding must not make one that lies along an axis run aslant.
    if (Math.abs(from.v - to.v) < LEVEL_MM) return { ...each, from, to: { u: to.u, v: from.v } };
    return { ...each, from, to: Math.abs(from.u - to.u) < LEVEL_MM ? { u: from.u, v: to.v } : to };
  };
  const { layout } = framing;
  return {
    ...framing,
    layout: { ...layout, zero: { at: point(layout.zero.at), away: point(layout.zero.away) } },
    run: "u",
    direction: { u: 1, v: 0 },
    members: framing.members.map(member),
    unknown: framing.unknown.map((polygon) => polygon.map(point)),
  };
}

const LEVEL_MM = 1e-6;

/** Round the area as it lies now: a rectangle that lies at an angle is gone round at its corners. */
function turnedArea(area: Area, point: ToPoint): Area {
  return area.kind === "round"
    ? { ...area, centre: point(area.centre) }
    : { kind: "rectangle", ...boxRound(area, point) };
}

const cornersOf = ({ min, max }: Box): readonly SurfacePoint[] => [
  min,
  { u: max.u, v: min.v },
  max,
  { u: min.u, v: max.v },
];

function boxRound(box: Box, point: ToPoint): Box {
  const corners = cornersOf(box).map(point);
  const [us, vs] = [corners.map(({ u }) => u), corners.map(({ v }) => v)];
  return {
    min: { u: Math.min(...us), v: Math.min(...vs) },
    max: { u: Math.max(...us), v: Math.max(...vs) },
  };
}

/** A point of one of the two, told in the other's figures. */
export const toldOn = (from: Surface, to: Surface, at: SurfacePoint): SurfacePoint =>
  from === to ? at : toSurface(to.frame, toWorld(from.frame, at));

/** The same of a box: the one that holds it. */
export const boxToldOn = (from: Surface, to: Surface, box: Box): Box =>
  from === to ? box : boxRound(box, (at) => toldOn(from, to, at));
