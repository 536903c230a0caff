import type { Code } from "../../findings/finding.js";
import { bodyOfShape, supportMm } from "../../geometry/body.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import { minus, outer } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { inward } from "../../place/run.js";
import type { Framing, Member } from "../../room/room.js";
import { codesAgainst } from "../marking/reasons.js";
import { isAlongAxis, rowsOf } from "../marking/rows.js";
import { countedFrom } from "../marking/surface-chains.js";
import type { SurfaceStage } from "../marking/surface-stage.js";
import type { Order } from "../sheet.js";
import { tapeFromEdge } from "../tapes.js";

/** Along an axis of the surface; or square to joists that run at an angle to both. */
export type Way = "u" | "v" | "square";

/** Everything that stands along one line of a surface, in mm from the wall or corner that figures on it count from. */
export interface Pole {
  readonly at: SurfaceStage;
  readonly way: Way;
  /** A wall's name, or that of a corner or a mark. */
  readonly zero: string;
  readonly far: Far;
  readonly openings: readonly PoleOpenings[];
  readonly members: readonly PoleMember[];
  /** Stretches whose framing nobody knows. */
  readonly unknown: readonly Stretch[];
  /** Members that run at an angle, so that the axis has no one place for them. */
  readonly oblique: number;
}

export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The end across from zero, and the wall there; null where no edge lies square at it. */
export interface Far {
  readonly mm: number;
  readonly along: string | null;
}

/** Openings that share a centre and both edges on the line, and may all be cut or none of them for the same reasons. */
export interface PoleOpenings extends Stretch {
  readonly ids: readonly string[];
  readonly centreMm: number;
  readonly stoppedBy: readonly Code[] | null;
  readonly computed: boolean;
  /** 0, or more where it overlaps one before it, so that their bars are told apart. */
  readonly level: number;
}

export interface PoleMember extends Stretch {
  readonly member: Member;
  readonly centreMm: number;
}

/** The line of a pole: where it counts from, the way that it lies, and the figure of a point. */
interface Line {
  readonly from: string;
  /** Of length 1. */
  readonly away: SurfacePoint;
  readonly place: Place;
}

type Place = (point: SurfacePoint) => number;

/** The pole that lies so; null where nothing lies square to it that it could count from. */
export function poleOf(order: Order, at: SurfaceStage, way: Way): Pole | null {
  const line = way === "square" ? lineSquare(order, at) : lineAlong(at, way);
  if (line === null) return null;
  const { framing } = at.surface;
  const members = framing.kind === "known" ? framing.members : [];
  const far = farOf(at, line);
  return {
    at,
    way,
    zero: line.from,
    far,
    openings: levelled(together(at.openings.map((opening) => alone(order, opening, line)))),
    members: members.filter((member) => crosses(member, line)).map((member) => onPole(member, line)),
    unknown: unknownOn(framing, way, { ...line, farMm: far.mm }),
    oblique: members.filter((member) => isOblique(member, line)).length,
  };
}

function lineAlong({ zero, stage }: SurfaceStage, axis: "u" | "v"): Line | null {
  const edge = zero[axis];
  if (edge === null) return null;
  return {
    from: edge.along,
    away: inward(edge),
    place: (point) => tapeFromEdge(edge, point, stage).mm,
  };
}

/** From what joists at an angle are measured from. */
function lineSquare(order: Order, at: SurfaceStage): Line | null {
  const [row] = rowsOf(at.surface);
  const counted = row === undefined || isAlongAxis(row) ? null : countedFrom(order, at, row);
  if (row === undefined || counted === null) return null;
  return { from: counted.from, away: row.layout.zero.away, place: counted.mm };
}

function farOf({ edges }: SurfaceStage, { place }: Line): Far {
  const mm = Math.max(...edges.map(({ from }) => place(from)));
  const isThere = (point: SurfacePoint): boolean => Math.abs(place(point) - mm) < EPSILON_MM;
  return { mm, along: edges.find(({ from, to }) => isThere(from) && isThere(to))?.along ?? null };
}

/** A member crosses a line where it lies square to it. */
const crosses = ({ from, to }: Member, { place }: Line): boolean =>
  Math.abs(place(to) - place(from)) < EPSILON_MM;

/** Neither square to the line nor along it. */
const isOblique = (member: Member, line: Line): boolean =>
  !crosses(member, line) && Math.abs(outer(minus(member.to, member.from), line.away)) > EPSILON_MM;

function onPole(member: Member, { place }: Line): PoleMember {
  const centreMm = place(member.from);
  const half = member.widthMm / 2;
  return { member, centreMm, fromMm: centreMm - half, toMm: centreMm + half };
}

function alone(order: Order, opening: Opening, { place, away }: Line): PoleOpenings {
  const { speaker, centre, mustNotCut, placed } = opening;
  const centreMm = place(centre);
  const half = supportMm(bodyOfShape(speaker.opening), away);
  return {
    ids: [speaker.id],
    centreMm,
    fromMm: centreMm - half,
    toMm: centreMm + half,
    stoppedBy: mustNotCut ? codesAgainst(order, opening) : null,
    computed: placed === "best",
    level: 0,
  };
}

function together(all: readonly PoleOpenings[]): PoleOpenings[] {
  const groups: PoleOpenings[] = [];
  for (const one of [...all].sort((a, b) => a.centreMm - b.centreMm)) {
    const index = groups.findIndex((group) => isSame(group, one));
    const group = groups[index];
    if (group === undefined) groups.push(one);
    else groups[index] = { ...group, ids: [...group.ids, ...one.ids] };
  }
  return groups;
}

const isSame = (a: PoleOpenings, b: PoleOpenings): boolean =>
  Math.abs(a.fromMm - b.fromMm) < EPSILON_MM &&
  Math.abs(a.toMm - b.toMm) < EPSILON_MM &&
  a.computed === b.computed &&
  (a.stoppedBy?.join() ?? null) === (b.stoppedBy?.join() ?? null);

/** Bars whose ends nearly meet would read as one. */
const APART_MM = 2;

function levelled(all: readonly PoleOpenings[]): PoleOpenings[] {
  const levels: PoleOpenings[] = [];
  for (const one of all) {
    const taken = levels.filter((other) => overlap(other, one)).map(({ level }) => level);
    const free = Array.from({ length: taken.length + 1 }, (_, level) => level).find(
      (level) => !taken.includes(level),
    );
    levels.push({ ...one, level: free ?? 0 });
  }
  return levels;
}

const overlap = (a: Stretch, b: Stretch): boolean =>
  a.fromMm < b.toMm + APART_MM && b.fromMm < a.toMm + APART_MM;

/**
 * Stretches past the last measured member lie across the members, so they show only on the axis that crosses those;
 * with straps across them, those of either show where they do not take the whole axis.
 */
function unknownOn(
  framing: Framing,
  way: Way,
  { place, farMm }: { readonly place: Place; readonly farMm: number },
): readonly Stretch[] {
  if (framing.kind === "unknown") return [{ fromMm: 0, toMm: Number.POSITIVE_INFINITY }];
  if (framing.straps === null && framing.run === way && isAlongAxis(framing)) return [];
  const stretches = framing.unknown.map((area) => {
    const places = area.map(place);
    return { fromMm: Math.min(...places), toMm: Math.max(...places) };
  });
  const isWhole = ({ fromMm, toMm }: Stretch): boolean => toMm - fromMm > farMm - EPSILON_MM;
  return framing.straps === null ? stretches : stretches.filter((stretch) => !isWhole(stretch));
}
