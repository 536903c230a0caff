import {
  type Body,
  bodyOfArea,
  bodyOfBand,
  bodyOfSegment,
  bodyOfShape,
  reachOf,
  separationMm,
} from "../geometry/body.js";
import { convexHull } from "../geometry/convex.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Shape } from "../geometry/shape.js";
import type { SurfacePoint } from "../geometry/vector.js";
import { allEdgesOn } from "../listen/edges.js";
import type { Mounted } from "../listen/mounted.js";
import type { Edge, Framing, Joint, Member, Obstruction, Surface } from "../room/room.js";
import type { Fitting } from "./fitting.js";

/** Something on a surface that an opening or its flange stays `wantedMm` away from, edge to edge. */
export interface Obstacle {
  readonly what: What;
  readonly body: Body;
  /** What has to stay away from it. */
  readonly mover: Shape;
  readonly wantedMm: number;
}

export type What =
  | { readonly kind: "member"; readonly member: Member }
  | { readonly kind: "obstruction"; readonly obstruction: Obstruction }
  /** A stretch beyond the last measured member. */
  | { readonly kind: "unknown" }
  /** An edge of the finished outline; a flange may touch it. */
  | { readonly kind: "edge"; readonly edge: Edge }
  /** A line where two sheets of board meet: kept off where that costs little. */
  | { readonly kind: "joint"; readonly joint: Joint }
  | { readonly kind: "neighbour"; readonly neighbour: Mounted; readonly edges: "openings" | "flanges" };

/** All that the fitting stays away from on the surface. */
export function obstaclesOn(surface: Surface, fitting: Fitting, neighbours: readonly Mounted[]): Obstacle[] {
  return [...fixedObstacles(surface, fitting), ...neighbourObstacles(neighbours, fitting)];
}

/** Of what is there whatever else is let in all but the framing, to which the gaps are measured. */
export function obstaclesBesidesFraming(surface: Surface, fitting: Fitting): Obstacle[] {
  return [...edgeObstacles(surface, fitting), ...obstructionObstacles(surface, fitting)];
}

/** What is there whatever else is let into the surface. */
export function fixedObstacles(surface: Surface, fitting: Fitting): Obstacle[] {
  return [
    ...edgeObstacles(surface, fitting),
    ...memberObstacles(surface.framing, fitting),
    ...obstructionObstacles(surface, fitting),
  ];
}

/** Of how much is taken of a surface before anything is let in, and of its joints, one by one. */
export const piecesOn = ({ edges, voids, obstructions, joints, framing }: Surface): number =>
  edges.length +
  voids.reduce((sum, each) => sum + each.edges.length, 0) +
  obstructions.length +
  joints.length +
  (framing.kind === "known" ? framing.members.length : 0);

/** Joints of the board, which nobody is kept from but who asks for it. */
export const jointObstacles = ({ joints }: Surface, { opening }: Fitting): Obstacle[] =>
  joints.map((joint) => ({
    what: { kind: "joint", joint },
    body: bodyOfSegment(joint),
    mover: opening,
    wantedMm: 0,
  }));

export function neighbourObstacles(neighbours: readonly Mounted[], fitting: Fitting): Obstacle[] {
  return neighbours.flatMap((neighbour) => bothEdges(neighbour, fitting));
}

/** The gap that an opening keeps from framing: the clamps' reach and what is asked for beyond it. */
export const wantedFromFramingMm = ({ clampReachMm, clearMm }: Fitting): number => clampReachMm + clearMm;

/** A flange covers its opening (reading refuses what does not), so that it alone says where the edge is passed. */
function edgeObstacles(surface: Surface, { flange }: Fitting): Obstacle[] {
  return allEdgesOn(surface, "finish").map((edge) => ({
    what: { kind: "edge", edge },
    body: bodyOfSegment(edge),
    mover: flange,
    wantedMm: 0,
  }));
}

/** Members, and stretches of unknown framing: a member may begin where they do. */
function memberObstacles(framing: Framing, fitting: Fitting): Obstacle[] {
  if (framing.kind === "unknown") return [];
  const wantedMm = wantedFromFramingMm(fitting);
  const mover = fitting.opening;
  const members = framing.members.map(
    (member): Obstacle => ({ what: { kind: "member", member }, body: bodyOfBand(member), mover, wantedMm }),
  );
  const stretches = framing.unknown.map(
    (stretch): Obstacle => ({
      what: { kind: "unknown" },
      body: { core: convexHull(stretch), radiusMm: 0 },
      mover,
      wantedMm,
    }),
  );
  return [...members, ...stretches];
}

function obstructionObstacles({ obstructions, boardMm }: Surface, fitting: Fitting): Obstacle[] {
  return obstructions
    .filter(({ behindMm }) => reaches(fitting.depthMm, behindMm, boardMm))
    .map((obstruction) => ({
      what: { kind: "obstruction", obstruction },
      body: bodyOfArea(obstruction.area),
      mover: fitting.opening,
      wantedMm: Math.max(obstruction.keepMm, wantedFromFramingMm(fitting)),
    }));
}

/** What starts behind the framing face is met only by what is deeper than that and the board before it. */
function reaches(depthMm: number, behindMm: number | null, boardMm: number): boolean {
  return behindMm === null || depthMm > behindMm + boardMm + EPSILON_MM;
}

/** What a fitting stays away from of another opening: between the openings, and between the flanges. */
function bothEdges(neighbour: Mounted, { opening, flange, ...fitting }: Fitting): Obstacle[] {
  const { speaker, centre } = neighbour;
  return [
    {
      what: { kind: "neighbour", neighbour, edges: "openings" },
      body: bodyOfShape(speaker.opening, centre),
      mover: opening,
      wantedMm: fitting.clampReachMm + speaker.model.clampReachMm + fitting.clearMm,
    },
    {
      what: { kind: "neighbour", neighbour, edges: "flanges" },
      body: bodyOfShape(speaker.flange, centre),
      mover: flange,
      wantedMm: 0,
    },
  ];
}

/** Distance from edge to edge with the fitting's centre at `centre`, in mm; negative where they overlap. */
export function gapMm({ body, mover }: Obstacle, centre: SurfacePoint): number {
  return separationMm(body, bodyOfShape(mover, centre));
}

/**
 * Tells of a fitting's centre whether that may be too near to an obstacle: false where it surely is not, by the upright
 * boxes round the two. Most of what is on a surface is far away, and need not be measured to.
 */
export function mayBeTooNear({ body, mover, wantedMm }: Obstacle): (centre: SurfacePoint) => boolean {
  const withinMm = body.radiusMm + halfMm(mover) + wantedMm;
  const [us, vs] = [body.core.map(({ u }) => u), body.core.map(({ v }) => v)];
  const [left, right] = [Math.min(...us) - withinMm, Math.max(...us) + withinMm];
  const [below, above] = [Math.min(...vs) - withinMm, Math.max(...vs) + withinMm];
  return ({ u, v }) => u >= left && u <= right && v >= below && v <= above;
}

const halfMm = (shape: Shape): number =>
  (shape.kind === "round" ? shape.diameterMm : Math.max(shape.widthMm, shape.heightMm)) / 2;

/** The centres that the obstacle takes away, but for what may pass as exactly at its limit. */
export function takenBy({ body, mover, wantedMm }: Omit<Obstacle, "what">): Body {
  const reach = reachOf(body, bodyOfShape(mover));
  return { core: reach.core, radiusMm: reach.radiusMm + wantedMm - EPSILON_MM };
}
